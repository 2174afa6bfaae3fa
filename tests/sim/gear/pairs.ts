import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'

/** One start on 20 teeth, module 2, q 10: the teeth of the boot cleaner. */
export const oneToTwenty: GearNumbers = {
  profile: 'ZA',
  hand: 'right',
  wheelForm: 'throated',
  depthRule: 'axial',
  thinned: 'worm',
  wormStarts: 1,
  wheelTeeth: 20,
  axialModule: 2,
  diameterQuotient: 10,
  pressureAngle: 20,
  friction: 0.09,
  wheelWidth: 12,
  addendum: 1,
  clearance: 0.25,
  backlash: 0,
  boreDiameter: 8,
  discDiameter: 120,
  centres: { kind: 'shift', profileShift: 0 },
}

/** All profiles, both hands, odd and even counts, with and without undercut. */
export const pairs: readonly GearNumbers[] = [
  oneToTwenty,
  { ...oneToTwenty, hand: 'left', profile: 'ZN' },
  { ...oneToTwenty, wormStarts: 2, wheelTeeth: 21, profile: 'ZI' },
  { ...oneToTwenty, wormStarts: 2, wheelTeeth: 30 },
  { ...oneToTwenty, hand: 'left', wormStarts: 3, wheelTeeth: 31, profile: 'ZN' },
  { ...oneToTwenty, wormStarts: 4, wheelTeeth: 41, profile: 'ZI', pressureAngle: 25 },
  { ...oneToTwenty, wheelTeeth: 12 },
  { ...oneToTwenty, hand: 'left', wormStarts: 2, wheelTeeth: 31, profile: 'ZK' },
]

export const pairName = ({ profile, hand, wormStarts, wheelTeeth }: GearNumbers): string =>
  `${profile} ${wormStarts}/${wheelTeeth} ${hand} hand`
