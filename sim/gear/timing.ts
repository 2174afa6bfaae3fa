/**
 * How two outputs with rows are timed to each other by the tooth that a wheel is put in with. Angles in rad, lengths
 * in mm. Both wheels are the same part, not turned over. D is what the right rows are ahead of the mirror image of the
 * left ones; it stays the same while the machine turns, and only its part of a row pitch matters. Derived here.
 */
import {
  type LeastClearance,
  type Rows,
  freeWay,
  hubRoom,
  leastClearance,
  rowPitch,
} from './row-clearance.ts'

export interface TimedPair {
  readonly rows: Rows
  readonly starts: number
  readonly teeth: number
  /** 1 right-hand worm, -1 left-hand */
  readonly handSign: 1 | -1
  /** Angle of the first row in the right and in the left wheel's own frame, from the middle of a tooth space */
  readonly keyRight: number
  readonly keyLeft: number
  /** Angle of the left wheel at zero turns: `farSidePhase` */
  readonly farSide: number
  /** Distance of two rows, middle to middle, from which they are clear of each other */
  readonly need: number
}

const greatestCommonDivisor = (a: number, b: number): number =>
  b === 0 ? a : greatestCommonDivisor(b, a % b)

/** Rounding that must not make a whole pitch of nothing [rad] */
const ROUNDING = 1e-9

/** An angle as part of a pitch, in [0, pitch). */
function withinPitch(angle: number, pitch: number): number {
  const rest = angle - pitch * Math.floor(angle / pitch)
  return pitch - rest < ROUNDING || rest < ROUNDING ? 0 : rest
}

/**
 * D = kappaR + kappaL + delta - pi + 2 pi k/z2, within 2 pi/N.
 *
 * keyRight, keyLeft - kappaR, kappaL      farSide - delta
 * k  - teeth by which the left wheel is put in further about +y
 * z2 - teeth of each wheel                count - N, rows of each output
 */
export function rowOffset(
  { keyRight, keyLeft, farSide, teeth, rows }: TimedPair,
  toothOffset: number,
): number {
  const angle = keyRight + keyLeft + farSide - Math.PI + (2 * Math.PI * toothOffset) / teeth
  return withinPitch(angle, rowPitch(rows.count))
}

/** How many different D the choice of the tooth gives: z2/gcd(z2, N). */
export const phaseCount = (teeth: number, count: number): number =>
  teeth / greatestCommonDivisor(teeth, count)

/** From one of them to the next: 2 pi gcd(z2, N)/(z2 N) */
export const phaseSpacing = (teeth: number, count: number): number =>
  rowPitch(count) / phaseCount(teeth, count)

/**
 * Distance of two rows from which they are clear: their thickness, half of it on either side, and what the play of
 * both wheels can bring the tips nearer, Rb j for j [rad] of play in each mesh.
 */
export const neededDistance = (thickness: number, sweepRadius: number, play: number): number =>
  thickness + sweepRadius * play

export interface AssemblyPhase {
  readonly toothOffset: number
  /** D */
  readonly offset: number
  /** Least distance of two rows over a whole turn, middle to middle */
  readonly distance: number
  readonly clear: boolean
}

const clears = (pair: TimedPair, { distance }: LeastClearance): boolean =>
  distance > pair.need && hubRoom(pair.rows) > 0

export function assemblyPhase(pair: TimedPair, toothOffset: number): AssemblyPhase {
  const offset = rowOffset(pair, toothOffset)
  const least = leastClearance(pair.rows, offset)
  return { toothOffset, offset, distance: least.distance, clear: clears(pair, least) }
}

/** Every different way to put the left wheel in, the one with most room first; equals by the tooth. */
export function assemblyPhases(pair: TimedPair): readonly AssemblyPhase[] {
  const { teeth, rows } = pair
  const pitch = rowPitch(rows.count)
  // an offset and its mirror image leave the same room
  const seen = new Map<number, LeastClearance>()
  const leastAt = (offset: number): LeastClearance => {
    const key = Math.round(Math.min(offset, pitch - offset) / ROUNDING)
    const least = seen.get(key) ?? leastClearance(rows, offset)
    seen.set(key, least)
    return least
  }
  const phases = Array.from({ length: phaseCount(teeth, rows.count) }, (_, toothOffset): AssemblyPhase => {
    const offset = rowOffset(pair, toothOffset)
    const least = leastAt(offset)
    return { toothOffset, offset, distance: least.distance, clear: clears(pair, least) }
  })
  return phases.sort((one, other) =>
    Math.abs(one.distance - other.distance) < 1e-6
      ? one.toothOffset - other.toothOffset
      : other.distance - one.distance,
  )
}

/** Smallest step from one offset to the next while zones are looked for, in row pitches. */
const LEAST_ZONE_STEP = 1 / 4000

/**
 * Offsets D, from and to, within a row pitch, at which the rows come down to `need` somewhere in a turn. Only one of
 * the two rows moves with D, and its tip fastest, so from one look to the next it is safe to go as far as
 * the distance to the need divided by Rb.
 */
export function clashZones({
  rows,
  need,
}: Pick<TimedPair, 'rows' | 'need'>): readonly (readonly [number, number])[] {
  const half = rowPitch(rows.count) / 2
  const zones: [number, number][] = []
  let began: number | null = null
  let offset = 0
  while (offset < half) {
    const over = leastClearance(rows, offset).distance - need
    if (over <= 0) began ??= offset
    else if (began !== null) {
      zones.push([began, offset])
      began = null
    }
    offset += Math.max(Math.abs(over) / rows.sweepRadius, LEAST_ZONE_STEP * 2 * half)
  }
  const mirrored = zones.map(([from, to]): [number, number] => [2 * half - to, 2 * half - from]).reverse()
  if (began !== null) zones.push([began, 2 * half - began])
  return [...zones, ...mirrored]
}

/** The tooth nearest to a given one that clears, either way, with its least distance; null where none does. */
export function nearestClearPhase(pair: TimedPair, toothOffset: number): AssemblyPhase | null {
  const { teeth, rows, need } = pair
  if (hubRoom(rows) <= 0) return null
  const places = phaseCount(teeth, rows.count)
  let expected = 0
  for (let by = 0; by <= places / 2; by++) {
    for (const way of by === 0 ? [0] : [by, -by]) {
      const tooth = (((toothOffset + way) % teeth) + teeth) % teeth
      const offset = rowOffset(pair, tooth)
      const least = leastClearance(rows, offset, need, expected)
      expected = least.at
      if (clears(pair, least)) return { toothOffset: tooth, offset, distance: least.distance, clear: true }
    }
  }
  return null
}

/** Angle u of a right row for an angle [rad] of the right wheel about +y. */
export const rowAngle = (pair: TimedPair, rightWheel: number): number => pair.keyRight + rightWheel

export interface ClashAhead {
  /** Turns of the worm, from 0, that are free about +z and against it; null where nothing ever meets */
  readonly forward: number | null
  readonly back: number | null
}

/** How far the worm can turn from here, either way, before two rows come too near to each other. */
export function clashAhead(pair: TimedPair, u: number, offset: number): ClashAhead {
  const { rows, need, teeth, starts, handSign } = pair
  // a right-hand worm that turns about +z lets u fall
  const falls = handSign === 1 ? -1 : 1
  const turns = (way: number | null): number | null =>
    way === null ? null : (way * teeth) / (2 * Math.PI * starts)
  return {
    forward: turns(freeWay(rows, u, offset, falls, need)),
    back: turns(freeWay(rows, u, offset, falls === 1 ? -1 : 1, need)),
  }
}
