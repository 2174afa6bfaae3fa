/** What is wrong with the teeth of the wheel, or worth knowing about them. */
import type { GearNumbers } from './gear-numbers.ts'
import {
  type Cure,
  curesOf,
  FEWER_STARTS,
  FLATTER_FLANKS,
  LARGER_SHIFT,
  LESS_BACKLASH,
  MORE_TEETH,
  NARROWER_WHEEL,
  SMALLER_ADDENDUM,
  SMALLER_SHIFT,
  STEEPER_FLANKS,
  THICKER_WORM,
} from './cures.ts'
import { type GearProblem, note, rounded, warning } from './gear-problem.ts'
import { leastTeeth } from './handbook-limits.ts'
import { helicalTipWidth } from './helical-quality.ts'
import {
  activeUndercut,
  footUndercut,
  isWhole,
  tipWidth,
  type Undercut,
  type WheelLook,
} from './tooth-quality.ts'
import { soundHalfFace } from './wheel-section.ts'
import { spaceCutter } from './wheel-space.ts'

/** Narrowest tip of a wheel tooth in modules before it counts as pointed (common practice). */
const POINTED = 0.2

/** Where on the face an undercut lies: on the other side of the mid-plane it is the other flank's. */
function placeOf({ y, flank }: Undercut): string {
  if (flank === 'both') {
    return y === 0
      ? 'on both sides over the whole face'
      : `on both sides from ${rounded(y)} mm beside the middle on`
  }
  const [towards, other] = flank > 0 ? ['+z', '−z'] : ['−z', '+z']
  return (
    `from ${rounded(y)} mm beside the middle on, ` +
    `at +y on the flank cut by the ${towards} side of the thread and at −y on that of the ${other} side`
  )
}

const UNDERCUT_CURES: readonly Cure[] = [
  MORE_TEETH,
  LARGER_SHIFT,
  STEEPER_FLANKS,
  FEWER_STARTS,
  SMALLER_ADDENDUM,
]

const flankIsWhole = (gearing: GearNumbers): boolean => isWhole(gearing, activeUndercut)
const footIsWhole = (gearing: GearNumbers): boolean => isWhole(gearing, footUndercut)

export function undercutProblems(gearing: GearNumbers, look: WheelLook): GearProblem[] {
  const { wheelTeeth } = gearing
  const active = activeUndercut(look.playless, look.halfFace)
  if (active) {
    return [
      warning(
        'gearing.wheelTeeth',
        `the flank in use should be whole, got one that is undercut ${placeOf(active)} ` +
          `at ${wheelTeeth} teeth: ${curesOf(gearing, UNDERCUT_CURES, flankIsWhole)}`,
      ),
    ]
  }
  const fillet = footUndercut(look.playless, look.halfFace)
  if (!fillet) return countNotes(gearing)
  return [
    note(
      'gearing.wheelTeeth',
      `the foot of the tooth is undercut below the flank in use, ${placeOf(fillet)}, at ${wheelTeeth} teeth: ` +
        `the flank in use is whole, and for a thicker foot ${curesOf(gearing, UNDERCUT_CURES, footIsWhole)}`,
    ),
    ...countNotes(gearing),
  ]
}

const hasHandbookCount = ({ wheelTeeth, pressureAngle }: GearNumbers): boolean =>
  wheelTeeth >= leastTeeth(pressureAngle)

/** What handbooks ask for, without looking at the flank itself. */
export function countNotes(gearing: GearNumbers): GearProblem[] {
  if (hasHandbookCount(gearing)) return []
  const { wheelTeeth, pressureAngle } = gearing
  return [
    note(
      'gearing.wheelTeeth',
      `handbooks ask for at least ${leastTeeth(pressureAngle)} teeth ` +
        `at a pressure angle of ${rounded(pressureAngle)} deg, got ${wheelTeeth}: the flank in use is whole, ` +
        `but the root is thin, so ${curesOf(gearing, [MORE_TEETH, STEEPER_FLANKS], hasHandbookCount)}`,
    ),
  ]
}

const widthOfTip = (gearing: GearNumbers): number =>
  gearing.wheelForm === 'helical' ? helicalTipWidth(gearing) : tipWidth(gearing)

export function tipProblems(gearing: GearNumbers, least: number): GearProblem[] {
  const wanted = POINTED * gearing.axialModule
  if (least >= wanted) return []
  const got = least > 0 ? `got ${rounded(least)} mm` : 'got teeth that come to a point'
  const cures = [MORE_TEETH, SMALLER_SHIFT, FLATTER_FLANKS, SMALLER_ADDENDUM, NARROWER_WHEEL, LESS_BACKLASH]
  return [
    warning(
      'gearing.wheelTeeth',
      `tips of the teeth should be at least ${rounded(wanted)} mm wide, ${got}: ` +
        curesOf(gearing, cures, (changed) => widthOfTip(changed) >= wanted),
    ),
  ]
}

const reachesAcross = (gearing: GearNumbers): boolean =>
  soundHalfFace(spaceCutter(gearing), gearing.wheelWidth) >= gearing.wheelWidth / 2

export function widthProblems(gearing: GearNumbers, halfFace: number): GearProblem[] {
  const width = 2 * halfFace
  if (width >= gearing.wheelWidth) return []
  return [
    warning(
      'gearing.wheelWidth',
      `should be at most ${rounded(width)} mm for the teeth to reach across, ` +
        `got ${rounded(gearing.wheelWidth)} mm: ` +
        curesOf(gearing, [NARROWER_WHEEL, THICKER_WORM], reachesAcross),
    ),
  ]
}
