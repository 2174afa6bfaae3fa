/** Putting together, checking by counts, and choosing sizes. */
import { centreDistance, wheelReferenceRadius } from '../../gear/proportions.ts'
import { turnRatioUncertainty } from '../../measuring/counting.ts'
import type { Family, NumberFamily } from '../family.ts'
import { assemblyPhase, assemblyTeeth, lostMotion } from './assembly.ts'
import { type Pair, gearingOf, pairOf, startsText } from './counts.ts'

/** Turns counted of the worm and of a wheel */
type Counts = { readonly N1: number; readonly N2: number }

const WHEEL_COUNTS = { 1: [6, 11], 2: [5, 8, 9, 12], 3: [15, 20, 25, 40] } as const
const RATIOS = [10, 12, 15, 20, 24, 30, 36, 40]

const countLimits: NumberFamily<Counts> = {
  kind: 'number',
  name: 'count-limits',
  title: 'What a count can tell',
  parameters: [
    { name: 'N2', values: (level) => WHEEL_COUNTS[level] },
    {
      name: 'N1',
      values: (level, { N2 }) =>
        RATIOS.flatMap((ratio) => (level === 3 ? [ratio * N2 - 1, ratio * N2 + 1] : [ratio * N2])),
    },
  ],
  example: { N1: 201, N2: 10 },
  texts: [
    ({ N1, N2 }) =>
      `${N1} turns of the worm and ${N2} of the left wheel were counted, each good to one turn. What is the largest ratio that fits, in worm turns for one wheel turn?`,
    ({ N1, N2 }) =>
      `Somebody counts ${N1} passes of the worm’s mark and ${N2} of the left wheel’s. Each count may be one off: how many worm turns for a wheel turn can it be at most?`,
  ],
  unit: () => '1',
  tolerance: 'r0.5',
  answer: ({ N1, N2 }) => turnRatioUncertainty(N1, N2).most,
  working: ({ N1, N2 }) => `(${N1} + 1) ÷ (${N2} − 1)`,
  slips: [
    { cause: 'exact-ratio', apart: true, value: ({ N1, N2 }) => N1 / N2 },
    { cause: 'both-plus', value: ({ N1, N2 }) => (N1 + 1) / (N2 + 1) },
    { cause: 'one-only', value: ({ N1, N2 }) => (N1 + 1) / N2 },
    { cause: 'lowest', value: ({ N1, N2 }) => turnRatioUncertainty(N1, N2).least },
  ],
  reasons: () => [
    'The ratio is largest with one turn more of the worm and one less of the wheel.',
    'The two errors cancel when the counts are divided.',
    'Only the shorter count can be wrong.',
  ],
  watch: () => ({
    sight: 'marks',
    words: 'Count ten times as long: one turn too many or too few then tells ten times less.',
    turns: 0,
  }),
}

/** Axial module [mm] and diameter quotient */
type Spaced = Pair & { readonly m: number; readonly q: number }

const designSpacing: NumberFamily<Spaced> = {
  kind: 'number',
  name: 'design-spacing',
  title: 'Distance of the wheel shafts',
  parameters: [
    { name: 'm', values: (level) => (level === 1 ? [2, 3, 4] : [1.25, 1.5, 2, 2.5, 3, 4]) },
    { name: 'q', values: (level) => (level === 3 ? [9, 11, 12.5, 14, 16] : [8, 10, 12, 16]) },
    ...pairOf<Spaced>(),
  ],
  example: { m: 2, q: 10, z1: 1, z2: 20 },
  texts: [
    ({ m, q, z1, z2 }) =>
      `A worm with ${startsText(z1)}, module ${m} mm and diameter quotient ${q} stands between two wheels of ${z2} teeth, without profile shift. How many millimetres apart are the wheel shafts?`,
    ({ m, q, z1, z2 }) =>
      `Module ${m} mm, diameter quotient ${q}, ${startsText(z1)}, ${z2} teeth on each wheel, no profile shift: what is the distance between the two wheel shafts, in mm?`,
  ],
  unit: () => 'mm',
  tolerance: 'r0.5',
  answer: ({ m, q, z2 }) => 2 * centreDistance((m * q) / 2, wheelReferenceRadius(m, z2), 0, m),
  working: ({ m, q, z2 }) => `${m} mm × (${q} + ${z2})`,
  slips: [
    { cause: 'one-side', apart: true, value: ({ m, q, z2 }) => (m * (q + z2)) / 2 },
    { cause: 'spur-rule', value: ({ m, z1, z2 }) => m * (z1 + z2) },
    { cause: 'wheel-only', value: ({ m, z2 }) => m * z2 },
    { cause: 'no-module', value: ({ q, z2 }) => q + z2 },
  ],
  reasons: () => [
    'From shaft to shaft lie one wheel’s diameter and the worm’s diameter.',
    'The starts of the worm take as much room as its teeth would.',
    'The wheels touch, so their diameters alone decide.',
  ],
  watch: () => ({
    sight: 'marks',
    words: 'Go from one wheel shaft to the other: half a wheel, the whole worm, half a wheel.',
    turns: 0,
  }),
  gearing: gearingOf,
}

/** Speed of the motor and wanted speed of a wheel [r/min] */
type Wanted = { readonly z1: number; readonly n: number; readonly n2: number }

const FEWEST_TEETH = 12
const MOST_TEETH = 60
/** Halfway between two tooth counts neither is nearer; how near to that is not asked. */
const TIE = 0.05

const exactTeeth = ({ z1, n, n2 }: Wanted): number => (z1 * n) / n2

const designTeeth: NumberFamily<Wanted> = {
  kind: 'number',
  name: 'design-teeth',
  title: 'Teeth for a wanted speed',
  parameters: [
    { name: 'z1', values: (level) => (level === 1 ? [1] : [2, 3, 4]) },
    {
      name: 'n',
      values: (level) =>
        level === 3 ? [1930, 2230, 2970, 3690, 4380, 5050] : [1200, 2400, 3000, 3600, 4800, 6000],
    },
    {
      name: 'n2',
      values: (level, { z1, n }) =>
        level === 3
          ? [120, 140, 170, 190, 230, 260, 310, 350, 410, 480]
          : [12, 15, 16, 20, 24, 25, 30, 40, 48].map((z2) => (z1 * n) / z2).filter(Number.isInteger),
    },
  ],
  accepts: (given, level) => {
    const exact = exactTeeth(given)
    const clear = Math.abs((exact % 1) - 0.5) > TIE
    return exact >= FEWEST_TEETH && exact <= MOST_TEETH && clear && Number.isInteger(exact) === level < 3
  },
  example: { z1: 1, n: 5000, n2: 250 },
  texts: [
    ({ z1, n, n2 }) =>
      `The motor makes ${n} r/min and each wheel is to make ${n2} r/min as nearly as it can. How many teeth does a wheel need on a worm with ${startsText(z1)}?`,
    ({ z1, n, n2 }) =>
      `A worm with ${startsText(z1)} turns at ${n} r/min. Which whole number of teeth brings each wheel nearest to ${n2} r/min?`,
  ],
  unit: () => '1',
  tolerance: 'exact',
  answer: (given) => Math.round(exactTeeth(given)),
  working: ({ z1, n, n2 }) => `The whole number nearest to ${z1} × ${n} ÷ ${n2}`,
  slips: [
    { cause: 'no-starts', apart: true, value: ({ z1, n, n2 }) => (z1 > 1 ? Math.round(n / n2) : null) },
    { cause: 'over-starts', value: ({ z1, n, n2 }) => (z1 > 1 ? Math.round(n / n2 / z1) : null) },
    { cause: 'cut-short', value: (given) => Math.floor(exactTeeth(given)) },
    { cause: 'both-halved', value: (given) => Math.round(exactTeeth(given) / 2) },
  ],
  reasons: ({ z1 }) => [
    z1 === 1
      ? 'One tooth passes at each turn of the worm, so the teeth are the ratio of the speeds.'
      : `${z1} teeth pass at each turn of the worm, so it takes ${z1} times the ratio of the speeds.`,
    'Two wheels share the teeth that the ratio asks for.',
    'More starts make the wheel slower, so it needs fewer teeth.',
  ],
  watch: () => ({
    sight: 'readings',
    words: 'Change the number of teeth and read the speed of the wheels at each.',
    turns: null,
  }),
}

export const FITTING: readonly Family[] = [
  assemblyTeeth,
  assemblyPhase,
  countLimits,
  designSpacing,
  designTeeth,
  lostMotion,
]
