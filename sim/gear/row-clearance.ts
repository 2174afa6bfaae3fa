/**
 * How near the rows of two outputs come to each other while they turn. Seen from above, with x to the right and
 * z down the page, a row is the straight line from the hub to the tip of its own middle; the right output stands at
 * x = a, the left one at x = -a. The angle u of a row counts from the line between the axes, inwards, and both
 * grow together: a right row runs along (a - r cos u, r sin u), the left row that lags by D along
 * (-a + r cos(u - D), r sin(u - D)). Lengths in mm, angles in rad. Derived here.
 */

export interface Rows {
  /** Even rows on each of the two outputs, from 1 */
  readonly count: number
  /** a, half the distance between the two axes */
  readonly centreDistance: number
  readonly hubRadius: number
  /** Radius that the tips turn at */
  readonly sweepRadius: number
}

/** Angle from one row to the next: 2 pi/N */
export const rowPitch = (count: number): number => (2 * Math.PI) / count

/** What the tips leave free before the other hub: 2a - Rb - rh; nothing left means that they strike it. */
export const hubRoom = ({ centreDistance, hubRadius, sweepRadius }: Rows): number =>
  2 * centreDistance - sweepRadius - hubRadius

/** Distance of a point from the line between two others. */
function pointToLine(px: number, pz: number, ax: number, az: number, bx: number, bz: number): number {
  const [lx, lz] = [bx - ax, bz - az]
  const along = ((px - ax) * lx + (pz - az) * lz) / (lx * lx + lz * lz)
  const t = Math.min(1, Math.max(0, along))
  return Math.hypot(px - ax - t * lx, pz - az - t * lz)
}

/** Twice the area of a triangle, positive when it turns from x towards z. */
const turn = (ax: number, az: number, bx: number, bz: number, cx: number, cz: number): number =>
  (bx - ax) * (cz - az) - (bz - az) * (cx - ax)

/** Distance of a right row from a left one, given by cosine and sine of their angles; 0 where they cross. */
function rowDistance(rows: Rows, cosU: number, sinU: number, cosV: number, sinV: number): number {
  const { centreDistance: a, hubRadius: h, sweepRadius: s } = rows
  const [ax, az, bx, bz] = [a - h * cosU, h * sinU, a - s * cosU, s * sinU]
  const [cx, cz, dx, dz] = [h * cosV - a, h * sinV, s * cosV - a, s * sinV]
  const crosses =
    turn(ax, az, bx, bz, cx, cz) * turn(ax, az, bx, bz, dx, dz) < 0 &&
    turn(cx, cz, dx, dz, ax, az) * turn(cx, cz, dx, dz, bx, bz) < 0
  if (crosses) return 0
  return Math.min(
    pointToLine(ax, az, cx, cz, dx, dz),
    pointToLine(bx, bz, cx, cz, dx, dz),
    pointToLine(cx, cz, ax, az, bx, bz),
    pointToLine(dx, dz, ax, az, bx, bz),
  )
}

/**
 * Least distance between any right row and any left row at one moment.
 *
 * u - angle of any right row
 * D - u less the angle of any left row
 */
export function clearanceAt(rows: Rows, u: number, D: number): number {
  const { count, centreDistance: a, hubRadius: h, sweepRadius: s } = rows
  const pitch = rowPitch(count)
  let least = Infinity
  for (let i = 0; i < count; i++) {
    const [cosU, sinU] = [Math.cos(u + i * pitch), Math.sin(u + i * pitch)]
    const nearest = a - (cosU > 0 ? s : h) * cosU
    // no left row comes further over than its sweep, so this row is out of the question
    if (nearest - (s - a) >= least) continue
    for (let j = 0; j < count; j++) {
      const cosV = Math.cos(u - D + j * pitch)
      if (nearest - ((cosV > 0 ? s : h) * cosV - a) >= least) continue
      least = Math.min(least, rowDistance(rows, cosU, sinU, cosV, Math.sin(u - D + j * pitch)))
    }
  }
  return least
}

/** Steps a row pitch of the first look */
const STEPS = 720
const GOLDEN = (Math.sqrt(5) - 1) / 2
/** Rounds of the golden section: they narrow two steps to a part of 1e-9. */
const ROUNDS = 44

function refined(rows: Rows, D: number, from: number, to: number): { distance: number; at: number } {
  let [low, high] = [from, to]
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)]
  let [atLeft, atRight] = [clearanceAt(rows, left, D), clearanceAt(rows, right, D)]
  for (let round = 0; round < ROUNDS; round++) {
    if (atLeft <= atRight) {
      high = right
      ;[right, atRight] = [left, atLeft]
      left = high - GOLDEN * (high - low)
      atLeft = clearanceAt(rows, left, D)
    } else {
      low = left
      ;[left, atLeft] = [right, atRight]
      right = low + GOLDEN * (high - low)
      atRight = clearanceAt(rows, right, D)
    }
  }
  return atLeft <= atRight ? { distance: atLeft, at: left } : { distance: atRight, at: right }
}

export interface LeastClearance {
  readonly distance: number
  /** u at which it comes */
  readonly at: number
}

/**
 * Least distance over a whole turn, which repeats with every row pitch. Every dip of the first look that can reach
 * below the lowest one is refined: no row moves faster than its tip, so between two looks the distance changes
 * by at most 2 Rb times the step. `enough` ends the look at the first distance that is not above it; it begins at
 * `from`, so that a meeting that is expected there is found at once.
 */
export function leastClearance(rows: Rows, D: number, enough = 0, from = 0): LeastClearance {
  const step = rowPitch(rows.count) / STEPS
  const seen = new Float64Array(STEPS)
  let lowest = { distance: Infinity, at: 0 }
  for (let n = 0; n < STEPS; n++) {
    seen[n] = clearanceAt(rows, from + n * step, D)
    if (seen[n]! < lowest.distance) lowest = { distance: seen[n]!, at: from + n * step }
    if (seen[n]! <= enough) return lowest
  }
  const reach = 2 * rows.sweepRadius * step
  for (let n = 0; n < STEPS; n++) {
    const here = seen[n]!
    if (here - reach >= lowest.distance || lowest.distance === 0) continue
    if (here > seen[(n + 1) % STEPS]! || here > seen[(n + STEPS - 1) % STEPS]!) continue
    const dip = refined(rows, D, from + (n - 1) * step, from + (n + 1) * step)
    if (dip.distance < lowest.distance) lowest = dip
  }
  return lowest
}

/** Smallest step while looking ahead, in row pitches: a graze that is over sooner is passed by. */
const LEAST_STEP = 1 / 20_000

/**
 * How far [rad, from 0] both outputs can go on from u, u growing (+1) or falling (-1), before the distance comes
 * down to `need`; null where it never does. It steps as far as the distance left allows, so no meeting is stepped
 * over (conservative advancement: B. Mirtich, Impulse-based Dynamic Simulation, thesis, Berkeley 1996; from
 * memory).
 */
export function freeWay(rows: Rows, u: number, D: number, sense: 1 | -1, need: number): number | null {
  const pitch = rowPitch(rows.count)
  let free = 0
  let way = 0
  while (way <= pitch) {
    const left = clearanceAt(rows, u + sense * way, D) - need
    if (left <= 0) return free
    free = way
    way += Math.max(left / (2 * rows.sweepRadius), LEAST_STEP * pitch)
  }
  return null
}
