/** What comes out of the socket, and what transformer, rectifier and capacitor make of it. */
import { lampFlashes } from '../../measuring/stroboscope.ts'
import type { ChoiceFamily, Family, NumberFamily } from '../family.ts'
import { bleedTime } from './bleed-time.ts'
import { transformerTap } from './transformer-tap.ts'

/** Mean of a rectified sine over its r.m.s. value */
const MEAN_OVER_RMS = (2 * Math.SQRT2) / Math.PI

type Peak = { readonly V: number }

const peak: NumberFamily<Peak> = {
  kind: 'number',
  name: 'supply-peak',
  title: 'Peak of an alternating voltage',
  parameters: [
    {
      name: 'V',
      values: (level) =>
        level === 1
          ? [6, 9, 10, 12, 15, 18, 20, 21, 24, 30, 36, 42, 48, 60, 100, 110, 115, 120, 200, 220, 230, 240]
          : level === 2
            ? [6.3, 12.6, 13.5, 17.2, 22.8, 25.2, 31.5, 55, 85, 127, 207, 215, 225, 235, 245, 253]
            : [7.35, 11.8, 14.6, 16.9, 19.4, 23.7, 27.3, 113.5, 118.4, 226.5, 229.3, 233.7, 238.2, 241.6],
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
    words: 'Read the crest of the supply’s wave and hold it against the value of the meter.',
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
          ? [1, 2, 3, 4, 5, 6, 8, 10, 15, 20]
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

const band: ChoiceFamily<Band> = {
  kind: 'choice',
  name: 'supply-band',
  title: 'Reading at a socket',
  parameters: [
    {
      name: 'V',
      values: (level) =>
        level === 1
          ? [190, 192, 195, 198, 200, 224, 226, 228, 230, 232, 234, 236, 238, 240, 260, 262, 265, 268, 270]
          : level === 2
            ? [196, 199, 201, 203, 210, 212, 214, 216, 222, 237, 242, 244, 246, 248, 250, 256, 258, 261, 264]
            : [
                204.5, 205.5, 206.2, 206.6, 207.4, 208.3, 209.1, 217.5, 243.5, 249.8, 251.5, 252.6, 253.4,
                254.2, 255.5,
              ],
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
    `230 V less 10 % is ${LIMITS.least} V, 230 V and 10 % are ${LIMITS.most} V; ${V} V is ${bandOf({ V })}`,
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
    words: 'Hold the reading at the socket against the band on the meter card.',
    turns: 0,
  }),
}

export const SUPPLY: readonly Family[] = [peak, pulses, band, transformerTap, bleedTime]
