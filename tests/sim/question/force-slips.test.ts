import { expect, test } from 'vitest'
import { familyNamed } from '../../../sim/question/bank.ts'
import type { Given } from '../../../sim/question/family.ts'
import { questionWith } from '../../../sim/question/instance.ts'
import { mark } from '../../../sim/question/marking.ts'
import type { Question } from '../../../sim/question/question.ts'
import { relativelyNear } from '../../support/near.ts'

/** Worked by hand and by a separate script from what each slip is, to five figures or all of them. */
const PART = 5e-5
const rows: readonly (readonly [family: string, given: Given, wrong: Readonly<Record<string, number>>])[] = [
  [
    'torque-total',
    { z1: 3, z2: 24, T: 0.05 },
    { 'each-full': 0.8, 'one-wheel': 0.2, inverted: 0.00625, 'no-starts': 1.2, 'torque-unchanged': 0.05 },
  ],
  [
    'torque-total',
    { z1: 2, z2: 24, T: 0.05 },
    { 'each-full': 1.2, 'one-wheel': 0.3, inverted: 0.00416667, 'torque-unchanged': 0.05 },
  ],
  [
    'torque-total',
    { z1: 1, z2: 20, T: 0.05 },
    { 'each-full': 2, 'one-wheel': 0.5, inverted: 0.0025, 'torque-unchanged': 0.05 },
  ],
  [
    'torque-each',
    { z1: 3, z2: 24, T: 0.05 },
    { 'forgot-second': 0.4, doubled: 0.8, inverted: 0.003125, 'no-starts': 0.6, 'halved-twice': 0.1 },
  ],
  [
    'torque-lossy',
    { z1: 3, z2: 24, T: 0.05, e: 0.8 },
    {
      'no-loss': 0.2,
      'forgot-second': 0.32,
      'divided-by-eff': 0.25,
      'loss-twice': 0.128,
      'loss-share': 0.04,
      'no-starts': 0.48,
    },
  ],
  [
    'torque-uneven',
    { z1: 3, z2: 24, T: 0.05, e: 0.8, T1: 0.1 },
    { 'equal-share': 0.16, 'no-loss': 0.3, 'each-full': 0.32, 'same-as-other': 0.1 },
  ],
  [
    'torque-motor',
    { z1: 3, z2: 24, T1: 0.4, T2: 0.2, e: 0.5 },
    { 'one-wheel': 0.1, 'no-loss': 0.075, 'times-eff': 0.0375, inverted: 9.6, 'no-starts': 0.05 },
  ],
  [
    'power-shaft',
    { T: 0.5, n: 120, wheels: 2 },
    { 'no-2pi': 2, 'no-60': 753.98, 'torque-times-rpm': 120, 'forgot-second': 6.2832 },
  ],
  ['power-shaft', { T: 0.5, n: 120, wheels: 1 }, { 'no-2pi': 1, 'no-60': 376.99, 'torque-times-rpm': 60 }],
  [
    'power-chain',
    { P: 100, stages: 3, e1: 0.5, e2: 0.8, e3: 0.9, e4: 1, ask: 'each' },
    {
      'losses-added': 10,
      averaged: 36.6667,
      'last-stage': 25,
      'loss-for-output': 64,
      'forgot-second': 36,
    },
  ],
  [
    'power-chain',
    { P: 100, stages: 3, e1: 0.5, e2: 0.8, e3: 0.9, e4: 1, ask: 'loss' },
    { 'losses-added': 80, averaged: 26.6667, 'last-stage': 50, 'output-for-loss': 36 },
  ],
  [
    'lock-friction',
    { z1: 2, q: 10, an: 20 },
    {
      'friction-vs-lead-only': 0.2,
      'no-starts': 0.093969,
      'divided-by-cos': 0.21284,
      'lead-angle-deg': 11.31,
    },
  ],
  [
    'mesh-efficiency',
    { z1: 2, q: 18, an: 20, mu: 0.1 },
    { 'one-minus-mu': 90, backward: 4.17464, 'no-pressure-angle': 52.0468, 'no-starts': 34.0964 },
  ],
  [
    'back-torque',
    { z1: 1, z2: 20, q: 10, an: 20, mu: 0.05, Tc: 0.006 },
    { 'no-loss': 0.12, 'forward-eff': 0.18483, inverted: 0.0003, 'times-eff': 0.055852 },
  ],
  [
    'thrust-axial',
    { T1: 0.4, T2: 0.2, d2: 40, z2: 16 },
    { cancels: 10, 'one-wheel': 20, 'diameter-for-radius': 15, 'teeth-for-diameter': 75 },
  ],
  [
    'thrust-radial',
    { T1: 0.4, T2: 0.1, d2: 40, z1: 1, q: 10, an: 20 },
    { 'radial-adds': 9.1447, 'one-wheel': 7.3157, 'no-pressure-angle': 15 },
  ],
]

const questionOf = (family: string, given: Given): Question => questionWith(familyNamed(family)!, given)

test.each(rows)(
  'the slips of %s with %o lead where they should, and are known again',
  (family, given, wrong) => {
    const question = questionOf(family, given)
    const { ask } = question
    if (ask.kind !== 'number') throw new Error('a number is asked for')
    const found = Object.fromEntries(ask.slips.map(({ cause, value }) => [cause, value]))
    expect(Object.keys(found).toSorted()).toEqual(Object.keys(wrong).toSorted())
    for (const [cause, value] of Object.entries(wrong)) {
      relativelyNear(found[cause]!, value, PART)
      expect(mark(question, { kind: 'number', value })).toMatchObject({ right: false, cause })
    }
  },
)

const choices: readonly (readonly [given: Given, answer: string, causes: readonly string[]])[] = [
  [{ z1: 1, q: 10, an: 20, mu: 0.06, z2: 40 }, 'turns', ['always-locks', 'ratio-decides']],
  [{ z1: 2, q: 10, an: 20, mu: 0.12, z2: 24 }, 'turns', ['always-locks', 'no-starts']],
  [{ z1: 1, q: 10, an: 20, mu: 0.097, z2: 20 }, 'holds', ['friction-vs-lead-only', 'ratio-decides']],
]

test.each(choices)('%o leads to "%s" and misleads by %o', (given, answer, causes) => {
  const { ask } = questionOf('lock-choice', given)
  if (ask.kind !== 'choice') throw new Error('a choice is asked for')
  expect(ask.answer).toBe(answer)
  expect(ask.slips.map(({ cause }) => cause)).toEqual(causes)
})
