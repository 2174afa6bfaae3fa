/**
 * The worm turned through a whole mesh cycle in steps, and the wheel turned onto it at each: how far it turns
 * until the first of all its points touches. A cycle is long enough for one tooth to come and go; what the
 * teeth before and behind it do at the same time is found a whole pitch away in the same cycle.
 */
import { CLOSE_STEPS, freeTurn, type MisplacedMesh } from './misplaced.ts'
import { type FlankGrid, newPlace } from './misplaced-flank.ts'

export interface BearingSweep {
  /** Number of steps in an axial pitch, and in the cycle */
  readonly stepsPerPitch: number
  readonly steps: number
  /** Number of the first step; step n has the shift n px/stepsPerPitch */
  readonly first: number
  /** Turn [rad] until each point of the grid touches, step by step; Infinity where it never does */
  readonly turns: Float64Array
  /** Turn [rad] until the first of all points touches, in each phase of a pitch */
  readonly touch: Float64Array
}

const STEPS_PER_PITCH = 24
/** Part of a pitch by which a misplaced wheel may touch sooner or later than one in its place. */
const SPARE = 0.35
/** Part of a pitch, before and after its contact in the ideal mesh, in which a point is looked at. */
const WINDOW = 0.6
const ROUNDS = 3
const GOLDEN = (Math.sqrt(5) - 1) / 2
const GOLDEN_STEPS = 18

/** Place of the least of a parabola through three points. */
function bottom(x0: number, f0: number, x1: number, f1: number, x2: number, f2: number): number {
  const left = (f0 - f1) / (x0 - x1)
  const right = (f2 - f1) / (x2 - x1)
  const bend = (right - left) / (x2 - x0)
  return bend > 0 ? (x0 + x1) / 2 - left / (2 * bend) : x1
}

/** Least of f, whose middle place is the lowest of three: parabolas that close in on it. */
function leastOfValley(f: (x: number) => number, x0: number, x1: number, x2: number): number {
  let at = x1
  let least = f(x1)
  let step = Math.min(x1 - x0, x2 - x1)
  let [low, high] = [x0, x2]
  for (let i = 0; i < ROUNDS; i++) {
    const next = bottom(low, f(low), at, least, high, f(high))
    const value = f(next)
    if (value <= least) {
      at = next
      least = value
    }
    step /= 8
    low = at - step
    high = at + step
  }
  return least
}

/** Least of f between two places, at either end too or where f ends within. */
function leastOfSlope(f: (x: number) => number, x0: number, x2: number): number {
  let low = x0
  let high = x2
  for (let i = 0; i < GOLDEN_STEPS; i++) {
    const left = high - GOLDEN * (high - low)
    const right = low + GOLDEN * (high - low)
    if (f(left) <= f(right)) high = right
    else low = left
  }
  return Math.min(f(x0), f(x2), f((low + high) / 2))
}

function leastBetween(f: (x: number) => number, x0: number, x1: number, x2: number): number {
  const middle = f(x1)
  const valley = x0 < x1 && x1 < x2 && middle <= f(x0) && middle <= f(x2) && f(x2) < Infinity
  return valley ? leastOfValley(f, x0, x1, x2) : Math.min(middle, leastOfSlope(f, x0, x2))
}

/** Turn until a place between the grid's touches. */
function turnAt(
  mesh: MisplacedMesh,
  grid: FlankGrid,
  j: number,
  part: number,
  s: number,
): (u: number) => number {
  const place = newPlace()
  const y = part === 0 ? grid.y[j]! : grid.y[j]! + part * (grid.y[j + 1]! - grid.y[j]!)
  return (u) => {
    grid.write(place, j, part, u)
    return freeTurn(mesh, place.radius, place.chi, y, s, CLOSE_STEPS)
  }
}

/** Least turn within a plane, round the place that the grid shows to be nearest. */
function planeLeast(
  mesh: MisplacedMesh,
  grid: FlankGrid,
  j: number,
  part: number,
  s: number,
  i: number,
): number {
  const step = 1 / (grid.points - 1)
  const u = i * step
  return leastBetween(turnAt(mesh, grid, j, part, s), Math.max(0, u - step), u, Math.min(1, u + step))
}

/** Number of the point of plane j that is nearest to touching, from the coarse turns beginning at `at`. */
function nearestPoint(turns: Float64Array, at: number, points: number): number {
  let nearest = 0
  for (let i = 1; i < points; i++) if (turns[at + i]! < turns[at + nearest]!) nearest = i
  return nearest
}

/** Least turn over the whole flank at one shift, from the coarse turns of the grid beginning at `at`. */
function flankLeast(
  mesh: MisplacedMesh,
  grid: FlankGrid,
  turns: Float64Array,
  at: number,
  s: number,
): number {
  const { planes, points, y } = grid
  const nearest = new Int32Array(planes)
  const fine = new Float64Array(planes).fill(Infinity)
  let best = 0
  for (let j = 0; j < planes; j++) {
    const i = nearestPoint(turns, at + j * points, points)
    if (turns[at + j * points + i] === Infinity) continue
    nearest[j] = i
    fine[j] = planeLeast(mesh, grid, j, 0, s, i)
    if (fine[j]! < fine[best]!) best = j
  }
  const least = fine[best]!
  if (best === 0 || best === planes - 1) return least
  const place = bottom(y[best - 1]!, fine[best - 1]!, y[best]!, least, y[best + 1]!, fine[best + 1]!)
  const below = place < y[best]! ? best - 1 : best
  const part = (place - y[below]!) / (y[below + 1]! - y[below]!)
  if (!(part > 0 && part < 1)) return least
  return Math.min(least, planeLeast(mesh, grid, below, part, s, nearest[best]!))
}

/** Writes the turn at which each point of the grid touches at one shift, from `at` on; the far ones are left. */
function writeTurns(
  out: Float64Array,
  at: number,
  mesh: MisplacedMesh,
  grid: FlankGrid,
  s: number,
  window: number,
): void {
  const { points, y, radius, chi, shift } = grid
  for (let k = 0; k < shift.length; k++) {
    if (Math.abs(s - shift[k]!) > window) continue
    out[at + k] = freeTurn(mesh, radius[k]!, chi[k]!, y[Math.floor(k / points)]!, s, 2)
  }
}

export interface MomentOfThread {
  /** Number of the thread, and of the tooth space of the right mesh */
  readonly thread: number
  /** Turn [rad] until each point of the grid touches, and until the first of them does */
  readonly turns: Float64Array
  readonly touch: number
}

/** Every thread within reach at one moment; `moved` is how far thread 0 has gone against z [mm]. */
export function bearingMoment(
  mesh: MisplacedMesh,
  grid: FlankGrid,
  axialPitch: number,
  moved: number,
): MomentOfThread[] {
  const moments: MomentOfThread[] = []
  const last = Math.floor((grid.last + moved) / axialPitch + SPARE)
  for (let thread = Math.ceil((grid.first + moved) / axialPitch - SPARE); thread <= last; thread++) {
    const s = thread * axialPitch - moved
    const turns = new Float64Array(grid.shift.length).fill(Infinity)
    writeTurns(turns, 0, mesh, grid, s, WINDOW * axialPitch)
    moments.push({ thread, turns, touch: flankLeast(mesh, grid, turns, 0, s) })
  }
  return moments
}

export function bearingSweep(mesh: MisplacedMesh, grid: FlankGrid, axialPitch: number): BearingSweep {
  const step = axialPitch / STEPS_PER_PITCH
  const first = Math.floor(grid.first / step - SPARE * STEPS_PER_PITCH)
  const steps = Math.ceil(grid.last / step + SPARE * STEPS_PER_PITCH) - first + 1
  const turns = new Float64Array(steps * grid.shift.length).fill(Infinity)
  const touch = new Float64Array(STEPS_PER_PITCH).fill(Infinity)
  for (let n = 0; n < steps; n++) {
    const s = (first + n) * step
    const at = n * grid.shift.length
    writeTurns(turns, at, mesh, grid, s, WINDOW * axialPitch)
    const phase = (((first + n) % STEPS_PER_PITCH) + STEPS_PER_PITCH) % STEPS_PER_PITCH
    touch[phase] = Math.min(touch[phase]!, flankLeast(mesh, grid, turns, at, s))
  }
  return { stepsPerPitch: STEPS_PER_PITCH, steps, first, turns, touch }
}
