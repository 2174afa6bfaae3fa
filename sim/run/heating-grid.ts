/**
 * A running machine between solved points, for circuits whose currents take long to solve: heat, speed and current follow
 * a cubic through four temperatures of the winding, and through four of the case where magnets matter. Where the machine
 * stalls among those points nothing smooth runs through them, and it is solved by itself.
 */
import type { HeatPoint } from './heating-point.ts'
import { newHeatPoint, writeConductances, writeRunning } from './heating-point.ts'
import type { HeatNodes, HeatSource } from './heating-source.ts'
import { COLUMNS, POINTS } from './heating-source.ts'

/** Between points [K] */
const SPACING = 12
const SPEED = 2
/** More than the points of any row */
const STRIDE = 1024

/** Writes the point; its reading is not kept. */
export function writeBetween(
  point: HeatPoint,
  source: HeatSource,
  nodes: HeatNodes,
  winding: number,
  body: number,
) {
  const { sums, windingWeights, caseWeights, hasMagnets } = nodes
  const row = firstNode(windingWeights, winding)
  const column = firstNode(caseWeights, body)
  const columns = hasMagnets ? POINTS : 1
  sums.fill(0)
  let running = 0
  for (let n = 0; n < POINTS * columns; n++) {
    const down = Math.floor(n / columns)
    const along = n % columns
    const node = nodeAt(source, nodes, row + down, hasMagnets ? column + along : 0, point.before)
    if (node[SPEED] !== 0) running++
    const weight = windingWeights[down]! * (hasMagnets ? caseWeights[along]! : 1)
    for (let k = 0; k < COLUMNS; k++) sums[k] = sums[k]! + weight * node[k]!
  }
  if (running > 0 && running < POINTS * columns) {
    writeRunning(point, source, winding, body)
    return
  }
  point.windingHeat = sums[0]!
  point.caseHeat = sums[1]!
  point.speed = sums[SPEED]!
  point.current = sums[3]!
  point.protectedCurrent = sums[4]!
  writeConductances(point, source)
}

/** Fills the weights of four points about a temperature, and returns the number of the first. */
function firstNode(weights: Float64Array, temperature: number): number {
  const place = temperature / SPACING
  const first = Math.floor(place) - 1
  const x = place - first
  weights[0] = -((x - 1) * (x - 2) * (x - 3)) / 6
  weights[1] = (x * (x - 2) * (x - 3)) / 2
  weights[2] = -(x * (x - 1) * (x - 3)) / 2
  weights[3] = (x * (x - 1) * (x - 2)) / 6
  return first
}

function nodeAt(
  source: HeatSource,
  nodes: HeatNodes,
  row: number,
  column: number,
  before: number,
): Float64Array {
  const key = row * STRIDE + column
  const known = nodes.known.get(key)
  if (known) return known
  const point = newHeatPoint()
  point.before = before
  writeRunning(point, source, row * SPACING, column * SPACING)
  const { windingHeat, caseHeat, speed, current, protectedCurrent } = point
  const node = new Float64Array([windingHeat, caseHeat, speed, current, protectedCurrent])
  nodes.known.set(key, node)
  return node
}
