import type { SeriesPulse } from './series-pulse.ts'
import {
  OF_COSINE,
  OF_CURRENT,
  OF_SINE,
  OF_SQUARE,
  OF_TORQUE,
  OF_VOLTAGE,
  OF_VOLTAGE_SQUARE,
  ORDER,
} from './series-pulse.ts'

/**
 * Nodes and weights of Gauss and Legendre's rule of ten points, its half. Source: M. Abramowitz & I. A. Stegun,
 * Handbook of Mathematical Functions, table 25.4 (from memory).
 */
const NODES = new Float64Array([
  0.1488743389816312, 0.4333953941292472, 0.6794095682990244, 0.8650633666889845, 0.9739065285171717,
])
const WEIGHTS = new Float64Array([
  0.2955242247147529, 0.2692667193099963, 0.219086362515982, 0.1494513491505806, 0.0666713443086881,
])

/** Adds the integrals over the present piece to those of the pulse. */
export function addPiece(pulse: SeriesPulse): void {
  const { span } = pulse
  for (let n = 0; n < NODES.length; n++) {
    const away = NODES[n]! / 2
    const weight = (WEIGHTS[n]! * span) / 2
    addNode(pulse, span * (0.5 - away), weight)
    addNode(pulse, span * (0.5 + away), weight)
  }
}

/** Adds the integrands at one place of the piece. */
function addNode(pulse: SeriesPulse, place: number, weight: number): void {
  const { current: a, sums, winding } = pulse
  let i = 0
  for (let n = ORDER; n >= 0; n--) i = i * place + a[n]!
  const x = pulse.x + place
  const sin = Math.sin(x)
  const part = weight * i
  const drop = pulse.drops - winding.brushDrop + (pulse.resistance - winding.resistance) * i
  const voltage = pulse.emf * sin - drop
  sums[OF_CURRENT]! += part
  sums[OF_SQUARE]! += part * i
  sums[OF_TORQUE]! += (part * i) / (1 + i / winding.saturationCurrent)
  sums[OF_SINE]! += part * sin
  sums[OF_COSINE]! += part * Math.cos(x)
  sums[OF_VOLTAGE]! += weight * voltage
  sums[OF_VOLTAGE_SQUARE]! += weight * voltage * voltage
}
