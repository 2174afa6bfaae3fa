/** What a tooth more or less does when the wheels are put together, and what play leaves at the worm. */
import { wheelPlay } from '../../gear/proportions.ts'
import { degrees } from '../../quantity/convert.ts'
import type { NumberFamily } from '../family.ts'
import { counted } from '../value-text.ts'
import { type Pair, gearingOf, pairOf, pairText, startsText, teethText } from './counts.ts'

type Shifted = Pair & { readonly k: number }

export const assemblyTeeth: NumberFamily<Shifted> = {
  kind: 'number',
  name: 'assembly-teeth',
  title: 'A wheel put back some teeth further on',
  parameters: [...pairOf<Shifted>(), { name: 'k', values: (level) => (level === 1 ? [1, 2] : [1, 2, 3, 4]) }],
  example: { z1: 1, z2: 20, k: 1 },
  texts: [
    (given) =>
      `${pairText(given)} The left wheel is lifted out and put back ${counted(given.k, 'tooth', 'teeth')} further on. By how many degrees does its mark miss the pointer?`,
    ({ z1, z2, k }) =>
      `After cleaning, a wheel of ${teethText(z2)} goes back ${counted(k, 'tooth', 'teeth')} from its old place, on a worm with ${startsText(z1)}. How many degrees is it off?`,
  ],
  unit: () => 'deg',
  tolerance: 'r0.5',
  answer: ({ z2, k }) => (360 * k) / z2,
  working: ({ z2, k }) => `${k} × 360° ÷ ${z2}`,
  slips: [
    { cause: 'tooth-is-degree', value: ({ k }) => k },
    { cause: 'half-pitch', value: ({ z2, k }) => (180 * k) / z2 },
    { cause: 'times-starts', value: ({ z1, z2, k }) => (z1 > 1 ? (360 * k * z1) / z2 : null) },
    { cause: 'worm-angle', value: ({ z1, k }) => (360 * k) / z1 },
  ],
  reasons: ({ z2 }) => [
    `${teethText(z2)} share a whole turn of 360°.`,
    'One tooth is one degree of the wheel.',
    'The starts of the worm decide how far a tooth is.',
  ],
  watch: ({ k }) => ({
    sight: 'timing',
    words: `Take the wheels out, put the left one in ${counted(k, 'tooth', 'teeth')} further on and read the dial.`,
    turns: 0,
  }),
  gearing: gearingOf,
}

const isOdd = (z1: number): boolean => z1 % 2 === 1

export const assemblyPhase: NumberFamily<Pair> = {
  kind: 'number',
  name: 'assembly-phase',
  title: 'Marks of both wheels to the front',
  parameters: pairOf<Pair>(),
  example: { z1: 1, z2: 20 },
  texts: [
    (given) =>
      `${pairText(given)} Both wheels have their mark on a tooth, and the right one stands at its front pointer. By how many degrees must the left one miss its own at least?`,
    ({ z1, z2 }) =>
      `Two wheels of ${teethText(z2)}, marked on a tooth, go on a worm with ${startsText(z1)}, both marks to the front. One mark stands at its pointer: how many degrees is the other one off at best?`,
  ],
  unit: () => 'deg',
  tolerance: 'r0.5',
  answer: ({ z1, z2 }) => (isOdd(z1) ? 180 / z2 : 0),
  working: ({ z1, z2 }) =>
    isOdd(z1)
      ? `${counted(z1, 'half pitch', 'half pitches')} from one side of the worm to the other, so half a pitch is over: 360° ÷ ${z2} ÷ 2`
      : `${z1} half pitches from one side of the worm to the other are ${counted(z1 / 2, 'whole one')}, so nothing is over: 0 × 360° ÷ ${z2}`,
  slips: [
    { cause: 'always-aligns', value: ({ z1 }) => (isOdd(z1) ? 0 : null) },
    { cause: 'whole-pitch', value: ({ z1, z2 }) => (isOdd(z1) ? 360 / z2 : null) },
    { cause: 'parity', value: ({ z1, z2 }) => (isOdd(z1) ? null : 180 / z2) },
  ],
  reasons: ({ z1 }) => [
    isOdd(z1)
      ? 'With an odd number of starts, one side has a thread where the other has a space.'
      : 'With an even number of starts, the thread stands alike on both sides of the worm.',
    'Wheels that are alike always stand alike.',
    'The number of teeth alone decides it.',
  ],
  watch: ({ z1 }) => ({
    sight: 'teeth',
    words: isOdd(z1)
      ? 'Compare both sides of the worm: the thread on one is half a pitch on from the other.'
      : 'Compare both sides of the worm: the thread stands alike.',
    turns: 0,
  }),
  gearing: gearingOf,
}

/** Backlash at the reference circle and reference diameter of a wheel [mm] */
type Played = Pair & { readonly jt: number; readonly d2: number }

export const lostMotion: NumberFamily<Played> = {
  kind: 'number',
  name: 'lost-motion',
  title: 'Play at the worm',
  parameters: [
    { name: 'jt', values: (level) => (level === 1 ? [0.1, 0.2, 0.3] : [0.05, 0.08, 0.12, 0.15, 0.25, 0.4]) },
    { name: 'd2', values: (level) => (level === 1 ? [40, 50, 60] : [30, 36, 40, 45, 48, 54, 60, 80]) },
    ...pairOf<Played>(),
  ],
  example: { jt: 0.2, d2: 40, z1: 1, z2: 20 },
  texts: [
    ({ jt, d2, ...pair }) =>
      `${pairText(pair)} The wheels have a reference diameter of ${d2} mm and a backlash of ${jt} mm at it. How many degrees can the worm turn back before a wheel follows?`,
    ({ jt, d2, z1, z2 }) =>
      `The teeth leave ${jt} mm of backlash at a wheel’s reference diameter of ${d2} mm. How much lost motion is that at the worm, in degrees, with ${startsText(z1)} and ${teethText(z2)}?`,
  ],
  unit: () => 'deg',
  tolerance: 'r1',
  irrational: true,
  answer: ({ jt, d2, z1, z2 }) => (degrees(wheelPlay(jt, d2 / 2)) * z2) / z1,
  working: ({ jt, d2, z1, z2 }) => `2 × ${jt} mm ÷ ${d2} mm × 180° ÷ π × ${z2} ÷ ${z1}`,
  slips: [
    { cause: 'wheel-angle', apart: true, value: ({ jt, d2 }) => degrees((2 * jt) / d2) },
    { cause: 'diameter-for-radius', value: ({ jt, d2, z1, z2 }) => (degrees(jt / d2) * z2) / z1 },
    { cause: 'radians', value: ({ jt, d2, z1, z2 }) => (2 * jt * z2) / (d2 * z1) },
    { cause: 'no-starts', value: ({ jt, d2, z1, z2 }) => (z1 > 1 ? degrees((2 * jt) / d2) * z2 : null) },
  ],
  reasons: () => [
    'The wheel’s play is a small angle of the wheel, and the worm turns many times further.',
    'Worm and wheel can move by the same angle before they touch.',
    'The worm can move less than the wheel, since it is the smaller part.',
  ],
  watch: () => ({
    sight: 'marks',
    words: 'Turn the worm by hand back and forth, and see how far it goes before the left wheel follows.',
    turns: 0,
  }),
  gearing: gearingOf,
}
