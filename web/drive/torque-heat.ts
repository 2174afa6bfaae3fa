/**
 * How much torque the winding bears for long: two bodies at rest with each other, winding and case, at a speed that is
 * held. Indicative, as the thermal numbers are.
 */
import { CLASS_TEMPERATURE } from '../../sim/heat/insulation.ts'
import { resistanceFactor } from '../../sim/heat/resistance.ts'
import type { Thermal } from '../../sim/machine/machine.ts'
import { rpm } from '../../sim/quantity/convert.ts'
import type { TorqueLine, TorqueLines } from './torque-lines.ts'
import { caseHeat, caseToAir, windingHeat, windingToCase } from '../../sim/run/two-bodies.ts'

/** Mean temperature of the winding at which its hottest spot is at its class [degC] */
const longLimit = ({ insulation, hotSpotMargin }: Thermal): number =>
  CLASS_TEMPERATURE[insulation] - hotSpotMargin

/**
 * Where the winding would settle at this speed if its copper were as warm as the limit [degC]: over the limit exactly
 * where it really would go over it, because its loss grows with its warmth.
 *
 * inner - heat of the winding [W], with the copper at the limit
 * outer - heat of the case [W]
 * w     - speed of the fan [rad/s]
 */
export function settledWinding(thermal: Thermal, inner: number, outer: number, w: number): number {
  const n = rpm(w)
  return thermal.ambient + (inner + outer) / caseToAir(thermal, n) + inner / windingToCase(thermal, n)
}

/** Rise over the air at one point of a line, copper at the limit [K] */
function riseAt(thermal: Thermal, line: TorqueLine, i: number, w: number, winding: number): number {
  const copper = line.copperLoss[i]! * (resistanceFactor(longLimit(thermal)) / resistanceFactor(winding))
  const [brush, friction] = [line.brushLoss[i]!, line.frictionLoss[i]!]
  const inner = windingHeat(thermal, copper, brush, friction)
  return settledWinding(thermal, inner, caseHeat(thermal, brush, friction), w) - thermal.ambient
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
