/** The numbers that a worm pair is made from, in the units of the trade. */
export type Hand = 'right' | 'left'
export type Side = 'left' | 'right'
export type ThreadProfile = 'ZA' | 'ZN' | 'ZI'

export interface GearNumbers {
  readonly profile: ThreadProfile
  readonly hand: Hand
  readonly wormStarts: number
  readonly wheelTeeth: number
  /** [mm] */
  readonly axialModule: number
  readonly diameterQuotient: number
  /** Normal pressure angle [deg] */
  readonly pressureAngle: number
  /** Coefficient of friction in the mesh while running */
  readonly friction: number
  /** Effective face width of the wheels [mm] */
  readonly wheelWidth: number
}
