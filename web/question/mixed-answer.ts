/** Answers in turns that a small fraction tells exactly. */
import type { Question } from '../../sim/question/question.ts'
import { type MixedTurns, mixedTurns } from '../instrument/mixed.ts'

const LARGEST_BOTTOM = 12
/** As close as an exact answer has to be met */
const EXACT = 1e-9

/** 10 1/3 for 31/3 turns; null where another unit is asked or no small fraction fits. */
export function mixedAnswer({ ask }: Question): MixedTurns | null {
  if (ask.kind !== 'number' || ask.unit !== 'turn' || ask.answer <= 0) return null
  for (let bottom = 1; bottom <= LARGEST_BOTTOM; bottom++) {
    const top = Math.round(ask.answer * bottom)
    if (Math.abs(top / bottom - ask.answer) <= EXACT * ask.answer) return mixedTurns(top, bottom)
  }
  return null
}
