import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { familyNamed } from '../../../sim/question/bank.ts'
import { questionWith } from '../../../sim/question/instance.ts'
import {
  type Exercise,
  asked,
  committed,
  compared,
  noExercise,
  skipped,
  withAnswer,
  withNote,
  withOwnCount,
  withReason,
  withSureness,
  withTap,
  withoutLastTap,
} from '../../../web/store/exercise.ts'

const turnsWorm = questionWith(familyNamed('turns-worm')!, { z1: 3, z2: 31, N: 1 })
const numbered = (value: number) => (last: Exercise) =>
  withAnswer(last, String(value), { kind: 'number', value })

describe('an exercise', () => {
  const guessed = withSureness(numbered(12)(asked(turnsWorm)), 2)
  const counting = committed(guessed)
  test('is not committed without an answer that reads', () => {
    const open = withAnswer(asked(turnsWorm), 'twelve', null)
    expect(committed(open)).toBe(open)
    expect(committed(noExercise)).toBe(noExercise)
  })
  test('keeps what was committed whatever comes afterwards', () => {
    const change = fc.constantFrom<(last: Exercise) => Exercise>(
      numbered(20),
      (last) => withSureness(last, 3),
      committed,
      skipped,
      (last) => withTap(last, 1),
      withoutLastTap,
      (last) => withOwnCount(last, '9'),
      compared,
      (last) => withReason(last, 1),
      (last) => withNote(last, 'so'),
    )
    fc.assert(
      fc.property(fc.array(change), (changes) => {
        const after = changes.reduce((last, next) => next(last), counting)
        const { text, reply, sureness, question } = after
        expect({ text, reply, sureness, question }).toEqual({
          text: '12',
          reply: { kind: 'number', value: 12 },
          sureness: 2,
          question: turnsWorm,
        })
        expect(after.phase).not.toBe('predict')
        expect(after.skipped).toBe(false)
      }),
      { seed: 22 },
    )
  })
  test('takes taps and a count only while counting, a reason only in the comparison', () => {
    expect(withTap(guessed, 1)).toBe(guessed)
    expect(withOwnCount(guessed, '3')).toBe(guessed)
    expect(withReason(counting, 0)).toBe(counting)
    const tapped = withTap(withTap(counting, 1.1), 2.2)
    expect(withoutLastTap(tapped).taps).toEqual([1.1])
    expect(withTap(compared(tapped), 3).taps).toEqual([1.1, 2.2])
  })
  test('a skipped prediction leaves no answer behind', () => {
    expect(skipped(guessed)).toMatchObject({ phase: 'count', skipped: true, text: '', reply: null })
  })
})
