import type { GearNumbers, ThreadProfile } from '../../../sim/gear/gear-numbers.ts'
import { gearProblems } from '../../../sim/gear/gear-problems.ts'
import { helicalContact } from '../../../sim/gear/helical-contact.ts'
import { oneToTwenty } from './pairs.ts'

/** Evenly spread numbers from 0 to 1 out of a seed: the same ones every time. */
function seeded(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state ^ (state >>> 15), 0x2c1b3c6d) + 0x9e3779b9) >>> 0
    const mixed = Math.imul(state ^ (state >>> 13), 0x297a2d39) >>> 0
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32
  }
}

const PROFILES: readonly ThreadProfile[] = ['ZA', 'ZN', 'ZI', 'ZK']

function anyPair(random: () => number, profile: ThreadProfile): GearNumbers {
  const between = (low: number, high: number) => low + random() * (high - low)
  const axialModule = between(0.5, 6)
  return {
    ...oneToTwenty,
    profile,
    hand: random() < 0.5 ? 'left' : 'right',
    wheelForm: profile === 'ZI' && random() < 0.5 ? 'helical' : 'throated',
    wormStarts: 1 + Math.floor(random() * 4),
    wheelTeeth: 18 + Math.floor(random() * 43),
    axialModule,
    diameterQuotient: between(8, 18),
    pressureAngle: between(18, 26),
    wheelWidth: axialModule * between(4, 6.5),
    boreDiameter: axialModule * 3,
    discDiameter: axialModule * between(50, 100),
    centres: { kind: 'shift', profileShift: between(-0.3, 0.4) },
  }
}

/** Whether a pair can be built: no error, and no plain wheel whose feet the worm would cut. */
const buildable = (pair: GearNumbers): boolean =>
  !gearProblems(pair).some(({ severity }) => severity === 'error') &&
  !(pair.wheelForm === 'helical' && helicalContact(pair).undercut)

/** Valid pairs of all profiles and both forms of wheel in turn. */
export function validPairs(count: number, seed: number): GearNumbers[] {
  const random = seeded(seed)
  const found: GearNumbers[] = []
  while (found.length < count) {
    const pair = anyPair(random, PROFILES[found.length % PROFILES.length]!)
    if (buildable(pair)) found.push(pair)
  }
  return found
}

/** All four profiles and both hands of seven ratios. */
export const everyProfile: readonly GearNumbers[] = (['right', 'left'] as const).flatMap((hand) =>
  PROFILES.flatMap((profile) =>
    (
      [
        [1, 20, 20],
        [1, 12, 20],
        [2, 30, 20],
        [2, 21, 20],
        [3, 31, 22],
        [4, 41, 25],
        [1, 60, 20],
      ] as const
    ).map(([wormStarts, wheelTeeth, pressureAngle]) => ({
      ...oneToTwenty,
      hand,
      profile,
      wormStarts,
      wheelTeeth,
      pressureAngle,
    })),
  ),
)
