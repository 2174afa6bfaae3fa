/** What slips about turns, teeth, putting together and choosing lead to, worked by hand and by a separate script. */
import { expect, test } from 'vitest'
import { FAMILIES, familyNamed } from '../../../sim/question/bank.ts'
import type { Given, Tolerance } from '../../../sim/question/family.ts'
import { questionWith } from '../../../sim/question/instance.ts'
import { relativelyNear } from '../../support/near.ts'

/** Six figures, or all of them */
const PART = 5e-6
const rows: readonly (readonly [family: string, given: Given, wrong: Readonly<Record<string, number>>])[] = [
  [
    'turns-worm',
    { z1: 3, z2: 36, N: 2 },
    { inverted: 0.166667, 'no-starts': 72, 'times-starts': 216, 'both-added': 48, 'one-turn-only': 12 },
  ],
  [
    'turns-wheel',
    { z1: 3, z2: 36, N: 48 },
    { inverted: 576, 'no-starts': 1.33333, halved: 2, 'times-starts': 0.444444 },
  ],
  [
    'turns-angle',
    { z1: 3, z2: 36, d: 90, from: 'wheel' },
    { inverted: 0.0208333, 'no-starts': 9, 'deg-as-turns': 1080, 'full-turn': 12, halved: 1.5 },
  ],
  [
    'turns-angle',
    { z1: 3, z2: 36, d: 90, from: 'worm' },
    { inverted: 1080, 'no-starts': 2.5, 'full-turn': 30, halved: 3.75, 'turns-as-deg': 0.0208333 },
  ],
  [
    'teeth-passed',
    { z1: 3, z2: 36, N: 5 },
    { 'no-starts': 5, 'whole-wheel': 180, 'both-added': 30, inverted: 0.416667 },
  ],
  [
    'step-turns',
    { z1: 2, z2: 20, nA: 2400, nB: 3600, t: 30 },
    { 'worm-not-wheel': 600, 'not-extra': 180, 'no-60': 3600, inverted: 6000, 'no-starts': 30 },
  ],
  [
    'tooth-return',
    { z1: 4, z2: 38, ask: 'worm' },
    { 'ratio-rounded': 10, 'all-teeth': 38, product: 152, 'one-turn': 1 },
  ],
  [
    'tooth-return',
    { z1: 3, z2: 31, ask: 'wheel' },
    { 'ratio-rounded': 10, product: 93, 'one-turn': 1, 'worm-for-wheel': 31 },
  ],
  [
    'assembly-teeth',
    { z1: 3, z2: 36, k: 2 },
    { 'tooth-is-degree': 2, 'half-pitch': 10, 'times-starts': 60, 'worm-angle': 240 },
  ],
  ['assembly-phase', { z1: 3, z2: 36 }, { 'always-aligns': 0, 'whole-pitch': 10 }],
  ['assembly-phase', { z1: 2, z2: 36 }, { parity: 5 }],
  [
    'count-limits',
    { N1: 120, N2: 12 },
    { 'exact-ratio': 10, 'both-plus': 9.30769, 'one-only': 10.0833, lowest: 9.15385 },
  ],
  [
    'design-spacing',
    { m: 3, q: 8, z1: 3, z2: 15 },
    { 'one-side': 34.5, 'spur-rule': 54, 'wheel-only': 45, 'no-module': 23 },
  ],
  ['design-teeth', { z1: 3, n: 1930, n2: 260 }, { 'no-starts': 7, 'over-starts': 2, 'both-halved': 11 }],
  ['design-teeth', { z1: 2, n: 2230, n2: 350 }, { 'no-starts': 6, 'over-starts': 3, 'cut-short': 12 }],
  [
    'lost-motion',
    { jt: 0.2, d2: 50, z1: 2, z2: 30 },
    { 'wheel-angle': 0.458366, 'diameter-for-radius': 3.43775, radians: 0.12, 'no-starts': 13.751 },
  ],
]

test.each(rows)('%s %o', (name, given, wrong) => {
  const { ask } = questionWith(familyNamed(name)!, given)
  if (ask.kind !== 'number') throw new Error(`${name} asks for a number`)
  expect(ask.slips.map(({ cause }) => cause)).toEqual(Object.keys(wrong))
  for (const { cause, value } of ask.slips) {
    const expected = wrong[cause]!
    if (expected === 0) expect(value).toBe(0)
    else relativelyNear(value, expected, PART)
  }
})

/** How near an answer has to come, decided with each question: counts closely, what is measured less so. */
const NEAR: Readonly<Record<Tolerance, readonly string[]>> = {
  exact: ['tooth-return', 'strobe-images', 'design-teeth'],
  'r0.5': [
    'turns-worm',
    'turns-wheel',
    'turns-angle',
    'teeth-passed',
    'wheel-speed',
    'torque-total',
    'torque-each',
    'strobe-apparent',
    'strobe-teeth',
    'assembly-teeth',
    'assembly-phase',
    'supply-peak',
    'supply-pulses',
    'count-limits',
    'design-spacing',
  ],
  r1: [
    'step-turns',
    'speed-volts',
    'stall-current',
    'torque-lossy',
    'torque-uneven',
    'torque-motor',
    'power-shaft',
    'power-chain',
    'lock-friction',
    'mesh-efficiency',
    'thrust-axial',
    'brush-days',
    'transformer-tap',
    'lost-motion',
  ],
  r2: ['back-torque', 'thrust-radial', 'bleed-time'],
  'a0.5': ['heat-rise'],
  a1: ['heat-resistance'],
}

test.each(Object.entries(NEAR))('within %s lie the answers of %j', (tolerance, names) => {
  const found = FAMILIES.filter((family) => family.kind === 'number' && family.tolerance === tolerance)
  expect(found.map(({ name }) => name).toSorted()).toEqual(names.toSorted())
})
