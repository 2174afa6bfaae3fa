/**
 * What is wrong with, or worth knowing about, the teeth of a pair. An error means that no usable pair exists;
 * meshes are made all the same, cut short where the exact tooth ends.
 */
import { helicalContactProblems, throatedContactProblems } from './contact-problems.ts'
import { curesOf, FEWER_STARTS, MORE_TEETH, SMALLER_ADDENDUM, THICKER_WORM } from './cures.ts'
import { boreProblems, centresProblems, fitErrors } from './fit-problems.ts'
import type { GearNumbers } from './gear-numbers.ts'
import { error, type GearProblem } from './gear-problem.ts'
import { helicalTipWidth, helicalToothExists } from './helical-quality.ts'
import { type PairProportions, pairProportions } from './proportions.ts'
import { threadProblems, wormErrors } from './thread-problems.ts'
import { countNotes, tipProblems, undercutProblems, widthProblems } from './tooth-problems.ts'
import { leastTipWidth, wheelLook } from './tooth-quality.ts'
import { toothExists } from './wheel-section.ts'
import { spaceCutter } from './wheel-space.ts'

type PositiveName =
  | 'axialModule'
  | 'diameterQuotient'
  | 'wheelWidth'
  | 'addendum'
  | 'boreDiameter'
  | 'discDiameter'

/** Fields that are no numbers to build with; everything else is looked at only when there are none. */
function unusableNumbers(gearing: GearNumbers): GearProblem[] {
  const problems: GearProblem[] = []
  const whole = (name: 'wormStarts' | 'wheelTeeth', least: number) => {
    const value = gearing[name]
    if (Number.isInteger(value) && value >= least) return
    problems.push(error(`gearing.${name}`, `must be a whole number of at least ${least}, got ${value}`))
  }
  const positive = (name: PositiveName, unit: string) => {
    const value = gearing[name]
    if (Number.isFinite(value) && value > 0) return
    problems.push(error(`gearing.${name}`, `must be above 0${unit}, got ${value}${unit}`))
  }
  const finite = (name: string, value: number) => {
    if (Number.isFinite(value)) return
    problems.push(error(`gearing.${name}`, `must be a finite number, got ${value}`))
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
  positive('addendum', '')
  finite('clearance', gearing.clearance)
  finite('backlash', gearing.backlash)
  positive('boreDiameter', ' mm')
  positive('discDiameter', ' mm')
  const { centres } = gearing
  if (centres.kind === 'shift') finite('centres.profileShift', centres.profileShift)
  else finite('centres.centreDistance', centres.centreDistance)
  return problems
}

/** Every problem of a pair at once. Nothing here throws on numbers, whatever they are. */
export function gearProblems(gearing: GearNumbers): GearProblem[] {
  const unusable = unusableNumbers(gearing)
  if (unusable.length > 0) return unusable
  const pair = pairProportions(gearing)
  const noWorm = wormErrors(gearing, pair)
  if (noWorm.length > 0) return noWorm
  const noFit = fitErrors(gearing, pair)
  if (noFit.length > 0) return noFit
  return gearing.wheelForm === 'helical' ? helicalProblems(gearing, pair) : throatedProblems(gearing, pair)
}

const hasTooth = (gearing: GearNumbers): boolean =>
  gearing.wheelForm === 'helical' ? helicalToothExists(gearing) : toothExists(spaceCutter(gearing))

const noTooth = (gearing: GearNumbers): GearProblem =>
  error(
    'gearing.wheelTeeth',
    `must leave a tooth on the wheel, got ${gearing.wheelTeeth} teeth that the worm cuts away: ` +
      curesOf(gearing, [MORE_TEETH, FEWER_STARTS, THICKER_WORM, SMALLER_ADDENDUM], hasTooth),
  )

function throatedProblems(gearing: GearNumbers, pair: PairProportions): GearProblem[] {
  const look = wheelLook(gearing)
  if (!look) return [noTooth(gearing)]
  return [
    ...threadProblems(gearing, pair),
    ...undercutProblems(gearing, look),
    ...throatedContactProblems(gearing, look),
    ...tipProblems(gearing, leastTipWidth(look.cutter, look.planes)),
    ...widthProblems(gearing, look.halfFace),
    ...boreProblems(gearing, pair),
    ...centresProblems(gearing, pair),
  ]
}

function helicalProblems(gearing: GearNumbers, pair: PairProportions): GearProblem[] {
  if (!helicalToothExists(gearing)) return [noTooth(gearing)]
  return [
    ...threadProblems(gearing, pair),
    ...countNotes(gearing),
    ...helicalContactProblems(gearing),
    ...tipProblems(gearing, helicalTipWidth(gearing)),
    ...boreProblems(gearing, pair),
    ...centresProblems(gearing, pair),
  ]
}
