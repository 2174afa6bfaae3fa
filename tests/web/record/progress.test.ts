import { expect, test } from 'vitest'
import { FAMILIES } from '../../../sim/question/bank.ts'
import type { Sureness } from '../../../sim/question/marking.ts'
import { calibrationOf } from '../../../web/record/calibration.ts'
import { causeOf, lookAgain, progressOf } from '../../../web/record/progress.ts'
import type { Answered } from '../../../web/store/records.ts'
import { answer, bankQuestion, rightReply, workshopWith } from './answers.ts'

/** Signs: r right, w wrong, s skipped; a level behind it. */
function answers(family: string, signs: string): readonly Answered[] {
  const workshop = workshopWith()
  return signs.split(' ').map((sign, index) => {
    const question = bankQuestion(family, index)
    const sureness = Number(sign[1] ?? 0)
    const right = rightReply(question)
    const wrong = right.kind === 'number' ? { ...right, value: 1e6 + 0.5 } : right
    return answer(workshop, question, {
      reply: sign[0] === 's' ? null : sign[0] === 'r' ? right : wrong,
      ...(sureness === 0 ? {} : { sureness: sureness as Sureness }),
    })
  })
}

const standing = (signs: string) =>
  progressOf(answers('turns-worm', signs)).find(({ family }) => family === 'turns-worm')

test.each([
  ['r', 'open'],
  ['r r', 'open'],
  ['r r r', 'settled'],
  ['w r r r', 'settled'],
  ['r r r w', 'open'],
  ['r r s', 'open'],
  ['r s r r', 'open'],
])('%s is %s', (signs, expected) => {
  expect(standing(signs)?.standing).toBe(expected)
})

test('every family has its place, and one without answers is not met yet', () => {
  const all = progressOf(answers('turns-worm', 'r'))
  expect(all.map(({ family }) => family)).toEqual(FAMILIES.map(({ name }) => name))
  const others = all.filter(({ family }) => family !== 'turns-worm')
  expect(new Set(others.map((each) => each.standing))).toEqual(new Set(['not met yet']))
})

test('the last six answers are told, oldest first', () => {
  expect(standing('w r s r r w w r')?.last).toEqual([
    'no prediction',
    'right',
    'right',
    'not yet',
    'not yet',
    'right',
  ])
})

test('sure and wrong comes first, then less sure, then the newest; what was right since is gone', () => {
  const [first, second, third, fourth, fifth] = FAMILIES.filter(({ kind }) => kind === 'number').map(
    ({ name }) => name,
  )
  const all = [
    ...answers(first!, 'w1'),
    ...answers(second!, 'w3'),
    ...answers(third!, 'w3 r1'),
    ...answers(fourth!, 'w2 s'),
    ...answers(fifth!, 'w'),
  ]
  expect(lookAgain(all).map(({ family }) => family)).toEqual([second, fourth, first, fifth])
})

test('a cause that is recorded is told in the words of the bank, and an unknown one not at all', () => {
  const question = bankQuestion('turns-worm')
  const [slip] = question.ask.kind === 'number' ? question.ask.slips : []
  const answered = answer(workshopWith(), question, { reply: { kind: 'number', value: slip!.value } })
  expect(causeOf(answered)).toBe(slip!.sentence)
  expect(causeOf({ ...answered, cause: 'no such slip' })).toBe('')
  expect(causeOf({ ...answered, bank: 99 })).toBe('')
})

test('parameters that the family does not have are no question', () => {
  const answered = answer(workshopWith(), bankQuestion('turns-worm'), {
    reply: { kind: 'number', value: 1e6 },
  })
  for (const given of [{}, { z1: 'one', z2: 20, N: 1 }, { z1: 1, z2: 20, N: 1, more: 1 }])
    expect(causeOf({ ...answered, seed: '', given, cause: 'inverted' })).toBe('')
})

test('calibration counts each level, without those that had no prediction', () => {
  const levels = calibrationOf(answers('turns-worm', 'r3 w3 r3 r3 w2 s r w1 r1'))
  expect(levels.map(({ right, count }) => [right, count])).toEqual([
    [1, 2],
    [0, 1],
    [3, 4],
  ])
  expect(levels[2]?.share).toBe(0.75)
  expect(calibrationOf([]).map(({ share }) => share)).toEqual([null, null, null])
})

/** A. R. Gardner-Medwin, 2005: level 1 pays best below 67 %, level 3 above 80 %. */
test('each level pays best where its source says', () => {
  const [one, two, three] = calibrationOf([])
  expect(one!.paysFrom).toBe(0)
  expect(Math.round(100 * one!.paysTo)).toBe(67)
  expect(two!.paysFrom).toBe(one!.paysTo)
  expect(100 * three!.paysFrom).toBeCloseTo(80, 10)
  expect(three!.paysTo).toBe(1)
})
