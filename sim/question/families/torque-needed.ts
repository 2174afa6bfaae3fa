/** What torque the motor must bring to the worm for the loads on both wheels. */
import type { Family, NumberFamily } from '../family.ts'
import { counted, numberText } from '../value-text.ts'
import { MESH_EFFICIENCIES, startsAt, teethAt, WHEEL_TORQUES } from './trade-values.ts'

type Loaded = {
  readonly z1: number
  readonly z2: number
  readonly T1: number
  readonly T2: number
  readonly e: number
}

/** What a small motor can turn the worm with [N m] */
const LEAST_TORQUE = 0.01
const GREATEST_TORQUE = 0.5

const torqueAtWorm = ({ z1, z2, T1, T2, e }: Loaded): number => ((T1 + T2) * z1) / (z2 * e)

const torqueMotor: NumberFamily<Loaded> = {
  kind: 'number',
  name: 'torque-motor',
  title: 'Torque that the worm needs for two loads',
  parameters: [
    { name: 'z1', values: startsAt },
    { name: 'z2', values: (level, { z1 }) => teethAt(level, z1) },
    { name: 'T1', values: () => WHEEL_TORQUES },
    { name: 'T2', values: () => WHEEL_TORQUES },
    { name: 'e', values: () => MESH_EFFICIENCIES },
  ],
  accepts: (given) => torqueAtWorm(given) >= LEAST_TORQUE && torqueAtWorm(given) <= GREATEST_TORQUE,
  example: { z1: 1, z2: 20, T1: 0.4, T2: 0.2, e: 0.5 },
  texts: [
    ({ z1, z2, T1, T2, e }) =>
      `The left wheel takes ${numberText(T1)} N m, the right wheel ${numberText(T2)} N m. The worm has ${counted(z1, 'start')}, each wheel ${numberText(z2)} teeth, and each mesh passes on ${numberText(100 * e)} % of the power; nothing else is lost. What torque must the motor bring to the worm at a steady speed?`,
    ({ z1, z2, T1, T2, e }) =>
      `${counted(z1, 'start')} on the worm, ${numberText(z2)} teeth on each wheel, and ${numberText(100 * e)} % of the power gets through each mesh, all other losses left out. The brushes take ${numberText(T1)} N m and ${numberText(T2)} N m at a steady speed. With what torque is the worm turned?`,
  ],
  unit: () => 'N m',
  tolerance: 'r1',
  answer: torqueAtWorm,
  working: ({ z1, z2, T1, T2, e }) =>
    `(${numberText(T1)} + ${numberText(T2)}) × ${numberText(z1)} ÷ ${numberText(z2)} ÷ ${numberText(e)}`,
  slips: [
    { cause: 'one-wheel', apart: true, value: ({ z1, z2, T1, e }) => (T1 * z1) / (z2 * e) },
    { cause: 'no-loss', value: (given) => torqueAtWorm(given) * given.e },
    { cause: 'times-eff', value: (given) => torqueAtWorm(given) * given.e ** 2 },
    { cause: 'inverted', value: ({ z1, z2, T1, T2, e }) => ((T1 + T2) * z2) / (z1 * e) },
    { cause: 'no-starts', value: ({ z1, z2, T1, T2, e }) => (z1 > 1 ? (T1 + T2) / (z2 * e) : null) },
  ],
  reasons: () => [
    'The worm carries both loads, and the friction in the meshes comes on top.',
    'The worm feels the larger load only; the smaller one runs along with it.',
    'The loads pull opposite ways and take each other off.',
  ],
  watch: () => ({
    sight: 'torque',
    words: 'Let one wheel carry a pressed boot and see how far the motor’s torque rises.',
    turns: null,
  }),
  gearing: ({ z1, z2 }) => ({ wormStarts: z1, wheelTeeth: z2 }),
}

export const TORQUE_NEEDED: readonly Family[] = [torqueMotor]
