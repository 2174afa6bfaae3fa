/** Where the heat in the motor comes from, and which part of it warms what. */
import type { Reading } from '../../sim/drive/reading.ts'
import type { Thermal } from '../../sim/machine/machine.ts'
import { PER_CENT } from '../../sim/quantity/constants.ts'

export interface HeatShare {
  readonly name: string
  /** [W] */
  readonly winding: number
  readonly case: number
}

/** In watts at this reading; the fan's heat and that of the meshes goes to the air and the gears. */
export function heatShares(thermal: Thermal, reading: Reading): readonly HeatShare[] {
  const split = (name: string, loss: number, percent: number): HeatShare => ({
    name,
    winding: loss * percent * PER_CENT,
    case: loss * (1 - percent * PER_CENT),
  })
  return [
    split('Copper', reading.copperLoss, 100),
    split('Brush contacts', reading.brushLoss, thermal.brushHeatToWinding),
    split('Friction and iron', reading.frictionLoss, thermal.frictionHeatToWinding),
  ]
}
