/**
 * Where a flank of the wheel bears when it has run over its worm with marking compound between them: for each
 * of its points the least gap over a whole mesh cycle, with the wheel always turned into contact. Ideal
 * throated wheels bear all over; one that stands off its place bears on an edge, and runs unevenly.
 */
import { bearingSweep, type BearingSweep } from './bearing-sweep.ts'
import type { GearNumbers, Side } from './gear-numbers.ts'
import { CLOSE_STEPS, freeTurn, type MisplacedMesh, type Misplacement, misplacedMesh } from './misplaced.ts'
import { type FlankGrid, flankGrid } from './misplaced-flank.ts'
import { axialPitch } from './proportions.ts'
import type { Flank } from './wheel-flank.ts'

export interface BearingPattern {
  readonly planes: number
  /** In each plane, from the tip to where the fillet begins */
  readonly points: number
  /** Of the grid, in the wheel's own frame, flank of tooth space 0 without backlash [mm], [rad] */
  readonly y: Float64Array
  readonly radius: Float64Array
  readonly chi: Float64Array
  /** Least gap over the cycle along the normal [mm], at most FAR */
  readonly gap: Float32Array
  /** Part of the grid that is nearer than the film, 0 to 1, and the middle of that part over the face [mm] */
  readonly share: number
  readonly middle: number
  /**
   * How far the wheel can turn onto this flank from its place in an ideal mesh without backlash, at its reference
   * circle [um]; below 0 it is the backlash that the flank needs, and Infinity where it is
   * out of reach
   */
  readonly play: number
  /** Between the most advanced and the most retarded place of the wheel over a pitch, at r2 [um] */
  readonly transmissionError: number
}

/** Thickness of the marking compound on the thread [mm]: a thin even coat of a few thousandths, common practice. */
export const COMPOUND_FILM = 0.006

/** Largest gap that is told [mm]. */
export const FAR = 1
const PLANES = 24
const POINTS = 16
const TIP_HALVINGS = 10
export const MICROMETRES = 1000

/** The grid that patterns are told on. */
export const flankPattern = (gearing: GearNumbers, sigma: Flank): FlankGrid =>
  flankGrid(gearing, sigma, PLANES, POINTS)

interface Run {
  readonly mesh: MisplacedMesh
  readonly grid: FlankGrid
  readonly sweep: BearingSweep
  /** Of the shift in the sweep [mm] */
  readonly step: number
}

/** Turn [rad] at which the wheel touches at step n of the sweep. */
function touchAt({ stepsPerPitch: m, first, touch }: BearingSweep, n: number): number {
  return touch[(((first + n) % m) + m) % m]!
}

/** Gap [mm] of point k at step n of the sweep. */
function gapAt({ sweep, grid, mesh }: Run, k: number, n: number): number {
  const turn = sweep.turns[n * grid.shift.length + k]!
  return (turn - touchAt(sweep, n)) * mesh.wheelRadius * grid.normalPart[k]!
}

/** Gap [mm] of point k where the worm's tip passes it, between step n and the next one in the direction `on`. */
function gapAtTip({ sweep, grid, mesh, step }: Run, k: number, n: number, on: 1 | -1): number {
  const { radius, chi, y, points } = grid
  const turnAt = (part: number) => {
    const s = (sweep.first + n + on * part) * step
    return freeTurn(mesh, radius[k]!, chi[k]!, y[Math.floor(k / points)]!, s, CLOSE_STEPS)
  }
  let below = 0
  let past = 1
  for (let i = 0; i < TIP_HALVINGS; i++) {
    const middle = (below + past) / 2
    if (turnAt(middle) < Infinity) below = middle
    else past = middle
  }
  const touch = touchAt(sweep, n) + below * (touchAt(sweep, n + on) - touchAt(sweep, n))
  return (turnAt(below) - touch) * mesh.wheelRadius * grid.normalPart[k]!
}

/** Least gap [mm] of point k over the cycle, with the bottom of a parabola between the steps. */
function leastGap(run: Run, k: number): number {
  let least = FAR
  let at = -1
  for (let n = 0; n < run.sweep.steps; n++) {
    const gap = gapAt(run, k, n)
    // Also where nothing touches at all, and the gap is no number.
    if (!(gap < least)) continue
    least = gap
    at = n
  }
  if (at < 1 || at > run.sweep.steps - 2) return least
  const before = gapAt(run, k, at - 1)
  const after = gapAt(run, k, at + 1)
  if (before === Infinity) return Math.min(least, gapAtTip(run, k, at, -1))
  if (after === Infinity) return Math.min(least, gapAtTip(run, k, at, 1))
  const bend = before - 2 * least + after
  if (bend <= 0) return least
  // Where two teeth change over the gap has a corner that no parabola follows.
  return Math.max(Math.min(least, 0), least - (before - after) ** 2 / (8 * bend))
}

/**
 * Bearing pattern of the thread's flank sigma on one wheel.
 *
 * film - thickness of the marking compound [mm], > 0
 */
export function bearingPattern(
  gearing: GearNumbers,
  side: Side,
  sigma: Flank,
  misplacement: Misplacement,
  film: number,
): BearingPattern {
  const mesh = misplacedMesh(gearing, side, sigma, misplacement)
  const grid = flankPattern(gearing, sigma)
  const px = axialPitch(gearing.axialModule)
  const sweep = bearingSweep(mesh, grid, px)
  const run: Run = { mesh, grid, sweep, step: px / sweep.stepsPerPitch }
  const gap = new Float32Array(grid.planes * grid.points)
  // The left wheel is the same part turned half round about a space, so its other flank is the one that bears.
  const own = side === 'left' ? -1 : 1
  let marked = 0
  let middle = 0
  for (let k = 0; k < gap.length; k++) {
    gap[k] = leastGap(run, k)
    if (gap[k]! > film) continue
    marked++
    middle += own * grid.y[Math.floor(k / grid.points)]!
  }
  const scale = MICROMETRES * mesh.wheelRadius
  const least = Math.min(...sweep.touch)
  return {
    planes: grid.planes,
    points: grid.points,
    y: grid.y.map((y) => own * y),
    radius: grid.radius,
    chi: grid.chi.map((chi) => own * chi),
    gap,
    share: marked / gap.length,
    middle: marked > 0 ? middle / marked : 0,
    play: scale * least,
    transmissionError: least < Infinity ? scale * (Math.max(...sweep.touch) - least) : 0,
  }
}
