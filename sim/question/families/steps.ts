/** What another setting makes of the counts. */
import type { NumberFamily } from '../family.ts'
import { type Pair, gearingOf, pairOf, pairText } from './counts.ts'

/** Motor speeds at two settings [r/min], and for how long they run [s] */
type Stepped = Pair & { readonly nA: number; readonly nB: number; readonly t: number }

const MINUTE = 60

/** Speeds of a small motor at its settings, round ones first [r/min] */
const ROUND_SPEEDS = [1200, 1800, 2400, 3000, 3600, 4200, 4800, 5400, 6000]
const RUNNING_SPEEDS = [1450, 1930, 2230, 2840, 2970, 3420, 3690, 4380, 5050, 5760]

export const stepTurns: NumberFamily<Stepped> = {
  kind: 'number',
  name: 'step-turns',
  title: 'Turns at another setting',
  parameters: [
    ...pairOf<Stepped>(),
    { name: 'nA', values: (level) => (level === 3 ? RUNNING_SPEEDS : ROUND_SPEEDS).slice(0, -1) },
    {
      name: 'nB',
      values: (level, { nA }) => (level === 3 ? RUNNING_SPEEDS : ROUND_SPEEDS).filter((n) => n > nA),
    },
    { name: 't', values: (level) => (level === 3 ? [5, 8, 12, 25, 45] : [5, 10, 15, 20, 30, 60]) },
  ],
  accepts: (given, level) => level === 3 || Number.isInteger(2 * stepTurns.answer(given)),
  example: { z1: 1, z2: 20, nA: 2400, nB: 4800, t: 10 },
  texts: [
    (given) =>
      `${pairText(given)} At one setting the motor makes ${given.nA} r/min, at the next ${given.nB} r/min. How many turns more does the left wheel make in ${given.t} s?`,
    ({ z1, z2, nA, nB, t }) =>
      `A setting takes the motor from ${nA} to ${nB} r/min. ${pairText({ z1, z2 })} In ${t} s, how many extra turns of the left wheel is that?`,
  ],
  unit: () => 'turn',
  tolerance: 'r1',
  answer: ({ z1, z2, nA, nB, t }) => ((nB - nA) * t * z1) / (MINUTE * z2),
  working: ({ z1, z2, nA, nB, t }) => `(${nB} − ${nA}) × ${t} ÷ 60 × ${z1} ÷ ${z2}`,
  slips: [
    { cause: 'worm-not-wheel', value: ({ nA, nB, t }) => ((nB - nA) * t) / MINUTE },
    { cause: 'not-extra', value: ({ z1, z2, nB, t }) => (nB * t * z1) / (MINUTE * z2) },
    { cause: 'no-60', value: ({ z1, z2, nA, nB, t }) => ((nB - nA) * t * z1) / z2 },
    { cause: 'inverted', value: ({ z1, z2, nA, nB, t }) => ((nB - nA) * t * z2) / (MINUTE * z1) },
    {
      cause: 'no-starts',
      value: ({ z1, z2, nA, nB, t }) => (z1 > 1 ? ((nB - nA) * t) / (MINUTE * z2) : null),
    },
  ],
  reasons: () => [
    'The teeth set the ratio: the extra turns of the worm are divided by it, as all others are.',
    'A faster setting changes the ratio.',
    'The wheels hardly notice: their speed stays the same.',
  ],
  watch: ({ t }) => ({
    sight: 'readings',
    words: `Let it run ${t} s at one setting, then as long at another, and put the counts side by side.`,
    turns: null,
  }),
  gearing: gearingOf,
}
