/** The torque at a wheel that turns the worm backwards through the mesh. */
import type { Family, NumberFamily } from '../family.ts'
import { wheelDrivingEfficiency, wormDrivingEfficiency } from '../../gear/efficiency.ts'
import { leadAngle } from '../../gear/proportions.ts'
import { radians } from '../../quantity/convert.ts'
import { counted, numberText } from '../value-text.ts'
import { pressureAnglesAt, QUOTIENTS, startsAt, teethAt } from './trade-values.ts'

type Driven = {
  readonly z1: number
  readonly z2: number
  readonly q: number
  readonly an: number
  readonly mu: number
  readonly Tc: number
}

/** Below this the mesh all but holds, and the torque grows without measure. */
const LEAST_EFFICIENCY = 0.03

const backward = ({ z1, q, an, mu }: Omit<Driven, 'Tc' | 'z2'>): number =>
  wheelDrivingEfficiency(leadAngle(z1, q), radians(an), mu)
const forward = ({ z1, q, an, mu }: Driven): number =>
  wormDrivingEfficiency(leadAngle(z1, q), radians(an), mu)

const lossless = ({ z1, z2, Tc }: Driven): number => (Tc * z2) / z1

const conditions = ({ z1, z2, q, an, mu }: Driven): string =>
  `The worm has ${counted(z1, 'start')}, diameter quotient ${numberText(q)} and normal pressure angle ${numberText(an)}°, the wheel ${numberText(z2)} teeth; the coefficient of friction between them is ${numberText(mu)}.`

const backTorque: NumberFamily<Driven> = {
  kind: 'number',
  name: 'back-torque',
  title: 'Torque at a wheel that turns the worm',
  parameters: [
    { name: 'z1', values: startsAt },
    { name: 'z2', values: (level, { z1 }) => teethAt(level, z1) },
    { name: 'q', values: () => QUOTIENTS },
    { name: 'an', values: pressureAnglesAt },
    {
      name: 'mu',
      values: (_, given) =>
        [0.03, 0.04, 0.05, 0.06, 0.07, 0.08, 0.09, 0.1, 0.12, 0.15, 0.2, 0.25, 0.3].filter(
          (mu) => backward({ ...given, mu }) > LEAST_EFFICIENCY,
        ),
    },
    { name: 'Tc', values: () => [0.003, 0.004, 0.005, 0.006, 0.008, 0.01, 0.012, 0.015, 0.02] },
  ],
  example: { z1: 1, z2: 20, q: 10, an: 20, mu: 0.05, Tc: 0.006 },
  texts: [
    (given) =>
      `${conditions(given)} The worm resists turning with ${numberText(given.Tc)} N m; the other wheel is free, and bearings are left out. What torque at one wheel just turns the worm?`,
    (given) =>
      `Somebody turns one brush by hand, and the motor has to turn with it. At the worm the motor resists with ${numberText(given.Tc)} N m. ${conditions(given)} The other wheel is free, and bearings are left out. What torque does the brush need?`,
  ],
  unit: () => 'N m',
  tolerance: 'r2',
  irrational: true,
  answer: (given) => lossless(given) / backward(given),
  working: ({ z1, z2, q, an, mu, Tc }) => {
    const [cos, friction] = [`cos ${numberText(an)}°`, numberText(mu)]
    const [starts, quotient] = [numberText(z1), numberText(q)]
    return `${numberText(Tc)} × ${numberText(z2)} ÷ ${starts} × (${cos} + ${friction} × ${starts} ÷ ${quotient}) ÷ (${cos} − ${friction} × ${quotient} ÷ ${starts})`
  },
  slips: [
    { cause: 'no-loss', apart: true, value: lossless },
    { cause: 'forward-eff', value: (given) => lossless(given) / forward(given) },
    { cause: 'inverted', value: ({ z1, z2, Tc }) => (Tc * z1) / z2 },
    { cause: 'times-eff', value: (given) => lossless(given) * backward(given) },
  ],
  reasons: () => [
    'Friction takes part of the push before it turns the worm, so the wheel needs more than the ratio tells.',
    'The mesh loses the same part whichever side drives.',
    'The wheel is larger than the worm, so it needs the smaller torque.',
  ],
  watch: () => ({
    sight: 'readings',
    words:
      'In Design, raise the friction of the mesh: the efficiency with the wheel driving is the first to go.',
    turns: 0,
  }),
  gearing: ({ z1, z2 }) => ({ wormStarts: z1, wheelTeeth: z2 }),
}

export const BACK_TORQUE: readonly Family[] = [backTorque]
