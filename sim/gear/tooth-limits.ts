/**
 * Radii that the teeth really reach. At large pressure and lead angles the thread comes to a point before its
 * tip, or the space between threads before its root; there the tooth is cut short, on worm, hob and wheel
 * alike.
 */
import type { GearNumbers } from './gear-numbers.ts'
import { lastPlace } from './last-place.ts'
import { pairProportions } from './proportions.ts'
import type { ThreadForm } from './thread-form.ts'
import { thinnedThreadForm, threadForm } from './thread-profile.ts'

/** Least width of a land, in modules: enough to be seen and to hold a mesh open (our choice). */
const LEAST_LAND = 0.06

export interface ToothLimits {
  readonly wormTip: number
  readonly wormRoot: number
  readonly hobTip: number
  /** Of the groove round the wheel, about the worm's axis */
  readonly gorge: number
}

export function toothLimits(gearing: GearNumbers, form: ThreadForm = threadForm(gearing)): ToothLimits {
  const { axialModule: m } = gearing
  const pair = pairProportions(gearing)
  const { halfThickness } = form
  const made = thinnedThreadForm(gearing, form)
  const half = (LEAST_LAND * m) / 2
  const r1 = pair.referenceRadiusWorm
  const thick = (r: number) => halfThickness(r) >= half
  const open = (r: number) => halfThickness(r) <= pair.axialPitch / 2 - half
  const hobTip = lastPlace(r1, pair.hobTipRadius, thick)
  const wormRoot = lastPlace(r1, pair.rootRadiusWorm, open)
  return {
    hobTip,
    wormRoot,
    wormTip: lastPlace(r1, Math.min(pair.tipRadiusWorm, hobTip), (r) => made.halfThickness(r) >= half),
    gorge: Math.max(pair.gorgeRadius, wormRoot),
  }
}
