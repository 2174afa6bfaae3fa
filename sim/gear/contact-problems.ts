/** What is wrong with the contact of worm and wheel. */
import { conjugateError } from './conjugate-error.ts'
import { contactRatio } from './contact-ratio.ts'
import type { GearNumbers } from './gear-numbers.ts'
import {
  curesOf,
  FEWER_STARTS,
  FLATTER_FLANKS,
  LARGER_ADDENDUM,
  LARGER_SHIFT,
  MORE_TEETH,
  SMALLER_ADDENDUM,
  SMALLER_SHIFT,
  STEEPER_FLANKS,
  WIDER_WHEEL,
} from './cures.ts'
import { type GearProblem, rounded, warning } from './gear-problem.ts'
import { helicalContact } from './helical-contact.ts'
import { ratioOver, ratioReaches, type WheelLook } from './tooth-quality.ts'

/** Least contact ratio that keeps a next pair ready when one leaves: common practice. */
const LEAST_RATIO = 1.2

const keepsContact = (gearing: GearNumbers): boolean =>
  gearing.wheelForm === 'helical'
    ? helicalContact(gearing).ratio >= LEAST_RATIO
    : ratioReaches(gearing, LEAST_RATIO)

function ratioProblems(gearing: GearNumbers, ratio: number): GearProblem[] {
  if (ratio >= LEAST_RATIO) return []
  const got =
    ratio < 1
      ? `got ${rounded(ratio)}, so at times none touches and the wheel turns in jerks`
      : `got ${rounded(ratio)}, so hardly a second tooth takes over before the first one leaves`
  const cures = [MORE_TEETH, LARGER_ADDENDUM, FLATTER_FLANKS, STEEPER_FLANKS, SMALLER_SHIFT]
  return [
    warning(
      'gearing.wheelTeeth',
      `teeth in mesh should be at least ${LEAST_RATIO} on average, ${got}: ` +
        curesOf(gearing, cures, keepsContact),
    ),
  ]
}

export function throatedContactProblems(gearing: GearNumbers, look: WheelLook): GearProblem[] {
  if (ratioOver(look.flanks, gearing.axialModule) >= LEAST_RATIO) return []
  return ratioProblems(gearing, contactRatio(gearing).total)
}

const tipStaysOnFlank = (gearing: GearNumbers): boolean => !helicalContact(gearing).undercut

function footProblems(gearing: GearNumbers): GearProblem[] {
  if (tipStaysOnFlank(gearing)) return []
  const cures = [MORE_TEETH, LARGER_SHIFT, STEEPER_FLANKS, SMALLER_ADDENDUM]
  return [
    warning(
      'gearing.wheelTeeth',
      'the tip of the worm should stay on the flank of the wheel, got one that digs into the foot ' +
        `at ${gearing.wheelTeeth} teeth: ${curesOf(gearing, cures, tipStaysOnFlank)}`,
    ),
  ]
}

const pointStaysOnTeeth = (gearing: GearNumbers): boolean =>
  helicalContact(gearing).faceNeeded <= gearing.wheelWidth

function faceProblems(gearing: GearNumbers): GearProblem[] {
  if (pointStaysOnTeeth(gearing)) return []
  return [
    warning(
      'gearing.wheelWidth',
      `should be at least ${rounded(helicalContact(gearing).faceNeeded)} mm for the point of contact ` +
        `to stay on the teeth, got ${rounded(gearing.wheelWidth)} mm: ` +
        curesOf(gearing, [WIDER_WHEEL, FEWER_STARTS], pointStaysOnTeeth),
    ),
  ]
}

function profileProblems(gearing: GearNumbers): GearProblem[] {
  if (gearing.profile === 'ZI') return []
  const about = rounded(Number(conjugateError(gearing).toPrecision(1)))
  return [
    warning(
      'gearing.profile',
      `should be ZI with a plain helical wheel, got ${gearing.profile}, which is not conjugate to it: the wheel ` +
        `runs unevenly by about ${about} mm at its reference circle, tooth by tooth; ` +
        'take profile ZI or a throated wheel',
    ),
  ]
}

/** A plain helical wheel touches in a point, which must stay on its teeth and on an involute. */
export const helicalContactProblems = (gearing: GearNumbers): GearProblem[] => [
  ...footProblems(gearing),
  ...ratioProblems(gearing, helicalContact(gearing).ratio),
  ...faceProblems(gearing),
  ...profileProblems(gearing),
]
