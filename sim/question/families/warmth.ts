/** How a machine grows warm, how that is measured, and how long its brushes last. */
import { brushLife, brushWear } from '../../heat/brush-wear.ts'
import { COPPER_CONSTANT, riseByResistance } from '../../heat/resistance.ts'
import { riseAfter } from '../../heat/single-node.ts'
import { ZERO_CELSIUS } from '../../heat/surface.ts'
import type { Family, NumberFamily } from '../family.ts'
import { counted, numberText } from '../value-text.ts'

type HeatRise = {
  /** [degC] */
  readonly Ta: number
  /** That would settle [K] */
  readonly rise: number
  /** Time constant, and time since the start [min] */
  readonly tau: number
  readonly t: number
}

const heatRise: NumberFamily<HeatRise> = {
  kind: 'number',
  name: 'heat-rise',
  title: 'Warming of a case',
  parameters: [
    {
      name: 'Ta',
      values: (level) => (level === 1 ? [10, 15, 18, 20, 21, 22, 25, 30] : [12, 17, 19, 23, 27, 34]),
    },
    {
      name: 'rise',
      values: (level) =>
        level === 1
          ? [15, 20, 25, 30, 40, 50, 60, 80]
          : level === 2
            ? [12, 18, 24, 36, 45, 64]
            : [14.9, 22.5, 37.5, 43.6, 71.2],
    },
    {
      name: 'tau',
      values: (level) => (level === 1 ? [10, 15, 20, 30, 40, 60] : [8, 12, 18, 24, 25, 35, 50]),
    },
    {
      name: 't',
      values: (level, { tau }) =>
        level === 1 ? [tau] : level === 2 ? [tau / 2, 2 * tau] : [5, 6, 10, 14, 16, 20, 28, 45, 70],
    },
  ],
  example: { Ta: 20, rise: 40, tau: 20, t: 20 },
  texts: [
    ({ Ta, rise, tau, t }) =>
      `In a room at ${Ta} °C a case warms up from cold. It would settle ${rise} K above the room, with a time constant of ${tau} min. How warm is it after ${t} min, in °C?`,
    ({ Ta, rise, tau, t }) =>
      `A machine that has been off starts to run in air of ${Ta} °C. Its case has a time constant of ${tau} min and ends ${rise} K above the air. What does a thermometer on it show ${t} min after the start, in °C?`,
  ],
  unit: () => 'degC',
  tolerance: 'a0.5',
  irrational: true,
  answer: ({ Ta, rise, tau, t }) => Ta + riseAfter(rise, 0, t, tau),
  working: ({ Ta, rise, tau, t }) => `${Ta} + ${rise} × (1 − e^(−${t}/${tau}))`,
  slips: [
    { cause: 'straight-line', apart: true, value: ({ Ta, rise, tau, t }) => Ta + (rise * t) / tau },
    { cause: 'rise-only', value: ({ rise, tau, t }) => riseAfter(rise, 0, t, tau) },
    { cause: 'rest-not-rise', value: ({ Ta, rise, tau, t }) => Ta + riseAfter(0, rise, t, tau) },
    { cause: 'settled', value: ({ Ta, rise }) => Ta + rise },
  ],
  reasons: () => [
    'The warmer the case, the more heat it gives away, so each degree takes longer than the one before.',
    'The same heat comes in every minute, so it warms by the same every minute.',
    'After one time constant a body has settled.',
  ],
  watch: () => ({
    sight: 'heat',
    words: 'Follow the curve of the case and read it at the time asked for.',
    turns: null,
  }),
}

type HeatResistance = { readonly R1: number; readonly T1: number; readonly R2: number }

const riseOf = ({ R1, T1, R2 }: HeatResistance): number => riseByResistance(R1, R2, T1, T1)

/** What tables give for copper at 20 degC [1/K] */
const COEFFICIENT_AT_20 = 0.00393
/** From this far off 20 degC on, the coefficient of 20 degC is offered as a slip [K] */
const FAR_FROM_20 = 8
const ROUND_RATIOS = [1.05, 1.1, 1.15, 1.2, 1.25, 1.3, 1.35, 1.4, 1.45]
const ODD_RATIOS = [1.06, 1.08, 1.12, 1.17, 1.22, 1.28, 1.33, 1.38, 1.43]

/** To what an ohmmeter shows */
const shown = (R: number): number => Number(R.toPrecision(4))

const heatResistance: NumberFamily<HeatResistance> = {
  kind: 'number',
  name: 'heat-resistance',
  title: 'Temperature of a winding by its resistance',
  parameters: [
    {
      name: 'R1',
      values: (level) => (level === 1 ? [1, 2, 4, 5, 10, 20] : [1.1, 1.4, 2.2, 3.4, 8.6, 14.5, 33]),
    },
    {
      name: 'T1',
      values: (level) =>
        level === 1 ? [15, 18, 20, 22, 25] : level === 2 ? [16, 19, 21, 24, 28] : [17, 23, 26, 29, 30],
    },
    {
      name: 'R2',
      values: (level, { R1 }) => (level === 3 ? ODD_RATIOS : ROUND_RATIOS).map((ratio) => shown(R1 * ratio)),
    },
  ],
  example: { R1: 2, T1: 20, R2: 2.4 },
  texts: [
    ({ R1, T1, R2 }) =>
      `A cold copper winding at ${T1} °C has ${R1} Ω. After a run it has ${R2} Ω. How warm is it then, in °C?`,
    ({ R1, T1, R2 }) =>
      `An ohmmeter shows ${R2} Ω at the copper winding of a motor just unplugged. Cold, at ${T1} °C, it was ${R1} Ω. What is the temperature of the winding, in °C?`,
  ],
  unit: () => 'degC',
  tolerance: 'a1',
  answer: (given) => given.T1 + riseOf(given),
  working: ({ R1, T1, R2 }) => `${R2} ÷ ${R1} × (${COPPER_CONSTANT} + ${T1}) − ${COPPER_CONSTANT}`,
  slips: [
    {
      cause: 'coefficient-at-20',
      value: ({ R1, T1, R2 }) =>
        Math.abs(T1 - 20) >= FAR_FROM_20 ? T1 + (R2 / R1 - 1) / COEFFICIENT_AT_20 : null,
    },
    { cause: 'rise-only', apart: true, value: riseOf },
    { cause: 'ratio-of-degrees', value: ({ R1, T1, R2 }) => (R2 / R1) * T1 },
    { cause: 'ratio-of-kelvin', value: ({ R1, T1, R2 }) => (R2 / R1) * (ZERO_CELSIUS + T1) - ZERO_CELSIUS },
  ],
  reasons: () => [
    'The resistance of copper goes along a straight line that would meet zero near −234.5 °C.',
    'Resistance is in proportion to degrees Celsius.',
    'Resistance is in proportion to kelvins, as the volume of a gas is.',
  ],
  watch: () => ({
    sight: 'heat',
    words: 'Watch the winding warm up; its resistance rises along with it.',
    turns: null,
  }),
}

type BrushDays = {
  /** Length that can wear off [mm] */
  readonly l: number
  /** [mm/1000 h] */
  readonly w: number
  /** Speed of rubbing over that for which the wear is told */
  readonly r: number
  /** Hours of use a day */
  readonly h: number
}

/** Without the part that current adds */
const lifeAt = ({ l, w, r }: BrushDays): number =>
  brushLife(l, brushWear({ wear: w, speed: 1, current: 1, byCurrent: 0 }, r, 0))

const DAYS = [5, 6000] as const

const brushDays: NumberFamily<BrushDays> = {
  kind: 'number',
  name: 'brush-days',
  title: 'Days until the brushes are worn',
  parameters: [
    {
      name: 'l',
      values: (level) => (level === 3 ? [2.5, 3.5, 4.5, 5.5, 7.5, 10.5] : [2, 3, 4, 5, 6, 7, 8, 10, 12]),
    },
    {
      name: 'w',
      values: (level) => (level === 3 ? [0.8, 1.2, 2.4, 3.2, 7, 14] : [0.5, 1, 2, 2.5, 4, 5, 8, 10, 20]),
    },
    {
      name: 'r',
      values: (level) => (level === 1 ? [1] : level === 2 ? [0.5, 1.5, 2] : [0.6, 0.8, 1.25, 1.6, 2.5]),
    },
    { name: 'h', values: (level) => (level === 3 ? [0.5, 1.5, 3, 6, 7] : [0.5, 1, 2, 4, 5, 8]) },
  ],
  accepts: (given) => {
    const days = lifeAt(given) / given.h
    return days >= DAYS[0] && days <= DAYS[1]
  },
  example: { l: 6, w: 2, r: 1, h: 4 },
  texts: [
    (given) =>
      `Each brush has ${given.l} mm that can wear off, and loses ${given.w} mm in 1000 hours at its usual speed; wear keeps step with the speed. ${atSpeed(given)} How many days does it last at ${counted(given.h, 'hour')} a day?`,
    (given) =>
      `Brushes lose ${given.w} mm in 1000 hours at their usual speed, and wear in step with the speed of rubbing. ${atSpeed(given)} After how many days of ${counted(given.h, 'hour')} are ${given.l} mm worn off?`,
  ],
  unit: () => 'd',
  tolerance: 'r1',
  answer: (given) => lifeAt(given) / given.h,
  working: ({ l, w, r, h }) => `1000 × ${l} ÷ (${w} × ${r} × ${h})`,
  slips: [
    { cause: 'no-speed', value: (given) => (given.r === 1 ? null : lifeAt({ ...given, r: 1 }) / given.h) },
    {
      cause: 'speed-upside-down',
      value: (given) => (given.r === 1 ? null : lifeAt({ ...given, r: 1 / given.r }) / given.h),
    },
    { cause: 'no-1000', value: ({ l, w, r, h }) => l / (w * r * h) },
    { cause: 'hours-for-days', value: lifeAt },
  ],
  reasons: () => [
    'A brush wears by the length that has rubbed along it, so by speed times hours.',
    'A brush wears by the calendar, whether it rubs or not.',
    'At a higher speed a brush rides on air and wears less.',
  ],
  watch: () => ({
    sight: 'brushes',
    words: 'Read how long the brushes last at this speed; how fast they wear is set by you.',
    turns: null,
  }),
}

const atSpeed = ({ r }: BrushDays): string =>
  r === 1 ? 'The motor runs at that speed.' : `The motor runs at ${numberText(r)} times that speed.`

export const WARMTH: readonly Family[] = [heatRise, heatResistance, brushDays]
