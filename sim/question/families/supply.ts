/** What comes out of the socket, and what transformer, rectifier and capacitor make of it. */
import { lampFlashes } from '../../measuring/stroboscope.ts'
import type { ChoiceFamily, Family, Level, NumberFamily } from '../family.ts'
import { bleedTime } from './bleed-time.ts'
import { transformerTap } from './transformer-tap.ts'

/** Mean of a rectified sine over its r.m.s. value */
const MEAN_OVER_RMS = (2 * Math.SQRT2) / Math.PI

type Peak = { readonly V: number }

const VOLTAGES: Readonly<Record<Level, readonly number[]>> = {
  1: [6, 9, 10, 12, 15, 18, 20, 21, 24, 30, 36, 42, 48, 60, 100, 110, 115, 120, 200, 220, 230, 240],
  2: [
    6.3, 8.4, 12.6, 13.5, 15.4, 17.2, 19.6, 22.8, 25.2, 27.5, 31.5, 38, 44, 55, 63, 72, 85, 98, 105, 127, 207,
    215, 225, 235, 253,
  ],
  3: [
    7.35, 9.15, 10.9, 11.8, 14.6, 16.9, 19.4, 21.7, 23.7, 27.3, 29.6, 33.4, 46.3, 78.5, 113.5, 118.4, 209.3,
    217.6, 222.8, 226.5, 233.7, 238.2, 247.4,
  ],
}

const peak: NumberFamily<Peak> = {
  kind: 'number',
  name: 'supply-peak',
  title: 'Peak of an alternating voltage',
  parameters: [
    {
      name: 'V',
      values: (level) => VOLTAGES[level],
    },
  ],
  example: { V: 230 },
  texts: [
    ({ V }) =>
      `A meter shows ${V} V r.m.s. at an alternating supply with the shape of a sine. What is the peak of that voltage, in V?`,
    ({ V }) =>
      `The sine at the terminals has an r.m.s. value of ${V} V. How many volts does its crest reach?`,
  ],
  unit: () => 'V',
  tolerance: 'r0.5',
  irrational: true,
  answer: ({ V }) => Math.SQRT2 * V,
  working: ({ V }) => `${V} × √2`,
  slips: [
    { cause: 'divided', value: ({ V }) => V / Math.SQRT2 },
    { cause: 'doubled', value: ({ V }) => 2 * V },
    { cause: 'rms-is-peak', apart: true, value: ({ V }) => V },
    { cause: 'mean', value: ({ V }) => MEAN_OVER_RMS * V },
  ],
  reasons: () => [
    'The mean of the square of a sine is half the square of its peak.',
    'A meter shows the crest of the wave.',
    'A sine is at half its crest on average.',
  ],
  watch: () => ({
    sight: 'waves',
    words: 'Read the crest of the supply’s wave and hold it against its r.m.s. value.',
    turns: null,
  }),
}

type Pulses = { readonly f: number; readonly t: number }

/** A pulse is whole, or it is not counted. */
const isWhole = (count: number): boolean => Math.abs(count - Math.round(count)) <= 1e-9

const pulses: NumberFamily<Pulses> = {
  kind: 'number',
  name: 'supply-pulses',
  title: 'Pulses after a bridge rectifier',
  parameters: [
    { name: 'f', values: (level) => (level === 3 ? [49.5, 49.8, 49.9, 50.1, 50.2, 59.9, 60.1] : [50, 60]) },
    {
      name: 't',
      values: (level) =>
        level === 1
          ? [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 25, 30]
          : level === 2
            ? [0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1.5, 2.5]
            : [5, 10, 15, 20, 30, 40, 45, 50, 60],
    },
  ],
  accepts: ({ f, t }) => isWhole(lampFlashes(f) * t),
  example: { f: 50, t: 1 },
  texts: [
    ({ f, t }) =>
      `A bridge of four diodes rectifies a ${f} Hz supply. How many pulses of voltage reach the motor in ${t} s?`,
    ({ f, t }) => `How many bumps has the wave behind a bridge rectifier in ${t} s, on mains of ${f} Hz?`,
  ],
  unit: () => '1',
  tolerance: 'r0.5',
  answer: ({ f, t }) => Math.round(lampFlashes(f) * t),
  working: ({ f, t }) => `2 × ${f} × ${t}`,
  slips: [
    { cause: 'mains-not-doubled', apart: true, value: ({ f, t }) => f * t },
    { cause: 'per-second', value: ({ f, t }) => (t === 1 ? null : lampFlashes(f)) },
    { cause: 'four-diodes', value: ({ f, t }) => 4 * f * t },
  ],
  reasons: () => [
    'The bridge turns the negative half wave over, so each cycle gives two pulses.',
    'A diode lets one half wave through and blocks the other.',
    'Each of the four diodes makes a pulse of its own.',
  ],
  watch: () => ({
    sight: 'waves',
    words: 'Count the bumps of the voltage behind the rectifier in one cycle of the mains.',
    turns: null,
  }),
}

type Band = { readonly V: number }

/** Limits of a 230 V supply, 10 % each way [V]. Source: IEC 60038, from memory. */
const LIMITS = { least: 207, most: 253 } as const
const NOMINAL = 230
/** Half of the band, as somebody may take it for the whole */
const FIVE_PERCENT = 0.05 * NOMINAL

const placeIn = (V: number, least: number, most: number): string =>
  V < least ? 'below' : V > most ? 'above' : 'within'

const bandOf = ({ V }: Band): string => placeIn(V, LIMITS.least, LIMITS.most)

/** Clear of the limits, nearer to them, and close by */
const READINGS: Readonly<Record<Level, readonly number[]>> = {
  1: [
    190, 192, 194, 196, 198, 200, 222, 224, 226, 228, 230, 232, 234, 236, 238, 240, 260, 262, 264, 266, 268,
    270,
  ],
  2: [
    196, 199, 201, 203, 205, 210, 212, 214, 216, 219, 222, 237, 240, 242, 244, 246, 248, 250, 256, 258, 261,
    264, 267,
  ],
  3: [
    204.5, 205.5, 205.9, 206.2, 206.6, 207.4, 207.8, 208.3, 208.7, 209.1, 210.6, 217.5, 243.5, 247.3, 249.8,
    251.5, 252.2, 252.6, 253.4, 253.8, 254.2, 255.5,
  ],
}

const band: ChoiceFamily<Band> = {
  kind: 'choice',
  name: 'supply-band',
  title: 'Reading at a socket',
  parameters: [
    {
      name: 'V',
      values: (level) => READINGS[level],
    },
  ],
  example: { V: 240 },
  texts: [
    ({ V }) =>
      `A meter at a 230 V socket shows ${V} V. Where does that lie: within the limits for such a supply, below them or above them?`,
    ({ V }) =>
      `The supply is called 230 V, and a reading at the socket is ${V} V. How does it stand to the limits of such a supply?`,
  ],
  options: () => [
    { id: 'within', text: 'It lies within the limits' },
    { id: 'below', text: 'It lies below the limits' },
    { id: 'above', text: 'It lies above the limits' },
  ],
  answer: bandOf,
  working: ({ V }) =>
    `230 V minus 10 % is ${LIMITS.least} V, plus 10 % it is ${LIMITS.most} V; ${V} V is ${bandOf({ V })}`,
  slips: [
    {
      cause: 'must-be-230',
      option: ({ V }) => (Math.abs(V - NOMINAL) <= FIVE_PERCENT ? placeIn(V, NOMINAL, NOMINAL) : null),
    },
    {
      cause: 'five-percent',
      option: ({ V }) =>
        Math.abs(V - NOMINAL) > FIVE_PERCENT
          ? placeIn(V, NOMINAL - FIVE_PERCENT, NOMINAL + FIVE_PERCENT)
          : null,
    },
    { cause: 'anything-goes', option: (given) => (bandOf(given) === 'within' ? null : 'within') },
  ],
  reasons: () => [
    '230 V is a name; the supply may be a tenth lower or higher.',
    'A supply that is called 230 V is held at 230 V.',
    'A transformer evens out whatever comes from the socket.',
  ],
  watch: () => ({
    sight: 'supply chain',
    words: 'Read the volts at the socket and hold them against 207 V and 253 V.',
    turns: 0,
  }),
}

export const SUPPLY: readonly Family[] = [peak, pulses, band, transformerTap, bleedTime]
