/** What is wrong with the thread of the worm, or worth knowing about it. */
import { degrees } from '../quantity/convert.ts'
import type { GearNumbers } from './gear-numbers.ts'
import {
  curesOf,
  FEWER_STARTS,
  FLATTER_FLANKS,
  LESS_BACKLASH,
  PROFILE_ZA,
  SMALLER_ADDENDUM,
  STEEPER_FLANKS,
  THICKER_WORM,
} from './cures.ts'
import { error, type GearProblem, rounded, warning } from './gear-problem.ts'
import { largestLead } from './handbook-limits.ts'
import { type PairProportions, pairProportions } from './proportions.ts'
import { leastDiscRadius, threadForm } from './thread-profile.ts'
import { type ToothLimits, toothLimits } from './tooth-limits.ts'

/**
 * Usual diameter quotients: Litvin and Fuentes, Gear Geometry and Applied Theory, 2nd ed. (2004), section
 * 19.3.
 */
const USUAL_QUOTIENT = { least: 7, most: 25 }
/** Least radius under the thread, in modules, that leaves a shaft (our choice). */
const LEAST_ROOT = 0.25

/** Faults without whose cure there is no worm at all. */
export function wormErrors(gearing: GearNumbers, pair: PairProportions): GearProblem[] {
  const { axialModule: m, diameterQuotient: q, discDiameter } = gearing
  if (pair.rootRadiusWorm < LEAST_ROOT * m) {
    const least = 2 * (pair.dedendumWorm / m + LEAST_ROOT)
    return [
      error(
        'gearing.diameterQuotient',
        `must be at least ${rounded(least)} to leave a shaft under the thread, got ${rounded(q)}: ` +
          'take a thicker worm',
      ),
    ]
  }
  const smallest = 2 * leastDiscRadius(pair)
  if (gearing.profile !== 'ZK' || discDiameter >= smallest) return []
  return [
    error(
      'gearing.discDiameter',
      `must be at least ${rounded(smallest)} mm for a disc as deep as this thread, ` +
        `got ${rounded(discDiameter)} mm: take a larger disc or another profile`,
    ),
  ]
}

export function threadProblems(gearing: GearNumbers, pair: PairProportions): GearProblem[] {
  const limits = toothLimits(gearing)
  return [
    ...leadProblems(gearing, pair),
    ...quotientProblems(gearing),
    ...landProblems(gearing, pair),
    ...reachProblems(gearing, limits),
  ]
}

const leadFits = (gearing: GearNumbers): boolean =>
  degrees(pairProportions(gearing).leadAngle) <= largestLead(gearing.pressureAngle)

function leadProblems(gearing: GearNumbers, pair: PairProportions): GearProblem[] {
  if (leadFits(gearing)) return []
  const { pressureAngle } = gearing
  return [
    warning(
      'gearing.wormStarts',
      `lead angle should be at most ${rounded(largestLead(pressureAngle))} deg ` +
        `at a pressure angle of ${rounded(pressureAngle)} deg, got ${rounded(degrees(pair.leadAngle))} deg: ` +
        curesOf(gearing, [FEWER_STARTS, THICKER_WORM, STEEPER_FLANKS], leadFits),
    ),
  ]
}

function quotientProblems({ diameterQuotient: q }: GearNumbers): GearProblem[] {
  const { least, most } = USUAL_QUOTIENT
  if (q >= least && q <= most) return []
  const remedy = q < least ? 'a thin worm bends' : 'a thick worm loses efficiency'
  return [
    warning(
      'gearing.diameterQuotient',
      `should be from ${least} to ${most}, got ${rounded(q)}: ` +
        `${remedy}, take ${q < least ? 'a larger' : 'a smaller'} one`,
    ),
  ]
}

/** Whether thread and space keep a land at tip and root, before backlash is taken off. */
function hasLands(gearing: GearNumbers): boolean {
  const pair = pairProportions(gearing)
  const { hobTip, wormRoot } = toothLimits(gearing)
  return hobTip >= pair.hobTipRadius && wormRoot <= pair.rootRadiusWorm
}

/** Whether the thread keeps its tip when backlash has been taken off it. */
function keepsTip(gearing: GearNumbers): boolean {
  const { wormTip, hobTip } = toothLimits(gearing)
  return wormTip >= Math.min(pairProportions(gearing).tipRadiusWorm, hobTip)
}

function landProblems(gearing: GearNumbers, pair: PairProportions): GearProblem[] {
  if (!hasLands(gearing)) {
    return [
      warning(
        'gearing.pressureAngle',
        'axial pressure angle should leave the thread a land at tip and root, ' +
          `got ${rounded(degrees(pair.axialPressureAngle))} deg, so the teeth are cut short: ` +
          curesOf(gearing, [FLATTER_FLANKS, SMALLER_ADDENDUM, FEWER_STARTS, THICKER_WORM], hasLands),
      ),
    ]
  }
  if (keepsTip(gearing)) return []
  return [
    warning(
      'gearing.backlash',
      'should leave the thread a land at its tip, ' +
        `got ${rounded(gearing.backlash)} mm taken off it, so the thread is cut short: ` +
        curesOf(gearing, [LESS_BACKLASH, SMALLER_ADDENDUM, FLATTER_FLANKS], keepsTip),
    ),
  ]
}

const reachesIn = (gearing: GearNumbers): boolean =>
  threadForm(gearing).leastRadius <= toothLimits(gearing).gorge
const reachesOut = (gearing: GearNumbers): boolean =>
  threadForm(gearing).greatestRadius >= toothLimits(gearing).wormTip

/** Flanks that do not exist where they are needed. */
function reachProblems(gearing: GearNumbers, limits: ToothLimits): GearProblem[] {
  const { leastRadius, greatestRadius } = threadForm(gearing)
  const cures = [PROFILE_ZA, FEWER_STARTS, THICKER_WORM]
  const problems: GearProblem[] = []
  if (leastRadius > limits.gorge) {
    problems.push(
      warning(
        'gearing.profile',
        `flank should reach the tips of the wheel at ${rounded(limits.gorge)} mm from the worm's axis, ` +
          `got none below ${rounded(leastRadius)} mm: ${curesOf(gearing, cures, reachesIn)}`,
      ),
    )
  }
  if (greatestRadius < limits.wormTip) {
    problems.push(
      warning(
        'gearing.discDiameter',
        `flank should be ground out to the tip of the worm, ${rounded(limits.wormTip)} mm from its axis, ` +
          `got none above ${rounded(greatestRadius)} mm: ${curesOf(gearing, cures, reachesOut)}`,
      ),
    )
  }
  return problems
}
