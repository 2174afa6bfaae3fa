/**
 * Outlines of worm and wheel in one plane y of the right mesh, for a drawing of how they engage. In such a plane
 * both are rigid: the worm's outline moves along z by -P phi, the wheel's turns about its axis by the wheel's
 * angle, chi growing from the ray towards the worm to +z. As they are made, with the backlash taken off.
 */
import type { GearNumbers } from './gear-numbers.ts'
import { helicalSection, helicalTooth } from './helical-tooth.ts'
import { axialPitch, pairProportions } from './proportions.ts'
import { thinnedThreadForm } from './thread-profile.ts'
import { toothLimits } from './tooth-limits.ts'
import { handSign } from './wheel-motion.ts'
import { wheelSection } from './wheel-section.ts'
import { spaceCutter } from './wheel-space.ts'

const FLANK_PIECES = 24
const DETAIL = { flank: FLANK_PIECES, fillet: 12, root: 6 }

/**
 * Worm at angle 0: x, z [mm] for the threads -threads to +threads, in rising order along z, from root to tip and
 * back for each. x is measured from the worm's axis.
 */
export function wormSectionOutline(gearing: GearNumbers, y: number, threads: number): Float64Array {
  const { wormTip, wormRoot } = toothLimits(gearing)
  const { halfThickness } = thinnedThreadForm(gearing)
  const P = handSign(gearing.hand) * pairProportions(gearing).screwParameter
  const px = axialPitch(gearing.axialModule)
  // A plane beyond the root cylinder cuts the thread alone.
  const root = Math.sqrt(Math.max(0, wormRoot ** 2 - y * y))
  const tip = Math.sqrt(Math.max(0, wormTip ** 2 - y * y))
  const out: number[] = []
  for (let k = -threads; k <= threads; k++) {
    for (const sigma of [-1, 1] as const) {
      for (let i = 0; i <= FLANK_PIECES; i++) {
        const part = (sigma < 0 ? i : FLANK_PIECES - i) / FLANK_PIECES
        const x = root + part * (tip - root)
        out.push(x, k * px + P * Math.atan2(y, x) + sigma * halfThickness(Math.hypot(x, y)))
      }
    }
  }
  return Float64Array.from(out)
}

/**
 * Wheel at angle 0: x, z [mm] from its own axis for the tooth spaces -spaces to +spaces, in rising order round the
 * wheel. The wheel's axis stands at x = a.
 */
export function wheelSectionOutline(gearing: GearNumbers, y: number, spaces: number): Float64Array {
  const { radius, chi } =
    gearing.wheelForm === 'helical'
      ? helicalSection(helicalTooth(gearing), y, DETAIL)
      : wheelSection(spaceCutter(gearing), y, DETAIL)
  const out: number[] = []
  for (let k = -spaces; k <= spaces; k++) {
    const turn = (2 * Math.PI * k) / gearing.wheelTeeth
    for (let i = 0; i < radius.length; i++) {
      const angle = chi[i]! + turn
      out.push(-radius[i]! * Math.cos(angle), radius[i]! * Math.sin(angle))
    }
  }
  return Float64Array.from(out)
}
