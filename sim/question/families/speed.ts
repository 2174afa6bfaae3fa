/** How fast motor and wheels turn, and what current a motor takes that cannot turn. */
import { advanceTurns, noTurns, wheelTurnsValue } from '../../drive/turns.ts'
import type { Circuit } from '../../electric/circuit.ts'
import { newCycle } from '../../electric/cycle.ts'
import { solveDirect } from '../../electric/steady-direct.ts'
import { rpm } from '../../quantity/convert.ts'
import type { Family, NumberFamily } from '../family.ts'
import { counted, numberText } from '../value-text.ts'

type WheelSpeed = { readonly z1: number; readonly z2: number; readonly n: number }

/** Turns of a wheel while the worm makes n: a minute's worth of both is their speed. */
function wheelTurns({ z1, z2, n }: WheelSpeed): number {
  const worm = noTurns()
  advanceTurns(worm, n)
  return wheelTurnsValue(worm, z1, z2)
}

const ROUND_SPEEDS = [600, 900, 1000, 1200, 1500, 1800, 2000, 2400, 3000, 3600, 4000, 4500, 4800, 5000, 6000]
const READ_SPEEDS = [230, 745, 980, 1450, 2231, 2850, 2968, 3685, 4379, 5051, 7350, 9600, 11_500]

const wheelSpeed: NumberFamily<WheelSpeed> = {
  kind: 'number',
  name: 'wheel-speed',
  title: 'Speed of a wheel',
  parameters: [
    { name: 'z1', values: (level) => (level === 1 ? [1] : [2, 3, 4]) },
    {
      name: 'z2',
      values: (level, { z1 }) =>
        level === 3
          ? [13, 17, 23, 27, 29, 31, 35, 37, 41, 53].filter((teeth) => teeth % z1 !== 0)
          : [12, 15, 16, 18, 20, 24, 25, 30, 36, 40, 50, 60].filter((teeth) => teeth % z1 === 0),
    },
    { name: 'n', values: (level) => (level === 3 ? READ_SPEEDS : ROUND_SPEEDS) },
  ],
  example: { z1: 1, z2: 20, n: 3000 },
  texts: [
    ({ z1, z2, n }) =>
      `The worm has ${counted(z1, 'start')}, each wheel ${z2} teeth. The motor turns at ${numberText(n)} r/min. How fast does each wheel turn, in r/min?`,
    ({ z1, z2, n }) =>
      `A motor at ${numberText(n)} r/min turns a worm with ${counted(z1, 'start')}. How many turns a minute does the left wheel make, with ${z2} teeth on it?`,
  ],
  unit: () => 'r/min',
  tolerance: 'r0.5',
  answer: wheelTurns,
  working: ({ z1, z2, n }) => `${numberText(n)} × ${z1} ÷ ${z2}`,
  slips: [
    { cause: 'inverted', apart: true, value: ({ z1, z2, n }) => (n * z2) / z1 },
    { cause: 'no-starts', apart: true, value: ({ z1, z2, n }) => (z1 > 1 ? n / z2 : null) },
    { cause: 'halved', value: ({ z1, z2, n }) => (n * z1) / (2 * z2) },
    { cause: 'times-starts', value: ({ z1, z2, n }) => (z1 > 1 ? n / (z1 * z2) : null) },
  ],
  reasons: ({ z1, z2 }) => [
    `Each turn of the worm moves each wheel on by ${z1} of its ${z2} teeth, at any speed.`,
    'The two wheels share the speed of the worm.',
    'A faster setting changes how many turns of the worm make one of a wheel.',
  ],
  watch: () => ({
    sight: 'readings',
    words: 'Go through the settings and compare the speed of the worm with that of a wheel.',
    turns: null,
  }),
  gearing: ({ z1, z2 }) => ({ wormStarts: z1, wheelTeeth: z2 }),
}

type SpeedVolts = {
  /** At the motor [V] */
  readonly V: number
  /** Drop of the pair of brushes [V] */
  readonly vb: number
  /** [ohm] */
  readonly R: number
  /** [A] */
  readonly I: number
  /** [V s/rad] */
  readonly ke: number
}

/** What winding and brushes leave to the emf [V] */
const emf = ({ V, vb, R, I }: SpeedVolts): number => V - vb - R * I

/** The winding takes no more than this part of the volts, as in a motor that runs. Our choice. */
const MOST_IN_WINDING = 0.4
const SPEEDS = [200, 12_000] as const // [r/min]

const speedVolts: NumberFamily<SpeedVolts> = {
  kind: 'number',
  name: 'speed-volts',
  title: 'Speed of a motor from its volts',
  parameters: [
    {
      name: 'V',
      values: (level) =>
        level === 3 ? [7.5, 10.8, 13.8, 16.4, 19.5, 22.5, 25.6, 28.5] : [6, 12, 15, 18, 24, 30],
    },
    { name: 'vb', values: (level) => (level === 1 ? [1, 2] : [0.6, 1, 1.4, 1.6, 2]) },
    { name: 'R', values: (level) => (level === 1 ? [0.5, 1, 2] : [0.4, 0.6, 0.8, 1.1, 1.5, 2.2]) },
    { name: 'I', values: (level) => (level === 1 ? [1, 2, 3, 4] : [0.8, 1.2, 1.5, 2.5, 3.2, 4.5]) },
    {
      name: 'ke',
      values: (level) => (level === 1 ? [0.02, 0.04, 0.05] : [0.015, 0.025, 0.032, 0.045, 0.06]),
    },
  ],
  accepts: (given) => {
    const n = rpm(emf(given) / given.ke)
    return given.R * given.I <= MOST_IN_WINDING * given.V && n >= SPEEDS[0] && n <= SPEEDS[1]
  },
  example: { V: 24, vb: 2, R: 1, I: 2, ke: 0.04 },
  texts: [
    ({ V, vb, R, I, ke }) =>
      `A motor on ${V} V direct current takes ${I} A. Its winding has ${R} Ω, its pair of brushes drops ${vb} V, and it makes ${ke} V for each radian a second. How fast does it turn, in r/min?`,
    ({ V, vb, R, I, ke }) =>
      `Meters at a running motor show ${V} V and ${I} A, direct current. It makes ${ke} V for each radian a second; its winding has ${R} Ω and its two brushes together drop ${vb} V. What is its speed in r/min?`,
  ],
  unit: () => 'r/min',
  tolerance: 'r1',
  irrational: true,
  answer: (given) => rpm(emf(given) / given.ke),
  working: ({ V, vb, R, I, ke }) => `(${V} − ${vb} − ${R} × ${I}) ÷ ${ke} × 30 ÷ π`,
  slips: [
    { cause: 'no-resistance', value: ({ V, vb, ke }) => rpm((V - vb) / ke) },
    { cause: 'no-brush-drop', value: ({ V, R, I, ke }) => rpm((V - R * I) / ke) },
    { cause: 'volts-only', value: ({ V, ke }) => rpm(V / ke) },
    { cause: 'rad-as-rpm', value: (given) => emf(given) / given.ke },
  ],
  reasons: () => [
    'What brushes and winding leave over is the counter-voltage, and speed goes with that.',
    'Speed goes with the volts at the motor, whatever current flows.',
    'The current pushes the motor on, so more current means more speed.',
  ],
  watch: () => ({
    sight: 'motor',
    words: 'Let both wheels carry a pressed boot: the speed falls as the current rises.',
    turns: null,
  }),
}

type StallCurrent = { readonly V: number; readonly vb: number; readonly R: number }

/** Any number, since a steady current tells nothing of it */
const ANY_INDUCTANCE = 1e-3 // [H]
const ANY_EMF_CONSTANT = 0.05 // [V s/rad]

/** A motor with magnets straight on direct current. */
const directCircuit = ({ V, vb, R }: StallCurrent): Circuit => ({
  source: { emf: V, angularFrequency: 0, resistance: 0, inductance: 0 },
  rectifier: 'none',
  diodeDrops: 0,
  capacitance: 0,
  bleedResistance: Infinity,
  triac: null,
  chopper: null,
  winding: {
    kind: 'permanent-magnet',
    emfConstant: ANY_EMF_CONSTANT,
    resistance: R,
    inductance: ANY_INDUCTANCE,
    brushDrop: vb,
  },
})

function currentAtRest(given: StallCurrent): number {
  const cycle = newCycle()
  solveDirect(cycle, directCircuit(given), 0, true)
  return cycle.mean
}

const stallCurrent: NumberFamily<StallCurrent> = {
  kind: 'number',
  name: 'stall-current',
  title: 'Current of a motor that is held',
  parameters: [
    {
      name: 'V',
      values: (level) =>
        level === 3 ? [7.2, 10.8, 13.8, 16.5, 19.5, 22.5, 27.6] : [6, 8, 9, 12, 15, 18, 20, 24, 30],
    },
    { name: 'vb', values: (level) => (level === 1 ? [1, 2] : [0.6, 0.8, 1.2, 1.6, 2]) },
    {
      name: 'R',
      values: (level) => (level === 1 ? [0.5, 1, 2, 2.5, 4, 5] : [0.4, 0.6, 0.8, 1.1, 1.5, 1.8, 2.4, 3.2]),
    },
  ],
  example: { V: 24, vb: 2, R: 2 },
  texts: [
    ({ V, vb, R }) =>
      `A motor on ${V} V direct current is jammed and stands still. Its winding has ${R} Ω, and its pair of brushes drops ${vb} V. What current flows, in A?`,
    ({ V, vb, R }) =>
      `${V} V lie across a motor that is held fast. Two brushes together drop ${vb} V, and the winding has ${R} Ω. How many amperes does it take?`,
  ],
  unit: () => 'A',
  tolerance: 'r1',
  answer: currentAtRest,
  working: ({ V, vb, R }) => `(${V} − ${vb}) ÷ ${R}`,
  slips: [
    { cause: 'no-brush-drop', apart: true, value: ({ V, R }) => V / R },
    { cause: 'product', value: ({ V, vb, R }) => (V - vb) * R },
    { cause: 'no-current', value: () => 0 },
  ],
  reasons: () => [
    'A motor that stands makes no counter-voltage, so only brushes and winding hold the current back.',
    'A motor that does no work takes no current.',
    'The counter-voltage is largest where the load is largest.',
  ],
  watch: () => ({
    sight: 'motor',
    words: 'Jam a wheel, read the current that the motor draws at once, and free it again.',
    turns: null,
  }),
}

export const SPEED: readonly Family[] = [wheelSpeed, speedVolts, stallCurrent]
