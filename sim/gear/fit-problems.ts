/** What is wrong with the way worm and wheels fit together, and with the wheel's body. */
import { MOST_SHIFT } from './cures.ts'
import type { GearNumbers } from './gear-numbers.ts'
import { error, type GearProblem, rounded, warning } from './gear-problem.ts'
import type { PairProportions } from './proportions.ts'
import { widestBore } from './rim.ts'

/** Profile shift, either way, that is usual: common practice. */
const USUAL_SHIFT = 0.5
/** What the shift of a distance given in decimals may be off by. */
const DUST = 1e-8
/** Largest backlash: a quarter of the pitch takes half of the thread away. */
const PITCH_OF_BACKLASH = 1 / 4

/** Faults without whose cure there is no pair at all. */
export function fitErrors(gearing: GearNumbers, pair: PairProportions): GearProblem[] {
  const far = centresErrors(gearing, pair)
  if (far.length > 0) return far
  return [
    ...clearanceErrors(gearing, pair),
    ...touchingErrors(gearing, pair),
    ...backlashErrors(gearing, pair),
    ...boreErrors(gearing, pair),
  ]
}

/** Distances between the axes [mm] that a profile shift of at most so much reaches. */
function distancesFor({ profileShift, centreDistance }: PairProportions, most: number, unit: number): string {
  const standard = centreDistance - profileShift * unit
  return `from ${rounded(standard - most * unit)} to ${rounded(standard + most * unit)} mm`
}

const unitOf = ({ depthRule, axialModule }: GearNumbers, { normalModule }: PairProportions): number =>
  depthRule === 'normal' ? normalModule : axialModule

function centresErrors(gearing: GearNumbers, pair: PairProportions): GearProblem[] {
  const { profileShift: x2, centreDistance: a } = pair
  if (Math.abs(x2) <= MOST_SHIFT + DUST) return []
  if (gearing.centres.kind === 'shift') {
    const message = `must be from −${MOST_SHIFT} to ${MOST_SHIFT}, got ${rounded(x2)}: take a smaller shift`
    return [error('gearing.centres.profileShift', message)]
  }
  return [
    error(
      'gearing.centres.centreDistance',
      `must be ${distancesFor(pair, MOST_SHIFT, unitOf(gearing, pair))} for a profile shift of at most ` +
        `${MOST_SHIFT} either way, got ${rounded(a)} mm, a shift of ${rounded(x2)}: ` +
        'take such a distance, or teeth and a module that come to it',
    ),
  ]
}

export function centresProblems(gearing: GearNumbers, pair: PairProportions): GearProblem[] {
  const { profileShift: x2, centreDistance: a } = pair
  // of a shift that is given itself, its field tells what is usual
  if (gearing.centres.kind === 'shift' || Math.abs(x2) <= USUAL_SHIFT) return []
  return [
    warning(
      'gearing.centres.centreDistance',
      `is usually ${distancesFor(pair, USUAL_SHIFT, unitOf(gearing, pair))} for a profile shift of at most ` +
        `${USUAL_SHIFT} either way, got ${rounded(a)} mm, a shift of ${rounded(x2)}: take such a distance`,
    ),
  ]
}

function clearanceErrors(gearing: GearNumbers, pair: PairProportions): GearProblem[] {
  const { clearanceWormTip, clearanceWheelTip } = pair
  const problem = (tip: string, foot: string, value: number) =>
    error(
      'gearing.clearance',
      `must leave room between the tip of the ${tip} and the root of the ${foot}, got ${rounded(value)} mm, ` +
        `so they interfere at a clearance of ${rounded(gearing.clearance)} modules: take a larger clearance`,
    )
  return [
    ...(clearanceWormTip > 0 ? [] : [problem('worm', 'wheel', clearanceWormTip)]),
    ...(clearanceWheelTip > 0 ? [] : [problem('wheel', 'worm', clearanceWheelTip)]),
  ]
}

/** The wheels stand on both sides of the worm, each its outside radius deep. */
function touchingErrors(gearing: GearNumbers, pair: PairProportions): GearProblem[] {
  const outside = gearing.wheelForm === 'helical' ? pair.throatRadiusWheel : pair.outsideRadiusWheel
  if (pair.centreDistance > outside) return []
  return [
    error(
      'gearing.diameterQuotient',
      `must keep the two wheels of ${rounded(2 * outside)} mm apart, ` +
        `got axes ${rounded(2 * pair.centreDistance)} mm from each other: take a thicker worm`,
    ),
  ]
}

function backlashErrors({ backlash }: GearNumbers, { axialPitch }: PairProportions): GearProblem[] {
  const most = PITCH_OF_BACKLASH * axialPitch
  if (backlash >= 0 && backlash <= most) return []
  return [
    error(
      'gearing.backlash',
      `must be from 0 to ${rounded(most)} mm, a quarter of the pitch, got ${rounded(backlash)} mm: ` +
        `take ${backlash < 0 ? 'none' : 'less backlash'}`,
    ),
  ]
}

function boreErrors({ boreDiameter }: GearNumbers, { rootRadiusWheel }: PairProportions): GearProblem[] {
  if (boreDiameter < 2 * rootRadiusWheel) return []
  return [
    error(
      'gearing.boreDiameter',
      `must be below ${rounded(2 * rootRadiusWheel)} mm, the root of the teeth, ` +
        `got ${rounded(boreDiameter)} mm: take a smaller bore`,
    ),
  ]
}

export function boreProblems(gearing: GearNumbers, { rootRadiusWheel }: PairProportions): GearProblem[] {
  const { boreDiameter, axialModule } = gearing
  const most = widestBore(rootRadiusWheel, axialModule)
  if (boreDiameter <= most) return []
  return [
    warning(
      'gearing.boreDiameter',
      `should be at most ${rounded(most)} mm to leave a rim under the teeth, ` +
        `got ${rounded(boreDiameter)} mm: take a smaller bore`,
    ),
  ]
}
