/** What touches at one moment, asked in every frame: where a mesh stands, which flank carries, how many lines. */
import { type ContactField, contactField } from '../../sim/gear/contact-field.ts'
import type { Side } from '../../sim/gear/gear-numbers.ts'
import { handSign } from '../../sim/gear/wheel-motion.ts'
import type { Flank } from '../../sim/gear/wheel-flank.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { wormFraction } from '../../sim/drive/turns.ts'
import type { Frame } from '../frame/frame-state.ts'
import { type MeshPlace, carryingFlank, linesTouching, placeMesh } from './close-up.ts'

export interface Touching {
  readonly side: Side
  readonly hand: 1 | -1
  readonly backlash: number
  /** Of the flanks -1 and +1 */
  readonly fields: readonly [ContactField, ContactField]
  readonly place: MeshPlace
  carrying: Flank | 0
  /** Lines, or points of a plain wheel, that touch now */
  lines: number
}

export const fieldsOf = ({ gearing }: Machine): readonly [ContactField, ContactField] => [
  contactField(gearing, -1),
  contactField(gearing, 1),
]

export const newTouching = (
  { gearing }: Machine,
  side: Side,
  fields: readonly [ContactField, ContactField],
): Touching => ({
  side,
  hand: handSign(gearing.hand),
  backlash: gearing.backlash,
  fields,
  place: { wheel: 0, play: 0 },
  carrying: 0,
  lines: 0,
})

/** Brings it to where the frame is now. */
export function followFrame(touching: Touching, { state, play, sense }: Frame): void {
  const { side, place, fields, backlash, hand } = touching
  placeMesh(place, side, fields[0].signedParameter, wormFraction(state.turns), play[side])
  touching.carrying = carryingFlank(place.play, backlash, hand, sense)
  const field = fields[touching.carrying < 0 ? 0 : 1]
  touching.lines = touching.carrying === 0 ? 0 : linesTouching(field, place.wheel)
}
