/** How long a capacitor that the mains has left stays charged. */
import { bleedTime as timeToBleed } from '../../heat/capacitor-bleed.ts'
import type { NumberFamily } from '../family.ts'

type Bleed = {
  /** At the start, and where it is to be [V] */
  readonly V: number
  readonly Vs: number
  /** [uF] */
  readonly C: number
  /** [kohm] */
  readonly R: number
}

const MILLI = 1e-3
/** Microfarads times kilohms are milliseconds [s]. */
const constantOf = ({ C, R }: Bleed): number => MILLI * C * R
const timeOf = (given: Bleed): number => timeToBleed(given.V, given.Vs, 1, constantOf(given))

const TIMES = [0.2, 900] as const // [s]

export const bleedTime: NumberFamily<Bleed> = {
  kind: 'number',
  name: 'bleed-time',
  title: 'Time until a capacitor has bled',
  parameters: [
    {
      name: 'V',
      values: (level) => (level === 1 ? [100, 200, 300, 320, 340] : [155, 170, 310, 325, 335, 350]),
    },
    {
      name: 'C',
      values: (level) => (level === 1 ? [10, 20, 50, 100, 200] : [22, 47, 68, 100, 150, 220, 330, 470]),
    },
    { name: 'R', values: (level) => (level === 1 ? [10, 20, 50, 100] : [15, 22, 33, 47, 68, 100, 150, 220]) },
    {
      name: 'Vs',
      values: (level) => (level === 1 ? [50, 60] : level === 2 ? [34, 50, 60] : [24, 34, 42.4, 60]),
    },
  ],
  accepts: (given) => {
    const t = timeOf(given)
    return t >= TIMES[0] && t <= TIMES[1]
  },
  example: { V: 320, C: 100, R: 100, Vs: 60 },
  texts: [
    ({ V, C, R, Vs }) =>
      `Unplugged, a capacitor of ${C} µF still holds ${V} V. A resistor of ${R} kΩ bleeds it. After how many seconds has it come down to ${Vs} V?`,
    ({ V, C, R, Vs }) =>
      `How long does a resistor of ${R} kΩ take to bring a capacitor of ${C} µF from ${V} V down to ${Vs} V, in s?`,
  ],
  unit: () => 's',
  tolerance: 'r2',
  irrational: true,
  answer: timeOf,
  working: ({ V, C, R, Vs }) => `${R} kΩ × ${C} µF × ln(${V} ÷ ${Vs})`,
  slips: [
    { cause: 'one-constant', value: constantOf },
    { cause: 'straight-line', value: (given) => constantOf(given) * (1 - given.Vs / given.V) },
    { cause: 'five-constants', value: (given) => 5 * constantOf(given) },
    { cause: 'ten-log', value: (given) => constantOf(given) * Math.log10(given.V / given.Vs) },
  ],
  reasons: () => [
    'The lower the voltage, the less current the resistor takes, so it falls more and more slowly.',
    'The resistor takes the same current all the time.',
    'After one time constant a capacitor is empty.',
  ],
  watch: () => ({
    sight: 'supply chain',
    words: 'Give the machine a smoothing capacitor in Design; unplugged, it tells how long the charge stays.',
    turns: 0,
  }),
}
