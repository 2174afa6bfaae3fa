/** The numbers that a worm pair is made from, in the units of the trade. */
export type Hand = 'right' | 'left'
export type Side = 'left' | 'right'
export type ThreadProfile = 'ZA' | 'ZN' | 'ZI' | 'ZK'
/** Throated: hollowed round the worm and cut by its like. Helical: a plain gear with slanting teeth. */
export type WheelForm = 'throated' | 'helical'
/** What the tooth depth is counted in; 'mixed' is module outside and normal module inside. */
export type DepthRule = 'axial' | 'normal' | 'mixed'

/** What is given of the distance between the axes: the wheel's profile shift, or the distance itself. */
export type Centres =
  | {
      readonly kind: 'shift'
      /** In the module that the depth rule counts in */
      readonly profileShift: number
    }
  | {
      readonly kind: 'distance'
      /** [mm] */
      readonly centreDistance: number
    }

export interface GearNumbers {
  readonly profile: ThreadProfile
  readonly hand: Hand
  readonly wheelForm: WheelForm
  readonly depthRule: DepthRule
  /** Which part is made thinner to give backlash */
  readonly thinned: 'worm' | 'wheel'
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
  /** Addendum and clearance at the root, in modules; the mixed rule has its own. */
  readonly addendum: number
  readonly clearance: number
  /** Axial backlash of the worm in the wheel [mm] */
  readonly backlash: number
  /** [mm] */
  readonly boreDiameter: number
  /** Mean diameter of the disc that grinds a ZK worm [mm]; the other profiles do not use it. */
  readonly discDiameter: number
  readonly centres: Centres
}
