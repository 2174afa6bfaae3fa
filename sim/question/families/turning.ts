/** How far worm and wheels turn: counts that the marks on the stage settle. */
import type { Family, NumberFamily } from '../family.ts'

type TurnsWorm = { readonly z1: number; readonly z2: number; readonly N: number }

const turnsWorm: NumberFamily<TurnsWorm> = {
  kind: 'number',
  name: 'turns-worm',
  title: 'Worm turns for wheel turns',
  parameters: [
    { name: 'z1', values: (level) => (level === 1 ? [1] : [2, 3, 4]) },
    {
      name: 'z2',
      values: (level) => (level === 3 ? [25, 27, 29, 31, 35, 37] : [16, 18, 20, 24, 30, 36, 40]),
    },
    { name: 'N', values: (level) => (level === 1 ? [1, 2, 3] : [0.25, 0.5, 1, 2, 3, 4, 5, 6]) },
  ],
  example: { z1: 1, z2: 20, N: 1 },
  texts: [
    ({ z1, z2, N }) =>
      `The worm has ${z1} ${z1 === 1 ? 'start' : 'starts'}, each wheel ${z2} teeth. How many turns of the worm make ${N} ${N === 1 ? 'turn' : 'turns'} of the left wheel?`,
    ({ z1, z2, N }) =>
      `${z1} ${z1 === 1 ? 'start' : 'starts'} on the worm, ${z2} teeth on each wheel: how often does the worm turn while the left wheel turns ${N === 1 ? 'once' : `${N} times`}?`,
  ],
  unit: () => 'turn',
  tolerance: 'r0.5',
  answer: ({ z1, z2, N }) => (N * z2) / z1,
  working: ({ z1, z2, N }) => `${N} × ${z2} ÷ ${z1}`,
  slips: [
    { cause: 'inverted', apart: true, value: ({ z1, z2, N }) => (N * z1) / z2 },
    { cause: 'no-starts', apart: true, value: ({ z1, z2, N }) => (z1 > 1 ? N * z2 : null) },
  ],
  reasons: ({ z1 }) => [
    `Each turn of the worm moves each wheel on by ${z1} ${z1 === 1 ? 'tooth' : 'teeth'}.`,
    'The two wheels share the turns of the worm.',
    'The larger part turns faster.',
  ],
  watch: ({ z1, z2, N }) => ({
    sight: 'marks',
    words: 'Turn until the left wheel’s mark is back at its pointer, and count the worm’s mark.',
    turns: (N * z2) / z1,
  }),
  gearing: ({ z1, z2 }) => ({ wormStarts: z1, wheelTeeth: z2 }),
  trial: ({ z1, z2, N }) => ({
    top: N * 4 * z2,
    bottom: 4 * z1,
    counted: 'worm',
    words:
      'Count each pass of the worm’s mark. The machine stops when the left wheel has turned as far as asked.',
  }),
}

export const TURNING: readonly Family[] = [turnsWorm]
