/**
 * The pair whose figures are printed in several tables: 2 starts, 30 teeth, axial module 3, worm of 44 mm.
 */
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'

export const metricPair: GearNumbers = {
  profile: 'ZA',
  hand: 'right',
  wheelForm: 'throated',
  depthRule: 'axial',
  thinned: 'worm',
  wormStarts: 2,
  wheelTeeth: 30,
  axialModule: 3,
  diameterQuotient: 44 / 3,
  pressureAngle: 20,
  friction: 0.05,
  wheelWidth: 20,
  addendum: 1,
  clearance: 0.25,
  backlash: 0,
  boreDiameter: 8,
  discDiameter: 120,
  centres: { kind: 'shift', profileShift: 0 },
}
