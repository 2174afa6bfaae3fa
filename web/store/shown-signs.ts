/** Which signs belong together in one picture. */
import type { GearSigns, Misplacement } from './view.ts'

export const isIdeal = ({ centre, along, axial, tilt }: Misplacement): boolean =>
  centre === 0 && along === 0 && axial === 0 && tilt === 0

/** The lines are those of the ideal setting, so they would gainsay the compound of another one. */
export const showsLines = ({ contact, compound }: GearSigns, misplaced: Misplacement): boolean =>
  contact && (!compound || isIdeal(misplaced))
