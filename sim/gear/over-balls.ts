/**
 * How the thickness of a worm's thread is measured: over balls that lie in the spaces, and across the thread
 * at a given height.
 *
 *   p     screw parameter [mm/rad]      r       radius of the point of contact [mm]
 *   s(r)  half the width of the space along the axis [mm], s' its slope
 *   R     distance of the ball's centre from the worm's axis [mm]
 */
import type { ThreadForm } from './thread-form.ts'

export interface ThreadSpace {
  readonly halfWidth: (r: number) => number
  readonly slope: (r: number) => number
  readonly screwParameter: number
}

/** What a thread leaves free in one axial pitch. */
export const threadSpace = (form: ThreadForm, axialPitch: number, screwParameter: number): ThreadSpace => ({
  halfWidth: (r) => axialPitch / 2 - form.halfThickness(r),
  slope: (r) => -form.slope(r),
  screwParameter,
})

export interface BallSeat {
  /** Distance of the ball's centre from the worm's axis [mm] */
  readonly centreRadius: number
  /** [mm] */
  readonly ballRadius: number
}

const BISECTIONS = 60

/** Where a falling or rising function passes zero. */
function zeroBetween(low: number, high: number, f: (x: number) => number): number {
  const rises = f(high) > f(low)
  let from = low
  let to = high
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = (from + to) / 2
    if (f(middle) > 0 === rises) to = middle
    else from = middle
  }
  return (from + to) / 2
}

/**
 * The ball that touches both flanks of a space at the radius r. With the middle of the space on the x axis
 * the upper flank is z = p theta + s(r) and its normal, with r and theta of the point of contact,
 *
 *     n = (-s' cos theta + p sin theta / r, -s' sin theta - p cos theta / r, 1)
 *
 * The centre lies on the normal, and on the x axis since half a turn about that axis carries one flank into
 * the other. Derived here; it holds for every profile. A straight pin through the centre, square to both
 * normals, touches at the same two points.
 */
export function ballTouchingAt({ halfWidth, slope, screwParameter: p }: ThreadSpace, r: number): BallSeat {
  const s = halfWidth(r)
  const ds = slope(r)
  const beside = (theta: number) =>
    r * Math.sin(theta) + (p * theta + s) * (ds * Math.sin(theta) + (p * Math.cos(theta)) / r)
  const theta = zeroBetween(-Math.min(s / p, Math.PI / 2), 0, beside)
  const along = p * theta + s
  return {
    centreRadius: r * Math.cos(theta) + along * (ds * Math.cos(theta) - (p * Math.sin(theta)) / r),
    ballRadius: along * Math.sqrt(1 + ds * ds + (p * p) / (r * r)),
  }
}

/** The seat of a given ball; null where it would not touch the flanks between the two radii. */
export function seatOfBall(
  space: ThreadSpace,
  ballRadius: number,
  root: number,
  tip: number,
): BallSeat | null {
  const excess = (r: number) => ballTouchingAt(space, r).ballRadius - ballRadius
  if (excess(root) > 0 || excess(tip) < 0) return null
  return ballTouchingAt(space, zeroBetween(root, tip, excess))
}

/**
 * Normal chordal thickness of the thread at the reference cylinder, and its height below the tip:
 * s = sx cos g,  h = ha + (sx sin g cos g)^2/(4 d1). Elements of Metric Gear Technology (SDP/SI), chordal
 * tooth thickness of a worm, from memory.
 */
export const threadChord = (
  sx: number,
  g: number,
  d1: number,
  ha: number,
): { thickness: number; height: number } => ({
  thickness: sx * Math.cos(g),
  height: ha + (sx * Math.sin(g) * Math.cos(g)) ** 2 / (4 * d1),
})

/**
 * Normal chordal thickness of the wheel's tooth at the reference circle, and its height below the throat, by
 * the virtual spur gear of z2/cos^3 g teeth: the same source, axial module system, from memory.
 */
export function toothChord(
  st: number,
  g: number,
  z2: number,
  mn: number,
  ha: number,
): { thickness: number; height: number } {
  const virtualRadius = ((z2 / Math.cos(g) ** 3) * mn) / 2
  const half = (st * Math.cos(g)) / 2 / virtualRadius
  return {
    thickness: 2 * virtualRadius * Math.sin(half),
    height: ha + virtualRadius * (1 - Math.cos(half)),
  }
}
