/** What the turns of a transformer make of the mains. */
import type { NumberFamily } from '../family.ts'

const NOMINAL = 230 // [V]

type Tap = { readonly V1: number; readonly N1: number; readonly N2: number }

const secondary = ({ V1, N1, N2 }: Tap): number => (V1 * N2) / N1
const LOW_VOLTAGE = [5, 50] as const // [V]
const ROUND_TAPS = [6, 9, 10, 12, 15, 18, 20, 21, 24, 30, 36]

export const transformerTap: NumberFamily<Tap> = {
  kind: 'number',
  name: 'transformer-tap',
  title: 'Voltage of a tap',
  parameters: [
    {
      name: 'V1',
      values: (level) =>
        level === 1 ? [230] : level === 2 ? [207, 220, 225, 235, 240, 253] : [218, 226, 233, 238, 244],
    },
    {
      name: 'N1',
      values: (level) => (level === 3 ? [840, 975, 1060, 1240, 1430] : [460, 690, 920, 1150, 1380, 2300]),
    },
    {
      name: 'N2',
      values: (level, { N1 }) =>
        level === 3 ? [46, 57, 64, 71, 83, 94, 118, 132] : ROUND_TAPS.map((volts) => (volts * N1) / NOMINAL),
    },
  ],
  accepts: (given) => secondary(given) >= LOW_VOLTAGE[0] && secondary(given) <= LOW_VOLTAGE[1],
  example: { V1: 230, N1: 1150, N2: 60 },
  texts: [
    ({ V1, N1, N2 }) =>
      `A transformer has ${N1} turns on the mains side, which gets ${V1} V r.m.s., and ${N2} turns up to a tap. What does a meter show at the tap without load, in V?`,
    ({ V1, N1, N2 }) =>
      `${V1} V r.m.s. lie across ${N1} turns of a transformer. What r.m.s. voltage do ${N2} turns on the same core give, without load?`,
  ],
  unit: () => 'V',
  tolerance: 'r1',
  answer: secondary,
  working: ({ V1, N1, N2 }) => `${V1} × ${N2} ÷ ${N1}`,
  slips: [
    { cause: 'inverted', apart: true, value: ({ V1, N1, N2 }) => (V1 * N1) / N2 },
    { cause: 'difference', value: ({ N1, N2 }) => N1 - N2 },
    { cause: 'peak', value: (given) => Math.SQRT2 * secondary(given) },
  ],
  reasons: () => [
    'The same flux runs through every turn of both windings, so each turn carries the same voltage.',
    'Each turn of the tap takes a volt away.',
    'Fewer turns have less resistance, and so more voltage is left.',
  ],
  watch: () => ({
    sight: 'supply chain',
    words: 'Go from setting to setting and read the volts that each tap gives.',
    turns: null,
  }),
}
