import type { Equations, Stepper } from '../numeric/dormand-prince.ts'
import { newStepper } from '../numeric/dormand-prince.ts'
import { writeBetween } from './heating-grid.ts'
import type { HeatPoint } from './heating-point.ts'
import { newHeatPoint, writeResting, writeRunning } from './heating-point.ts'
import type { HeatSource } from './heating-source.ts'

/** Places in the state of a heating run, behind the time. */
export const WINDING = 1 // [degC]
export const CASE = 2 // [degC]
export const HEAT = 3 // that arose [J]
export const GIVEN_OFF = 4 // to the air [J]
const SIZE = 5
const COUPLED = 3

/** Error allowed in a step as a part of the temperature, and the least temperature that this is taken of [degC]. */
const TOLERANCE = 1e-6
const ORDINARY = 20

/** Two bodies that warm each other: Cw dTw/dt = Pw - Gwc (Tw - Tc), Cc dTc/dt = Pc + Gwc (Tw - Tc) - Gca (Tc - Ta). */
export interface HeatEquations extends Equations {
  readonly source: HeatSource
  readonly point: HeatPoint
  /** Whether the machine is switched on */
  on: boolean
}

export function newHeatEquations(source: HeatSource): HeatEquations {
  const point = newHeatPoint()
  const { windingCapacity, caseCapacity, ambient } = source.thermal
  const equations: HeatEquations = {
    source,
    point,
    on: true,
    writeRates(rates, y) {
      const winding = y[WINDING]!
      const body = y[CASE]!
      if (equations.on && source.nodes) writeBetween(point, source, source.nodes, winding, body)
      else if (equations.on) writeRunning(point, source, winding, body)
      else writeResting(point, source)
      const across = point.windingToCase * (winding - body)
      const out = point.caseToAir * (body - ambient)
      rates[WINDING] = (point.windingHeat - across) / windingCapacity
      rates[CASE] = (point.caseHeat + across - out) / caseCapacity
      rates[HEAT] = point.windingHeat + point.caseHeat
      rates[GIVEN_OFF] = out
    },
  }
  return equations
}

export function newHeatStepper(winding: number, body: number): Stepper {
  const stepper = newStepper(SIZE, COUPLED, COUPLED)
  stepper.tolerance = TOLERANCE
  stepper.sizes.fill(ORDINARY)
  stepper.y[WINDING] = winding
  stepper.y[CASE] = body
  return stepper
}
