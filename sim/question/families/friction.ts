/** What friction in the mesh does: what it costs, and whether a wheel can turn the worm. */
import type { ChoiceFamily, Family, NumberFamily } from '../family.ts'
import { crossing } from '../../gear/crossing.ts'
import { selfLocking, wheelDrivingEfficiency, wormDrivingEfficiency } from '../../gear/efficiency.ts'
import { leadAngle } from '../../gear/proportions.ts'
import { degrees, radians } from '../../quantity/convert.ts'
import { counted, numberText } from '../value-text.ts'
import { BACK_TORQUE } from './back-torque.ts'
import { pressureAnglesAt, QUOTIENTS, startsAt } from './trade-values.ts'

type Pair = { readonly z1: number; readonly q: number; readonly an: number }
type Rubbing = Pair & { readonly mu: number }
type Pushed = Rubbing & { readonly z2: number }

/** Friction beyond which no pair of the bank can be turned by its wheel */
const MOST_FRICTION = 1

/** Coefficient of friction from which on a wheel cannot turn its worm. */
const lockingFriction = ({ z1, q, an }: Pair): number =>
  crossing((mu) => wheelDrivingEfficiency(leadAngle(z1, q), radians(an), mu), 0, MOST_FRICTION)

const worm = ({ z1, q, an }: Pair): string =>
  `a worm with ${counted(z1, 'start')}, diameter quotient ${numberText(q)} and normal pressure angle ${numberText(an)}°`
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
const gearing = ({ z1 }: Pair) => ({ wormStarts: z1 })

const pairParameters: NumberFamily<Pair>['parameters'] = [
  { name: 'z1', values: startsAt },
  { name: 'q', values: () => QUOTIENTS },
  { name: 'an', values: pressureAnglesAt },
]

const FRICTIONS = [
  0.03, 0.04, 0.05, 0.06, 0.07, 0.08, 0.09, 0.1, 0.12, 0.14, 0.16, 0.18, 0.2, 0.22, 0.25, 0.3,
]
/** How near to the limit, and how far from it, friction is asked about, as parts of the limit */
const TOO_NEAR = 0.03
const LEAST_PART = 0.5
const GREATEST_PART = 1.8

const lockChoice: ChoiceFamily<Pushed> = {
  kind: 'choice',
  name: 'lock-choice',
  title: 'Whether a wheel can turn the worm',
  parameters: [
    ...pairParameters,
    {
      name: 'mu',
      values: (_, given) => {
        const limit = lockingFriction(given)
        const within = (mu: number) => mu >= LEAST_PART * limit && mu <= GREATEST_PART * limit
        return FRICTIONS.filter((mu) => within(mu) && Math.abs(mu - limit) > TOO_NEAR * limit)
      },
    },
    { name: 'z2', values: () => [12, 15, 18, 20, 24, 27, 30, 36, 40, 50, 60] },
  ],
  example: { z1: 1, q: 10, an: 20, mu: 0.06, z2: 20 },
  texts: [
    ({ mu, z2, ...pair }) =>
      `${capital(worm(pair))} meshes with wheels of ${numberText(z2)} teeth; the coefficient of friction is ${numberText(mu)}. Somebody pushes a wheel by its brush, without shaking, and nothing else holds the worm. What happens?`,
    ({ mu, z2, ...pair }) =>
      `Between two wheels of ${numberText(z2)} teeth lies ${worm(pair)}. Their coefficient of friction is ${numberText(mu)}. The worm is free, and one wheel is pushed steadily. Which is true?`,
  ],
  options: () => [
    { id: 'holds', text: 'The mesh holds: the worm stays still however hard the wheel is pushed.' },
    { id: 'turns', text: 'The mesh gives way: the wheel turns the worm.' },
  ],
  answer: ({ z1, q, an, mu }) =>
    selfLocking(leadAngle(z1, q), radians(an), mu) === 'locks' ? 'holds' : 'turns',
  working: ({ z1, q, an, mu }) =>
    `It would hold from cos ${numberText(an)}° × ${numberText(z1)} ÷ ${numberText(q)} = ${numberText(lockingFriction({ z1, q, an }), 3)} on; the friction is ${numberText(mu)}`,
  slips: [
    { cause: 'always-locks', option: () => 'holds' },
    { cause: 'friction-vs-lead-only', option: ({ z1, q, mu }) => (mu >= z1 / q ? 'holds' : 'turns') },
    { cause: 'ratio-decides', option: ({ z1, z2 }) => (z2 / z1 >= 30 ? 'holds' : 'turns') },
    {
      cause: 'no-starts',
      option: ({ z1, q, an, mu }) => {
        if (z1 === 1) return null
        return mu >= lockingFriction({ z1: 1, q, an }) ? 'holds' : 'turns'
      },
    },
  ],
  reasons: () => [
    'Friction along the thread is set against the slope of the thread.',
    'The ratio decides: a large one cannot be turned back.',
    'A worm can always be turned by its wheel if the push is strong enough.',
  ],
  watch: () => ({
    sight: 'readings',
    words: 'In Design, change the friction of the mesh and read whether the wheels can turn the worm.',
    turns: 0,
  }),
  gearing: ({ z1, z2 }) => ({ wormStarts: z1, wheelTeeth: z2 }),
}

const lockFriction: NumberFamily<Pair> = {
  kind: 'number',
  name: 'lock-friction',
  title: 'Friction at which the mesh holds',
  parameters: pairParameters,
  example: { z1: 1, q: 10, an: 20 },
  texts: [
    (pair) =>
      `${capital(worm(pair))} meshes with a wheel. From which coefficient of friction on can the wheel not turn the worm?`,
    (pair) =>
      `Take ${worm(pair)}. What is the smallest coefficient of friction with which a push on the wheel leaves the worm still?`,
  ],
  unit: () => '1',
  tolerance: 'r1',
  irrational: true,
  answer: lockingFriction,
  working: ({ z1, q, an }) => `cos ${numberText(an)}° × ${numberText(z1)} ÷ ${numberText(q)}`,
  slips: [
    { cause: 'friction-vs-lead-only', value: ({ z1, q }) => z1 / q },
    {
      cause: 'no-starts',
      apart: true,
      value: ({ z1, q, an }) => (z1 > 1 ? lockingFriction({ z1: 1, q, an }) : null),
    },
    { cause: 'divided-by-cos', value: ({ z1, q, an }) => z1 / (q * Math.cos(radians(an))) },
    { cause: 'lead-angle-deg', value: ({ z1, q }) => degrees(leadAngle(z1, q)) },
  ],
  reasons: () => [
    'A steeper thread needs more friction to hold, and the leaning flank adds to the friction.',
    'A flatter thread needs more friction to hold.',
    'Only the number of teeth decides how much friction is needed.',
  ],
  watch: () => ({
    sight: 'readings',
    words: 'In Design, raise the friction of the mesh step by step until the wheels cannot turn the worm.',
    turns: 0,
  }),
  gearing,
}

const percentOut = (z1: number, q: number, an: number, mu: number): number =>
  100 * wormDrivingEfficiency(leadAngle(z1, q), radians(an), mu)

const meshEfficiency: NumberFamily<Rubbing> = {
  kind: 'number',
  name: 'mesh-efficiency',
  title: 'What a mesh passes on',
  parameters: [
    ...pairParameters,
    { name: 'mu', values: () => [0.03, 0.04, 0.05, 0.06, 0.08, 0.09, 0.1, 0.12, 0.15, 0.2, 0.25, 0.3] },
  ],
  example: { z1: 1, q: 10, an: 20, mu: 0.09 },
  texts: [
    ({ mu, ...pair }) =>
      `${capital(worm(pair))} drives a wheel; the coefficient of friction in the mesh is ${numberText(mu)}. How many per cent of the worm’s power reach the wheel? Friction of bearings is left out.`,
    ({ mu, ...pair }) =>
      `In the mesh of ${worm(pair)} the coefficient of friction is ${numberText(mu)}. What is its efficiency in per cent while the worm drives, bearings left out?`,
  ],
  unit: () => '%',
  tolerance: 'r1',
  irrational: true,
  answer: ({ z1, q, an, mu }) => percentOut(z1, q, an, mu),
  working: ({ z1, q, an, mu }) => {
    const [cos, friction] = [`cos ${numberText(an)}°`, numberText(mu)]
    const [starts, quotient] = [numberText(z1), numberText(q)]
    return `100 × (${cos} − ${friction} × ${starts} ÷ ${quotient}) ÷ (${cos} + ${friction} × ${quotient} ÷ ${starts})`
  },
  slips: [
    { cause: 'one-minus-mu', value: ({ mu }) => 100 * (1 - mu) },
    {
      cause: 'backward',
      apart: true,
      value: ({ z1, q, an, mu }) => 100 * wheelDrivingEfficiency(leadAngle(z1, q), radians(an), mu),
    },
    { cause: 'no-pressure-angle', value: ({ z1, q, mu }) => percentOut(z1, q, 0, mu) },
    { cause: 'no-starts', value: ({ z1, q, an, mu }) => (z1 > 1 ? percentOut(1, q, an, mu) : null) },
  ],
  reasons: () => [
    'The thread slides a long way for a small advance, so its friction costs much.',
    'Friction costs the same part of the power, however steep the thread is.',
    'A flatter thread slides less, so it loses less.',
  ],
  watch: () => ({
    sight: 'power',
    words: 'Watch the loss in the meshes while the worm gets one start more at a time.',
    turns: null,
  }),
  gearing,
}

export const FRICTION: readonly Family[] = [lockChoice, lockFriction, meshEfficiency, ...BACK_TORQUE]
