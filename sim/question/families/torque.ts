/** Torque on its way from the motor through the worm to two wheels. */
import type { Family, NumberFamily, Watch } from '../family.ts'
import { counted, numberText } from '../value-text.ts'
import { TORQUE_NEEDED } from './torque-needed.ts'
import { MESH_EFFICIENCIES, motorTorques, startsAt, teethAt } from './trade-values.ts'

type Lossless = { readonly z1: number; readonly z2: number; readonly T: number }
type Lossy = Lossless & { readonly e: number }
type Uneven = Lossy & { readonly T1: number }

/** Torque [N m] of both wheels together where nothing is lost: the power of the worm at the speed of the wheels. */
const together = ({ z1, z2, T }: Lossless): number => (T * z2) / z1

const pair = ({ z1, z2 }: Lossless): string =>
  `The worm has ${counted(z1, 'start')}, each wheel ${numberText(z2)} teeth.`
const motor = ({ T }: Lossless): string => `The motor turns the worm with ${numberText(T)} N m.`
const passedOn = ({ e }: Lossy): string =>
  `Each mesh passes on ${numberText(100 * e)} % of the power; nothing else is lost.`
const ideal = ({ z1, z2, T }: Lossless): string => `${numberText(T)} × ${numberText(z2)} ÷ ${numberText(z1)}`
const real = (given: Lossy): string => `${ideal(given)} × ${numberText(given.e)}`

const gearing = ({ z1, z2 }: Lossless) => ({ wormStarts: z1, wheelTeeth: z2 })
const watch = (words: string) => (): Watch => ({ sight: 'torque', words, turns: null })

const losslessParameters: NumberFamily<Lossless>['parameters'] = [
  { name: 'z1', values: startsAt },
  { name: 'z2', values: (level, { z1 }) => teethAt(level, z1) },
  { name: 'T', values: motorTorques },
]
const lossyParameters: NumberFamily<Lossy>['parameters'] = [
  ...losslessParameters,
  { name: 'e', values: () => MESH_EFFICIENCIES },
]

const torqueTotal: NumberFamily<Lossless> = {
  kind: 'number',
  name: 'torque-total',
  title: 'Torque of both wheels together',
  parameters: losslessParameters,
  example: { z1: 1, z2: 20, T: 0.04 },
  texts: [
    (given) =>
      `${motor(given)} ${pair(given)} Without losses, how much torque do the two wheels have together?`,
    (given) =>
      `${pair(given)} The worm gets ${numberText(given.T)} N m and turns steadily. What do the torques of both wheels add up to when nothing is lost?`,
  ],
  unit: () => 'N m',
  tolerance: 'r0.5',
  answer: together,
  working: ideal,
  slips: [
    { cause: 'each-full', apart: true, value: (given) => 2 * together(given) },
    { cause: 'one-wheel', value: (given) => together(given) / 2 },
    { cause: 'inverted', value: ({ z1, z2, T }) => (T * z1) / z2 },
    { cause: 'no-starts', value: ({ z1, z2, T }) => (z1 > 1 ? z2 * T : null) },
    { cause: 'torque-unchanged', value: ({ T }) => T },
  ],
  reasons: () => [
    'The wheels turn slower, and without losses the power stays the same.',
    'Torque passes through a mesh unchanged; only the speed changes.',
    'Each wheel gets all of it, because both mesh with the same worm.',
  ],
  watch: watch('Add the torques that both wheels would have without losses.'),
  gearing,
}

const torqueEach: NumberFamily<Lossless> = {
  kind: 'number',
  name: 'torque-each',
  title: 'Torque of each wheel',
  parameters: losslessParameters,
  example: { z1: 1, z2: 20, T: 0.04 },
  texts: [
    (given) =>
      `${motor(given)} ${pair(given)} Both wheels are loaded equally. Without losses, how much torque does each wheel have?`,
    (given) =>
      `${pair(given)} Two equal loads are on the wheels, the worm turns steadily with ${numberText(given.T)} N m, and nothing is lost. What is the torque of one wheel?`,
  ],
  unit: () => 'N m',
  tolerance: 'r0.5',
  answer: (given) => together(given) / 2,
  working: (given) => `${ideal(given)} ÷ 2`,
  slips: [
    { cause: 'forgot-second', apart: true, value: together },
    { cause: 'doubled', value: (given) => 2 * together(given) },
    { cause: 'inverted', value: ({ z1, z2, T }) => (T * z1) / z2 / 2 },
    { cause: 'no-starts', value: ({ z1, z2, T }) => (z1 > 1 ? (z2 * T) / 2 : null) },
    { cause: 'halved-twice', value: (given) => together(given) / 4 },
  ],
  reasons: () => [
    'Both wheels load the one worm, so equal loads halve what it passes on.',
    'Each wheel makes the full count of turns, so each has the full torque.',
    'A wheel that turns slower has less torque.',
  ],
  watch: watch('Read what one wheel would have without losses: half of both together.'),
  gearing,
}

const torqueLossy: NumberFamily<Lossy> = {
  kind: 'number',
  name: 'torque-lossy',
  title: 'Torque of each wheel with friction in the meshes',
  parameters: lossyParameters,
  example: { z1: 1, z2: 20, T: 0.04, e: 0.6 },
  texts: [
    (given) =>
      `${motor(given)} ${pair(given)} ${passedOn(given)} Both wheels are loaded equally. How much torque does each wheel have?`,
    (given) =>
      `${pair(given)} Two equal loads are on the wheels, and the worm turns steadily with ${numberText(given.T)} N m. ${passedOn(given)} What is the torque of one wheel?`,
  ],
  unit: () => 'N m',
  tolerance: 'r1',
  answer: (given) => (together(given) * given.e) / 2,
  working: (given) => `${real(given)} ÷ 2`,
  slips: [
    { cause: 'no-loss', apart: true, value: (given) => together(given) / 2 },
    { cause: 'forgot-second', apart: true, value: (given) => together(given) * given.e },
    { cause: 'divided-by-eff', value: (given) => together(given) / (2 * given.e) },
    { cause: 'loss-twice', value: (given) => (together(given) * given.e ** 2) / 2 },
    { cause: 'loss-share', value: (given) => (together(given) * (1 - given.e)) / 2 },
    { cause: 'no-starts', value: ({ z1, z2, T, e }) => (z1 > 1 ? (z2 * T * e) / 2 : null) },
  ],
  reasons: () => [
    'Part of the power turns to heat in each mesh before it reaches the wheel.',
    'Friction takes speed from the wheels and leaves the torque as it is.',
    'Friction makes the meshes grip, which raises the torque of the wheels.',
  ],
  watch: watch('Hold each wheel’s torque against what it would be without losses.'),
  gearing,
}

const ROUND_PARTS = [0.005, 0.01, 0.02, 0.03, 0.05, 0.1, 0.2, 0.3, 0.5, 1, 2, 3, 5, 10, 20]
/** What one wheel may take of both, so that the other keeps something that is worth asking for */
const LEAST_PART = 0.1
const GREATEST_PART = 0.85

const torqueUneven: NumberFamily<Uneven> = {
  kind: 'number',
  name: 'torque-uneven',
  title: 'Torque of wheels with unequal loads',
  parameters: [
    ...lossyParameters,
    {
      name: 'T1',
      values: (_, given) => {
        const all = together(given) * given.e
        return ROUND_PARTS.filter((T1) => T1 >= LEAST_PART * all && T1 <= GREATEST_PART * all)
      },
    },
  ],
  example: { z1: 1, z2: 20, T: 0.05, e: 0.6, T1: 0.2 },
  texts: [
    (given) =>
      `${motor(given)} ${pair(given)} ${passedOn(given)} At a steady speed the left wheel takes ${numberText(given.T1)} N m. How much torque does the right wheel take?`,
    (given) =>
      `${pair(given)} The worm turns steadily with ${numberText(given.T)} N m. ${passedOn(given)} One brush is pressed and takes ${numberText(given.T1)} N m. What torque is left for the other wheel?`,
  ],
  unit: () => 'N m',
  tolerance: 'r1',
  answer: (given) => together(given) * given.e - given.T1,
  working: (given) => `${real(given)} − ${numberText(given.T1)}`,
  slips: [
    { cause: 'equal-share', apart: true, value: (given) => (together(given) * given.e) / 2 },
    { cause: 'no-loss', value: (given) => together(given) - given.T1 },
    { cause: 'each-full', value: (given) => together(given) * given.e },
    { cause: 'same-as-other', value: ({ T1 }) => T1 },
  ],
  reasons: () => [
    'Each wheel takes what its own load asks; both together take what the worm passes on.',
    'A worm between two wheels divides its torque into equal halves.',
    'The wheel with the larger load turns slower and leaves more to the other.',
  ],
  watch: watch('Load one wheel more: its torque grows, and both speeds stay equal.'),
  gearing,
}

export const TORQUE: readonly Family[] = [
  torqueTotal,
  torqueEach,
  torqueLossy,
  torqueUneven,
  ...TORQUE_NEEDED,
]
