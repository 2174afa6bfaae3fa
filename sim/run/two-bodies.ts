/** Winding and case: which part of the motor's losses warms which, and how well each gives it on. */
import { fanConductance } from '../heat/conductance.ts'
import type { Thermal } from '../machine/machine.ts'
import { PER_CENT } from '../quantity/constants.ts'

/** What the losses in copper, brushes and friction [W] bring into the winding [W] */
export const windingHeat = (thermal: Thermal, copper: number, brush: number, friction: number): number =>
  copper + (brush * thermal.brushHeatToWinding + friction * thermal.frictionHeatToWinding) * PER_CENT

/** What of the losses in brushes and friction [W] the case takes [W] */
export const caseHeat = (thermal: Thermal, brush: number, friction: number): number =>
  brush * (1 - thermal.brushHeatToWinding * PER_CENT) +
  friction * (1 - thermal.frictionHeatToWinding * PER_CENT)

/** From winding to case [W/K] with the fan at n [r/min] */
export const windingToCase = (thermal: Thermal, n: number): number =>
  fanConductance(
    thermal.windingToCase,
    thermal.windingToCaseFan,
    n,
    thermal.referenceSpeed,
    thermal.fanExponent,
  )

/** From case to air [W/K] with the fan at n [r/min] */
export const caseToAir = (thermal: Thermal, n: number): number =>
  fanConductance(thermal.caseToAir, thermal.caseToAirFan, n, thermal.referenceSpeed, thermal.fanExponent)
