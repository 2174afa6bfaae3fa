/** How unevenly a plain helical wheel runs on a worm whose flank is not the involute that fits it. */
import type { GearNumbers } from './gear-numbers.ts'
import { helicalContact, helicalPoint } from './helical-contact.ts'
import { threadForm } from './thread-profile.ts'

const PLACES_A_PITCH = 32

/**
 * Transmission error, peak to peak, at the wheel's reference circle [mm]. The thread is thicker than the
 * involute one by a little at every radius but the reference one; of the pairs that share the load the thickest
 * pushes the wheel on. First order, derived here.
 */
export function conjugateError(gearing: GearNumbers): number {
  const contact = helicalContact(gearing)
  const [own, involute] = [threadForm(gearing), threadForm({ ...gearing, profile: 'ZI' })]
  const ahead = (t: number) => {
    const [x, y] = helicalPoint(contact, 1, t)
    const r = Math.hypot(x, y)
    return own.halfThickness(r) - involute.halfThickness(r)
  }
  const pitch = contact.pair.axialPitch * contact.direction[2]
  const most: number[] = []
  for (let i = 0; i <= PLACES_A_PITCH; i++) {
    const shares: number[] = []
    for (let t = contact.wheelEnd + (pitch * i) / PLACES_A_PITCH; t <= contact.wormEnd; t += pitch) {
      shares.push(ahead(t))
    }
    if (shares.length > 0) most.push(Math.max(...shares))
  }
  return most.length > 0 ? Math.max(...most) - Math.min(...most) : 0
}
