/**
 * How much torque the winding bears for long: two bodies at rest with each other, winding and case, at a speed that is
 * held. Indicative, as the thermal numbers are.
 */
import { fanConductance } from '../../sim/heat/conductance.ts'
import { CLASS_TEMPERATURE } from '../../sim/heat/insulation.ts'
import { resistanceFactor } from '../../sim/heat/resistance.ts'
import type { Thermal } from '../../sim/machine/machine.ts'
import { rpm } from '../../sim/quantity/convert.ts'
import type { TorqueLine, TorqueLines } from './torque-lines.ts'

const PER_CENT = 1e-2

/** Mean temperature of the winding at which its hottest spot is at its class [degC] */
const longLimit = ({ insulation, hotSpotMargin }: Thermal): number =>
  CLASS_TEMPERATURE[insulation] - hotSpotMargin

/**
 * Where the winding would settle at this speed if its copper were as warm as the limit [degC]: over the limit exactly
 * where it really would go over it, because its loss grows with its warmth.
 *
 * windingHeat - [W] with the copper at `limit`
 * caseHeat    - [W]
 * w           - speed of the fan [rad/s]
 */
export function settledWinding(thermal: Thermal, windingHeat: number, caseHeat: number, w: number): number {
  const { referenceSpeed: n0, fanExponent: p, ambient } = thermal
  const inner = fanConductance(thermal.windingToCase, thermal.windingToCaseFan, rpm(w), n0, p)
  const outer = fanConductance(thermal.caseToAir, thermal.caseToAirFan, rpm(w), n0, p)
  return ambient + (windingHeat + caseHeat) / outer + windingHeat / inner
}

/** Rise over the air at one point of a line, copper at the limit [K] */
function riseAt(thermal: Thermal, line: TorqueLine, i: number, w: number, winding: number): number {
  const copper = line.copperLoss[i]! * (resistanceFactor(longLimit(thermal)) / resistanceFactor(winding))
  const brush = line.brushLoss[i]! * thermal.brushHeatToWinding * PER_CENT
  const friction = line.frictionLoss[i]! * thermal.frictionHeatToWinding * PER_CENT
  const body = line.brushLoss[i]! - brush + line.frictionLoss[i]! - friction
  return settledWinding(thermal, copper + brush + friction, body, w) - thermal.ambient
}

/**
 * The largest torque that can be held at each speed [N m]: between two settings in step with the square root of the
 * rise, as the current is. Infinity where every setting stays cool enough, so that the limit is never met.
 *
 * winding - temperature at which the lines were read [degC]
 */
export function longTorque({ speed, lines }: TorqueLines, thermal: Thermal, winding: number): Float64Array {
  const allowed = Math.sqrt(Math.max(0, longLimit(thermal) - thermal.ambient))
  return speed.map((w, i) => {
    const points = lines
      .map((line) => ({ torque: line.torque[i]!, root: Math.sqrt(riseAt(thermal, line, i, w, winding)) }))
      .sort((a, b) => a.root - b.root)
    const hot = points.findIndex(({ root }) => root > allowed)
    if (hot < 0) return Infinity
    const over = points[hot]!
    const under = points[hot - 1] ?? { torque: 0, root: 0 }
    const part = (allowed - under.root) / (over.root - under.root)
    return under.torque + part * (over.torque - under.torque)
  })
}
