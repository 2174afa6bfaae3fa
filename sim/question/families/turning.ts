/** How far worm and wheels turn: counts that the marks on the stage settle. */
import { wheelTurnsValue } from '../../drive/turns.ts'
import type { Family, NumberFamily } from '../family.ts'
import { fractionText } from '../value-text.ts'
import {
  type Pair,
  gearingOf,
  pairOf,
  pairText,
  startsText,
  suits,
  teethATurn,
  teethText,
  turnsText,
} from './counts.ts'

/** How often one of them turns */
type Turned = Pair & { readonly N: number }
type Angled = Pair & { readonly d: number; readonly from: 'wheel' | 'worm' }

/** Longer than this a count on the stage takes too long [turn of the worm] */
const MOST_TURNS = 120

const turnsWorm: NumberFamily<Turned> = {
  kind: 'number',
  name: 'turns-worm',
  title: 'Worm turns for wheel turns',
  parameters: [
    ...pairOf<Turned>(),
    { name: 'N', values: (level) => (level === 1 ? [1, 2, 3] : [0.25, 0.5, 1, 2, 3, 4, 5, 6]) },
  ],
  accepts: (given, level) => suits(turnsWorm.answer(given), level),
  example: { z1: 1, z2: 20, N: 1 },
  texts: [
    (given) => `${pairText(given)} How many turns of the worm make ${turnsText(given.N)} of the left wheel?`,
    ({ z1, z2, N }) =>
      `${startsText(z1)} on the worm, ${teethText(z2)} on each wheel: how many turns does the worm make while the left wheel makes ${turnsText(N)}?`,
  ],
  unit: () => 'turn',
  tolerance: 'r0.5',
  answer: ({ z1, z2, N }) => (N * z2) / z1,
  working: ({ z1, z2, N }) => `${fractionText(N)} × ${z2} ÷ ${z1}`,
  slips: [
    { cause: 'inverted', apart: true, value: ({ z1, z2, N }) => (N * z1) / z2 },
    { cause: 'no-starts', apart: true, value: ({ z1, z2, N }) => (z1 > 1 ? N * z2 : null) },
    { cause: 'times-starts', value: ({ z1, z2, N }) => (z1 > 1 ? N * z2 * z1 : null) },
    { cause: 'both-added', value: ({ z1, z2, N }) => (2 * N * z2) / z1 },
    { cause: 'one-turn-only', value: ({ z1, z2, N }) => (N === 1 ? null : z2 / z1) },
  ],
  reasons: ({ z1 }) => [
    teethATurn(z1),
    'The two wheels share the turns of the worm.',
    'The larger part turns the faster.',
  ],
  watch: (given) => ({
    sight: 'marks',
    words: `Count the worm’s mark while the left wheel makes ${turnsText(given.N)}.`,
    turns: turnsWorm.answer(given),
  }),
  gearing: gearingOf,
  trial: ({ z1, z2, N }) => ({
    top: 4 * N * z2,
    bottom: 4 * z1,
    counted: 'worm',
    words:
      'Count each pass of the worm’s mark. The machine stops when the left wheel has turned as far as asked.',
  }),
}

/** Worm turns after which the wheel has made whole turns, or halves */
const WHEEL_TURNS: Readonly<Record<1 | 2, readonly number[]>> = {
  1: [1, 2, 3, 4, 5],
  2: [0.5, 1, 1.5, 2, 3, 4],
}
const WORM_TURNS = [5, 8, 10, 12, 15, 25, 30, 50, 75, 100]

const turnsWheel: NumberFamily<Turned> = {
  kind: 'number',
  name: 'turns-wheel',
  title: 'Wheel turns for worm turns',
  parameters: [
    ...pairOf<Turned>(),
    {
      name: 'N',
      values: (level, { z1, z2 }) =>
        level === 3
          ? WORM_TURNS
          : WHEEL_TURNS[level]
              .map((turns) => (turns * z2) / z1)
              .filter((turns) => Number.isInteger(turns) && turns <= MOST_TURNS),
    },
  ],
  accepts: (given, level) => suits(turnsWheel.answer(given), level),
  example: { z1: 1, z2: 20, N: 40 },
  texts: [
    (given) => `${pairText(given)} The worm makes ${turnsText(given.N)}. How many does the left wheel make?`,
    ({ z1, z2, N }) =>
      `How many turns does each wheel make while the worm makes ${turnsText(N)}? ${pairText({ z1, z2 })}`,
  ],
  unit: () => 'turn',
  tolerance: 'r0.5',
  answer: ({ z1, z2, N }) => wheelTurnsValue({ turns: N, ticks: 0, rest: 0 }, z1, z2),
  working: ({ z1, z2, N }) => `${N} × ${z1} ÷ ${z2}`,
  slips: [
    { cause: 'inverted', apart: true, value: ({ z1, z2, N }) => (N * z2) / z1 },
    { cause: 'no-starts', apart: true, value: ({ z1, z2, N }) => (z1 > 1 ? N / z2 : null) },
    { cause: 'halved', value: ({ z1, z2, N }) => (N * z1) / z2 / 2 },
    { cause: 'times-starts', value: ({ z1, z2, N }) => (z1 > 1 ? N / (z1 * z2) : null) },
  ],
  reasons: ({ z1 }) => [
    `${teethATurn(z1)} Both wheels make the full count.`,
    'The turns of the worm are shared out between the two wheels.',
    'A wheel turns as often as the worm that drives it.',
  ],
  watch: ({ N }) => ({
    sight: 'marks',
    words: 'Follow both wheels’ marks together: each makes the full count.',
    turns: N,
  }),
  gearing: gearingOf,
  trial: ({ N }) => ({
    top: N,
    bottom: 1,
    counted: 'left',
    words:
      'Count each pass of the left wheel’s mark. The machine stops when the worm has turned as often as asked.',
  }),
}

const ANGLES = [18, 30, 36, 45, 60, 72, 90, 120, 150, 180, 270]

const turnsAngle: NumberFamily<Angled> = {
  kind: 'number',
  name: 'turns-angle',
  title: 'Part of a turn',
  parameters: [
    ...pairOf<Angled>(),
    { name: 'd', values: () => ANGLES },
    { name: 'from', values: () => ['wheel', 'worm'] },
  ],
  accepts: (given, level) => suits(turnsAngle.answer(given), level),
  example: { z1: 1, z2: 20, d: 90, from: 'wheel' },
  texts: [
    (given) =>
      given.from === 'wheel'
        ? `${pairText(given)} How many turns of the worm move the left wheel by ${given.d}°?`
        : `${pairText(given)} The worm turns by ${given.d}°. By how many degrees does the left wheel turn?`,
    ({ z1, z2, d, from }) =>
      from === 'wheel'
        ? `${startsText(z1)} on the worm, ${teethText(z2)} on each wheel. The left wheel is to turn by ${d}°: how many turns does the worm make?`
        : `${startsText(z1)} on the worm, ${teethText(z2)} on each wheel. How many degrees does the left wheel turn for ${d}° of the worm?`,
  ],
  unit: ({ from }) => (from === 'wheel' ? 'turn' : 'deg'),
  tolerance: 'r0.5',
  answer: ({ z1, z2, d, from }) => (from === 'wheel' ? (d * z2) / (360 * z1) : (d * z1) / z2),
  working: ({ z1, z2, d, from }) =>
    from === 'wheel' ? `${d}° ÷ 360° × ${z2} ÷ ${z1}` : `${d}° × ${z1} ÷ ${z2}`,
  slips: [
    {
      cause: 'inverted',
      apart: true,
      value: ({ z1, z2, d, from }) => (from === 'wheel' ? (d * z1) / (360 * z2) : (d * z2) / z1),
    },
    {
      cause: 'no-starts',
      apart: true,
      value: ({ z1, z2, d, from }) => (z1 > 1 ? (from === 'wheel' ? (d * z2) / 360 : d / z2) : null),
    },
    { cause: 'deg-as-turns', value: ({ z1, z2, d, from }) => (from === 'wheel' ? (d * z2) / z1 : null) },
    { cause: 'full-turn', value: ({ z1, z2, from }) => (from === 'wheel' ? z2 / z1 : (360 * z1) / z2) },
    { cause: 'halved', value: (given) => turnsAngle.answer(given) / 2 },
    {
      cause: 'turns-as-deg',
      value: ({ z1, z2, d, from }) => (from === 'worm' ? (d * z1) / (360 * z2) : null),
    },
  ],
  reasons: ({ z1, from }) => [
    from === 'wheel'
      ? `${teethATurn(z1)} The part of a turn is that part of the teeth.`
      : `${teethATurn(z1)} The wheel’s angle is that much smaller than the worm’s.`,
    'An angle passes unchanged from one shaft to the other.',
    'Each wheel takes half of the angle.',
  ],
  watch: ({ z1, z2, d, from }) => ({
    sight: 'marks',
    words:
      from === 'wheel'
        ? `Follow the left wheel’s mark until it has come ${d}° on, and count the worm’s mark meanwhile.`
        : `Follow the worm’s mark until it has come ${d}° on, then see how far the left wheel’s has.`,
    turns: from === 'wheel' ? (d * z2) / (360 * z1) : d / 360,
  }),
  gearing: gearingOf,
  trial: ({ z1, z2, d, from }) =>
    from === 'wheel'
      ? {
          top: d * z2,
          bottom: 360 * z1,
          counted: 'worm',
          words: `Count each pass of the worm’s mark. The machine stops when the left wheel has turned by ${d}°.`,
        }
      : {
          top: d,
          bottom: 360,
          counted: 'senses',
          words: `The machine stops when the worm has turned by ${d}°. See how far the left wheel’s mark has moved.`,
        },
}

export const TURNING: readonly Family[] = [turnsWorm, turnsWheel, turnsAngle]
