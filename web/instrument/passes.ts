/** The last passes of the worm's mark as a table: what the tape shows, for readers of screens. */
import { type WormTurns, noTurns } from '../../sim/drive/turns.ts'
import { countText, newCount, wheelCount } from './count.ts'

export interface Pass {
  /** Whole worm turn at which the mark stood at its pointer */
  readonly turn: number
  readonly left: string
  readonly right: string
}

const MOST = 20

export interface PassGearing {
  readonly z1: number
  readonly z2: number
  readonly leftSense: 1 | -1
  readonly rightSense: 1 | -1
}

/** Newest first, at most 20, from the count of zero to where the worm stands. */
export function lastPasses(turns: WormTurns, { z1, z2, leftSense, rightSense }: PassGearing): Pass[] {
  const exact = turns.ticks === 0 && turns.rest === 0
  const newest = turns.turns >= 0 || exact ? turns.turns : turns.turns + 1
  const way = newest < 0 ? 1 : -1
  const passes: Pass[] = []
  const place = noTurns()
  const count = newCount()
  for (let i = 0; i < Math.min(MOST, Math.abs(newest)); i++) {
    place.turns = newest + way * i
    passes.push({
      turn: place.turns,
      left: countText(wheelCount(count, place, z1, z2, leftSense)),
      right: countText(wheelCount(count, place, z1, z2, rightSense)),
    })
  }
  return passes
}
