/** A wheel's pointer swells for a moment when the mark lands on it. */
import type { Object3D } from 'three'
import { type WormTurns, writeFractions } from '../../sim/drive/turns.ts'

export interface Landing {
  /** Of the worm's and the wheels' turns at the last frame */
  readonly fractions: Float64Array
  /** Since the mark landed [s] */
  since: number
}

const SWELL_SECONDS = 0.15
const SWELL = 0.15

export const newLanding = (): Landing => ({ fractions: new Float64Array(2), since: SWELL_SECONDS })

/** Between two frames the mark passed or reached its pointer: the fraction ran over, or came to rest on zero. */
const landed = (before: number, now: number): boolean =>
  Math.abs(now - before) > 0.5 || (now === 0 && before !== 0)

/** Follows the wheels, which pass their pointers together; true while the pointers are still swollen. */
export function followLanding(
  landing: Landing,
  turns: WormTurns,
  z1: number,
  z2: number,
  elapsed: number,
): boolean {
  const { fractions } = landing
  const before = fractions[1]!
  writeFractions(fractions, turns, z1, z2)
  landing.since = landed(before, fractions[1]!) ? 0 : Math.min(SWELL_SECONDS, landing.since + elapsed)
  return landing.since < SWELL_SECONDS
}

export function swell(landing: Landing, left: Object3D | null, right: Object3D | null): void {
  const size = 1 + SWELL * (1 - landing.since / SWELL_SECONDS)
  left?.scale.setScalar(size)
  right?.scale.setScalar(size)
}
