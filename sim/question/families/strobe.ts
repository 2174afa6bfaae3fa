/** What flashes and pictures show of something that turns. */
import { apparentRate } from '../../drive/screen-rule.ts'
import { deceptiveRates, frozenImages, lampFlashes } from '../../measuring/stroboscope.ts'
import { MINUTE } from '../../quantity/constants.ts'
import type { Family, NumberFamily } from '../family.ts'
import { numberText } from '../value-text.ts'
import { turnsText } from './counts.ts'

type Images = { readonly n: number; readonly p: number; readonly q: number }

const flashes = ({ n, p, q }: Images): number => (n * p) / q

const isLowest = (p: number, q: number): boolean =>
  Array.from({ length: Math.min(p, q) }, (_, i) => i + 1).every((d) => d === 1 || p % d > 0 || q % d > 0)

const images: NumberFamily<Images> = {
  kind: 'number',
  name: 'strobe-images',
  title: 'Places of a mark under flashes',
  parameters: [
    { name: 'n', values: () => [600, 900, 1200, 1500, 1800, 2400, 2700, 3000, 3600, 4200, 4800, 5400, 6000] },
    {
      name: 'p',
      values: (level) => (level === 1 ? [2, 3, 4] : level === 2 ? [1, 2, 3, 4, 5] : [2, 3, 4, 5, 6, 7]),
    },
    { name: 'q', values: (level) => (level === 1 ? [1] : level === 2 ? [2, 3] : [2, 3, 4, 5]) },
  ],
  accepts: ({ p, q }) => isLowest(p, q),
  example: { n: 3000, p: 2, q: 1 },
  texts: [
    (given) =>
      `The worm carries one mark and turns at ${numberText(given.n)} r/min. A lamp flashes ${numberText(flashes(given))} times a minute. At how many places around the turn does the mark seem to stand?`,
    (given) =>
      `A shaft with one mark turns at ${numberText(given.n)} r/min under ${numberText(flashes(given))} flashes a minute. At how many places is the mark seen?`,
  ],
  unit: () => '1',
  tolerance: 'exact',
  answer: (given) => frozenImages(flashes(given), given.n)!,
  working: (given) =>
    `In lowest terms ${numberText(flashes(given))} ÷ ${numberText(given.n)} is ${given.p}/${given.q}: the upper number`,
  slips: [
    { cause: 'one-image', value: () => 1 },
    { cause: 'denominator', apart: true, value: ({ q }) => q },
    { cause: 'product', value: ({ p, q }) => p * q },
  ],
  reasons: ({ p, q }) => [
    p === 1
      ? 'The mark makes whole turns from flash to flash, so it is lit at the same place each time.'
      : `From flash to flash the mark makes ${q}/${p} of a turn, so it is back where it was after ${p} flashes.`,
    'What stands still under flashes is lit at one place only.',
    'Every turn of the shaft shows the mark at a place of its own.',
  ],
  watch: ({ p, q }) => ({
    sight: 'marks',
    words: `A flash comes ${p === 1 ? `every ${turnsText(q)}` : `at each ${q}/${p} of a turn`}: follow the worm’s mark for ${turnsText(q)} and note where it is lit.`,
    turns: q,
  }),
}

type Apparent = { readonly n: number; readonly f: number }

const apparent = ({ n, f }: Apparent): number => apparentRate(n, 1, f)

/** Part of a picture within which a mark half a turn on cannot be told from one half a turn back */
const NEAR_HALF = 1e-6

const apparentSpeed: NumberFamily<Apparent> = {
  kind: 'number',
  name: 'strobe-apparent',
  title: 'Apparent speed under flashes',
  parameters: [
    {
      name: 'f',
      values: (level) =>
        level === 1
          ? [600, 900, 1000, 1200, 1500, 2000, 3000, 3600]
          : [800, 1440, 1500, 1800, 2500, 3000, 3600, 4500],
    },
    {
      name: 'n',
      values: (level, { f }) => (level === 1 ? besides(f, [1], [5, 10, 20, 50, 100]) : anySpeeds(level, f)),
    },
  ],
  accepts: ({ n, f }) => Math.abs(Math.abs(apparent({ n, f })) - f / 2) > NEAR_HALF * f,
  example: { n: 1210, f: 1200 },
  texts: [
    ({ n, f }) =>
      `A shaft turns at ${numberText(n)} r/min under ${numberText(f)} flashes a minute. How fast does its one mark seem to turn, in r/min? Forwards counts plus, backwards minus.`,
    ({ n, f }) =>
      `${numberText(f)} pictures a minute are taken of a worm with one mark at ${numberText(n)} r/min. At what speed does the mark seem to turn in them, in r/min, plus in the sense of the worm and minus against it?`,
  ],
  unit: () => 'r/min',
  tolerance: 'r0.5',
  answer: apparent,
  working: ({ n, f }) =>
    `The whole number nearest to ${numberText(n)} ÷ ${numberText(f)} is ${numberText(Math.round(n / f))}: ${numberText(n)} − ${numberText(Math.round(n / f))} × ${numberText(f)}`,
  slips: [
    { cause: 'true-speed', apart: true, value: ({ n }) => n },
    { cause: 'sign-lost', value: (given) => -apparent(given) },
    { cause: 'one-flash-only', value: ({ n, f }) => n - f },
    { cause: 'sum', value: ({ n, f }) => n + f },
  ],
  reasons: () => [
    'Whole turns between two flashes cannot be seen; only what is over or missing shows.',
    'Flashes slow a shaft down, so that it can be looked at.',
    'The eye adds the flashes to the turns.',
  ],
  watch: () => ({
    sight: 'marks',
    words:
      'Let it run at full speed: the note on the stage tells how fast it turns and what this screen would show.',
    turns: null,
  }),
}

/** Speeds a little above and below whole numbers of flashes. */
const besides = (f: number, multiples: readonly number[], differences: readonly number[]): number[] =>
  multiples.flatMap((k) => differences.flatMap((d) => [k * f - d, k * f + d]))

const anySpeeds = (level: number, f: number): readonly number[] =>
  level === 2
    ? besides(f, [1, 2, 3], [15, 30, 60, 120, 250])
    : [1230, 1975, 2231, 2350, 2968, 3685, 4379, 4720, 5051, 6140, 7333, 8250, 9475, 11_620]

type Teeth = { readonly f: number; readonly z2: number }

/** Slowest turning at which the teeth seem to stand in the light of a lamp on the mains [r/min] */
const stillTeeth = ({ f, z2 }: Teeth): number =>
  MINUTE * deceptiveRates(lampFlashes(f), z2, lampFlashes(f))[0]!

const teeth: NumberFamily<Teeth> = {
  kind: 'number',
  name: 'strobe-teeth',
  title: 'Teeth that stand in the light of a lamp',
  parameters: [
    { name: 'f', values: (level) => (level === 3 ? [49.9, 50, 50.1, 59.9, 60, 60.1] : [50, 60]) },
    {
      name: 'z2',
      values: (level) =>
        level === 1
          ? [12, 15, 16, 18, 20, 24, 25, 30, 32, 36, 40, 45, 48, 50, 60]
          : [13, 14, 17, 19, 21, 22, 23, 26, 27, 28, 29, 31, 34, 35, 37, 41, 43, 51, 53, 57],
    },
  ],
  example: { f: 50, z2: 20 },
  texts: [
    ({ f, z2 }) =>
      `A lamp on ${f} Hz mains shines on a wheel with ${z2} teeth. What is the lowest speed at which the teeth seem to stand still, in r/min?`,
    ({ f, z2 }) =>
      `A wheel with ${z2} equal teeth gets slowly faster, lit by a lamp on ${f} Hz mains. At how many r/min do its teeth first seem to stand?`,
  ],
  unit: () => 'r/min',
  tolerance: 'r0.5',
  answer: stillTeeth,
  working: ({ f, z2 }) => `2 × ${f} × 60 ÷ ${z2}`,
  slips: [
    { cause: 'mains-not-doubled', apart: true, value: ({ f, z2 }) => (60 * f) / z2 },
    { cause: 'tooth-symmetry', value: ({ f }) => 120 * f },
    { cause: 'no-60', value: ({ f, z2 }) => (2 * f) / z2 },
    { cause: 'half-tooth', value: ({ f, z2 }) => (240 * f) / z2 },
  ],
  reasons: () => [
    'The lamp is brightest twice in each cycle, and by then the next tooth stands where the last one was.',
    'The wheel has to turn once for each cycle of the mains.',
    'Each tooth has to come back to its own place between two flashes.',
  ],
  watch: () => ({
    sight: 'teeth',
    words:
      'Watch the teeth during one turn of the worm: they all look as before, only the mark has moved on.',
    turns: 1,
  }),
  gearing: ({ z2 }) => ({ wheelTeeth: z2 }),
}

export const STROBE: readonly Family[] = [images, apparentSpeed, teeth]
