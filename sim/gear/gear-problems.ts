/**
 * What is wrong with, or worth knowing about, the teeth of a pair. An error means that no usable pair exists;
 * meshes are made all the same, cut short where the exact tooth ends.
 *
 * Tables by normal pressure angle: R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design,
 * 8th to 10th ed., Tables 15-9 (largest lead angle) and 15-10 (least number of teeth), from memory; between
 * rows we interpolate, outside the table the nearest row holds.
 */
import { degrees } from '../quantity/convert.ts'
import type { GearNumbers } from './gear-numbers.ts'
import { type PairProportions, pairProportions } from './proportions.ts'
import { threadForm } from './thread-profile.ts'
import { toothLimits } from './tooth-limits.ts'
import { type FacePlane, facePlanes, leastTipWidth, undercutFrom } from './tooth-quality.ts'
import { soundHalfFace, toothExists } from './wheel-section.ts'
import { type SpaceCutter, spaceCutter } from './wheel-space.ts'

export interface GearProblem {
  readonly path: string
  readonly severity: 'error' | 'warning' | 'note'
  readonly message: string
}

/** Normal pressure angle [deg] to largest lead angle [deg]. */
const LARGEST_LEAD = [
  [14.5, 16],
  [20, 25],
  [25, 35],
  [30, 45],
] as const
/** Normal pressure angle [deg] to least number of wheel teeth. */
const LEAST_TEETH = [
  [14.5, 40],
  [17.5, 27],
  [20, 21],
  [22.5, 17],
  [25, 14],
  [27.5, 12],
  [30, 10],
] as const
/**
 * Usual diameter quotients: Litvin and Fuentes, Gear Geometry and Applied Theory, 2nd ed. (2004), section
 * 19.3.
 */
const USUAL_QUOTIENT = { least: 7, most: 25 }
/** Narrowest tip of a wheel tooth in modules before it counts as pointed (common practice). */
const POINTED = 0.2
/** Least radius under the thread, in modules, that leaves a shaft (our choice). */
const LEAST_ROOT = 0.25

const rounded = (value: number): string => String(Number(value.toPrecision(3)))

function interpolated(table: readonly (readonly [number, number])[], x: number): number {
  let [lowX, lowY] = table[0]!
  if (x <= lowX) return lowY
  for (const [highX, highY] of table) {
    if (x <= highX) return lowY + ((highY - lowY) * (x - lowX)) / (highX - lowX || 1)
    lowX = highX
    lowY = highY
  }
  return lowY
}

const error = (path: string, message: string): GearProblem => ({ path, severity: 'error', message })
const warning = (path: string, message: string): GearProblem => ({ path, severity: 'warning', message })

/** Fields that are no numbers to build with; everything else is looked at only when there are none. */
function unusableNumbers(gearing: GearNumbers): GearProblem[] {
  const problems: GearProblem[] = []
  const whole = (name: 'wormStarts' | 'wheelTeeth', least: number) => {
    const value = gearing[name]
    if (Number.isInteger(value) && value >= least) return
    problems.push(error(`gearing.${name}`, `must be a whole number of at least ${least}, got ${value}`))
  }
  const positive = (name: 'axialModule' | 'diameterQuotient' | 'wheelWidth', unit: string) => {
    const value = gearing[name]
    if (Number.isFinite(value) && value > 0) return
    problems.push(error(`gearing.${name}`, `must be above 0${unit}, got ${value}${unit}`))
  }
  whole('wormStarts', 1)
  whole('wheelTeeth', 3)
  positive('axialModule', ' mm')
  positive('diameterQuotient', '')
  if (!(gearing.pressureAngle > 0 && gearing.pressureAngle < 45)) {
    problems.push(
      error('gearing.pressureAngle', `must be between 0 and 45 deg, got ${gearing.pressureAngle} deg`),
    )
  }
  positive('wheelWidth', ' mm')
  return problems
}

export function gearProblems(gearing: GearNumbers): GearProblem[] {
  const unusable = unusableNumbers(gearing)
  if (unusable.length > 0) return unusable
  const pair = pairProportions(gearing)
  const noWorm = wormErrors(gearing, pair)
  if (noWorm.length > 0) return noWorm
  const cutter = spaceCutter(gearing)
  if (!toothExists(cutter)) {
    return [
      error(
        'gearing.wheelTeeth',
        `must leave a tooth on the wheel, got ${gearing.wheelTeeth} teeth that the worm cuts away: ` +
          'take more teeth or fewer starts',
      ),
    ]
  }
  const halfFace = soundHalfFace(cutter, gearing.wheelWidth)
  const planes = facePlanes(cutter, halfFace)
  return [
    ...leadProblems(gearing, pair),
    ...toothCountProblems(gearing, cutter, planes),
    ...quotientProblems(gearing),
    ...threadProblems(gearing, pair),
    ...tipProblems(gearing, cutter, planes),
    ...widthProblems(gearing, halfFace),
  ]
}

function wormErrors(
  { axialModule: m, diameterQuotient: q }: GearNumbers,
  pair: PairProportions,
): GearProblem[] {
  if (pair.rootRadiusWorm >= LEAST_ROOT * m) return []
  const least = 2 * (pair.dedendumWorm / m + LEAST_ROOT)
  return [
    error(
      'gearing.diameterQuotient',
      `must be at least ${rounded(least)} to leave a shaft under the thread, got ${rounded(q)}: ` +
        'take a thicker worm',
    ),
  ]
}

function leadProblems({ pressureAngle }: GearNumbers, pair: PairProportions): GearProblem[] {
  const limit = interpolated(LARGEST_LEAD, pressureAngle)
  const g = degrees(pair.leadAngle)
  if (g <= limit) return []
  return [
    warning(
      'gearing.wormStarts',
      `lead angle should be at most ${rounded(limit)} deg ` +
        `at a pressure angle of ${rounded(pressureAngle)} deg, ` +
        `got ${rounded(g)} deg: take fewer starts, a larger diameter quotient or a larger pressure angle`,
    ),
  ]
}

function toothCountProblems(
  gearing: GearNumbers,
  cutter: SpaceCutter,
  planes: readonly FacePlane[],
): GearProblem[] {
  const { wheelTeeth, pressureAngle } = gearing
  const undercut = undercutFrom(cutter, planes)
  if (undercut !== null) {
    const where = undercut === 0 ? 'over the whole face' : `from ${rounded(undercut)} mm beside the middle on`
    return [
      warning(
        'gearing.wheelTeeth',
        `the flank in use should be whole, got one that is undercut ${where} at ${wheelTeeth} teeth: ` +
          'take more teeth, a larger pressure angle or fewer starts',
      ),
    ]
  }
  const least = Math.ceil(interpolated(LEAST_TEETH, pressureAngle))
  if (wheelTeeth >= least) return []
  return [
    {
      path: 'gearing.wheelTeeth',
      severity: 'note',
      message:
        `handbooks ask for at least ${least} teeth at a pressure angle of ${rounded(pressureAngle)} deg, ` +
        `got ${wheelTeeth}: the flank in use is whole, but the root is thin, ` +
        'so take more teeth or a larger pressure angle',
    },
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

function threadProblems(gearing: GearNumbers, pair: PairProportions): GearProblem[] {
  const limits = toothLimits(gearing)
  const problems: GearProblem[] = []
  if (limits.hobTip < pair.hobTipRadius || limits.wormRoot > pair.rootRadiusWorm) {
    problems.push(
      warning(
        'gearing.pressureAngle',
        'axial pressure angle should leave the thread a land at tip and root, ' +
          `got ${rounded(degrees(pair.axialPressureAngle))} deg, ` +
          'so the teeth are cut short: take a smaller pressure angle or fewer starts',
      ),
    )
  }
  const least = threadForm(gearing).leastRadius
  if (least > limits.gorge) {
    problems.push(
      warning(
        'gearing.profile',
        `flank should reach the tips of the wheel at ${rounded(limits.gorge)} mm from the worm's axis, ` +
          `got none below ${rounded(least)} mm: take profile ZA, fewer starts or a larger diameter quotient`,
      ),
    )
  }
  return problems
}

function tipProblems(gearing: GearNumbers, cutter: SpaceCutter, planes: readonly FacePlane[]): GearProblem[] {
  const least = leastTipWidth(cutter, planes)
  const wanted = POINTED * gearing.axialModule
  if (least >= wanted) return []
  return [
    warning(
      'gearing.wheelTeeth',
      `tips of the teeth should be at least ${rounded(wanted)} mm wide, got ${rounded(least)} mm: ` +
        'take more teeth, a narrower wheel or a smaller pressure angle',
    ),
  ]
}

function widthProblems(gearing: GearNumbers, halfFace: number): GearProblem[] {
  const width = 2 * halfFace
  if (width >= gearing.wheelWidth) return []
  return [
    warning(
      'gearing.wheelWidth',
      `should be at most ${rounded(width)} mm for the teeth to reach across, ` +
        `got ${rounded(gearing.wheelWidth)} mm: ` +
        'take a narrower wheel or a larger diameter quotient',
    ),
  ]
}
