/** Teeth that pass, and when the same tooth meets the same start again. */
import { phaseCount } from '../../gear/timing.ts'
import type { NumberFamily } from '../family.ts'
import { fractionText } from '../value-text.ts'
import { type Pair, gearingOf, pairOf, pairText, startsText, teethText, turnsText } from './counts.ts'

type Passed = Pair & { readonly N: number }
type Returned = Pair & { readonly ask: 'worm' | 'wheel' }

export const teethPassed: NumberFamily<Passed> = {
  kind: 'number',
  name: 'teeth-passed',
  title: 'Teeth that pass',
  parameters: [
    ...pairOf<Passed>(),
    {
      name: 'N',
      values: (level) => (level === 3 ? [0.5, 1.5, 2.5, 3.5, 4.5, 7.5] : [2, 3, 4, 5, 6, 8, 10, 12]),
    },
  ],
  example: { z1: 2, z2: 20, N: 5 },
  texts: [
    (given) =>
      `${pairText(given)} How many teeth of the left wheel pass the worm while it makes ${turnsText(given.N)}?`,
    ({ z1, z2, N }) =>
      `${startsText(z1)} on the worm, ${teethText(z2)} on each wheel. By how many teeth does the left wheel move on while the worm makes ${turnsText(N)}?`,
  ],
  unit: () => '1',
  tolerance: 'r0.5',
  answer: ({ z1, N }) => N * z1,
  working: ({ z1, N }) => `${fractionText(N)} × ${z1}`,
  slips: [
    { cause: 'no-starts', apart: true, value: ({ z1, N }) => (z1 > 1 ? N : null) },
    { cause: 'whole-wheel', value: ({ z2, N }) => N * z2 },
    { cause: 'both-added', value: ({ z1, N }) => 2 * N * z1 },
    { cause: 'inverted', value: ({ z1, z2, N }) => (N * z1) / z2 },
  ],
  reasons: ({ z1 }) => [
    `With ${startsText(z1)} on the worm, each of its turns moves ${teethText(z1)} on.`,
    'One turn of the worm is one turn of the wheel, with all its teeth.',
    'The teeth of both wheels count together.',
  ],
  watch: ({ N }) => ({
    sight: 'teeth',
    words: 'Count the teeth that go past the pointer of the left wheel.',
    turns: N,
  }),
  gearing: gearingOf,
  trial: ({ N }) => ({
    top: 4 * N,
    bottom: 4,
    counted: 'teeth',
    words:
      'Count each tooth of the left wheel that passes. The machine stops when the worm has turned as far as asked.',
  }),
}

/** z2/gcd(z1, z2) turns of the worm bring back both its place and the wheel's, as they do two rows of a wheel. */
const wormTurnsBack = ({ z1, z2 }: Pair): number => phaseCount(z2, z1)
const wheelTurnsBack = ({ z1, z2 }: Pair): number => phaseCount(z1, z2)
const sharesFactor = (given: Pair): boolean => wormTurnsBack(given) < given.z2

export const toothReturn: NumberFamily<Returned> = {
  kind: 'number',
  name: 'tooth-return',
  title: 'The same tooth again',
  parameters: [
    { name: 'z1', values: (level) => (level === 1 ? [1] : [2, 3, 4]) },
    {
      name: 'z2',
      values: (level) =>
        level === 3 ? [18, 20, 21, 26, 27, 30, 33, 34, 38] : [15, 17, 19, 20, 25, 29, 31, 35],
    },
    { name: 'ask', values: (level) => (level === 1 ? ['worm'] : ['worm', 'wheel']) },
  ],
  accepts: (given, level) => sharesFactor(given) === (level === 3),
  example: { z1: 3, z2: 31, ask: 'worm' },
  texts: [
    (given) =>
      `${pairText(given)} One start and one tooth of the left wheel are painted where they meet. After how many turns of ${given.ask === 'worm' ? 'the worm' : 'the left wheel'} do these two meet again?`,
    ({ z1, z2, ask }) =>
      `A painted start meets a painted tooth of the left wheel. How many turns does ${ask === 'worm' ? 'the worm' : 'the left wheel'} make until they meet again, with ${startsText(z1)} and ${teethText(z2)}?`,
  ],
  unit: () => 'turn',
  tolerance: 'exact',
  answer: (given) => (given.ask === 'worm' ? wormTurnsBack(given) : wheelTurnsBack(given)),
  working: (given) => {
    const { z1, z2, ask } = given
    const factor = z2 / wormTurnsBack(given)
    return `The largest number that divides ${z1} and ${z2} is ${factor}: ${ask === 'worm' ? z2 : z1} ÷ ${factor}`
  },
  slips: [
    { cause: 'ratio-rounded', value: ({ z1, z2 }) => (z2 % z1 === 0 ? null : Math.round(z2 / z1)) },
    { cause: 'all-teeth', value: (given) => (sharesFactor(given) && given.ask === 'worm' ? given.z2 : null) },
    { cause: 'product', value: ({ z1, z2 }) => z1 * z2 },
    { cause: 'one-turn', value: () => 1 },
    { cause: 'worm-for-wheel', value: (given) => (given.ask === 'wheel' ? wormTurnsBack(given) : null) },
    { cause: 'starts', value: (given) => (sharesFactor(given) && given.ask === 'wheel' ? given.z1 : null) },
  ],
  reasons: () => [
    'Both must have made whole turns at the same time.',
    'All teeth are alike, so the pair meets again at the next tooth.',
    'The start comes back after each turn, and the tooth with it.',
  ],
  watch: (given) => ({
    sight: 'marks',
    words: 'Turn until the worm’s mark and the left wheel’s mark are back at their pointers together.',
    turns: wormTurnsBack(given),
  }),
  gearing: gearingOf,
  trial: (given) => ({
    top: wormTurnsBack(given),
    bottom: 1,
    counted: given.ask === 'worm' ? 'worm' : 'left',
    words: `Count each pass of the ${given.ask === 'worm' ? 'worm’s' : 'left wheel’s'} mark. The machine stops when both marks are back together.`,
  }),
}
