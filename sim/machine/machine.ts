/**
 * One machine, as plain readonly data without derived values: JSON in, JSON out, equal when deep-equal.
 * Each number is in the unit that the trade writes for it; the unit is told by the field table (`fields.ts`),
 * and `drive/drive.ts` turns everything into SI once. Nothing here knows how a machine behaves.
 */
import type { GearNumbers } from '../gear/gear-numbers.ts'
import type { InsulationClass } from '../heat/insulation.ts'
import type { Control, Rectifier, Supply, Transformer } from './supply.ts'

export interface Machine {
  readonly format: 'counterturn-machine'
  readonly version: 3
  readonly name: string
  readonly about: string
  readonly supply: Supply
  /** Present only behind a mains supply. */
  readonly transformer: Transformer | null
  /** Present only where alternating current feeds a permanent-magnet motor in both half waves. */
  readonly rectifier: Rectifier | null
  readonly control: Control
  /** Absent on a hand-cranked machine. */
  readonly motor: Motor | null
  readonly rotor: Rotor
  readonly gearing: Gearing
  readonly outputs: Outputs
  /** Where the heat goes; null where that is not described, and without a motor. */
  readonly thermal: Thermal | null
  /** The sliding contact; null where it is not described, and without a motor. */
  readonly brushes: Brushes | null
  readonly protection: Protection
}

export type Motor = PermanentMagnetMotor | UniversalMotor

export interface PermanentMagnetMotor {
  readonly kind: 'permanent-magnet'
  /** Armature resistance at 20 degC [ohm] */
  readonly resistance: number
  /** [mH] */
  readonly inductance: number
  /** Emf and torque constant [V s/rad = N m/A] */
  readonly emfConstant: number
  /** Drop of the pair of brushes [V] */
  readonly brushDrop: number
}

export interface UniversalMotor {
  readonly kind: 'universal'
  /** Armature and field in series, at 20 degC [ohm] */
  readonly resistance: number
  /** Unsaturating part [mH] */
  readonly inductance: number
  /** Saturating field part at small current [mH] */
  readonly fieldInductance: number
  /** k0 in k(i) = k0/(1 + abs(i)/saturationCurrent) [V s/(rad A)] */
  readonly emfConstant: number
  /** [A] */
  readonly saturationCurrent: number
  /** [V] */
  readonly brushDrop: number
}

/** Everything fixed to the worm shaft: armature, fan, worm. */
export interface Rotor {
  /** [kg cm2] */
  readonly inertia: number
  /** Friction and hysteresis, constant [N m] */
  readonly frictionTorque: number
  /** Viscous and eddy loss [N m s/rad] */
  readonly viscousTorque: number
  /** Fan and windage [N m s2/rad2] */
  readonly fanTorque: number
  /** Blades of the cooling fan; 0 is no fan */
  readonly fanBlades: number
  /** Dry friction of the whole drive at leaving standstill, over that of running; 1 or more */
  readonly breakaway: number
}

export type Gearing = GearNumbers

export interface Outputs {
  /** Each wheel with its shaft and brush [kg cm2] */
  readonly wheelInertia: number
  /** Friction torque of each wheel's bearings [N m] */
  readonly bearingTorque: number
  /** Rows of bristles, or blades, on each output */
  readonly tufts: number
  /** Where a row begins and where its tip turns [mm] */
  readonly hubDiameter: number
  readonly sweepDiameter: number
  /** [mm] */
  readonly tuftThickness: number
  /** Angle of the first row in the wheel's own frame, from the middle of a tooth space [deg] */
  readonly keyAngle: number
  /** Teeth by which the left wheel is put in further than the first way round */
  readonly toothOffset: number
  /** Torque with which whatever jams a wheel holds it [N m] */
  readonly jamTorque: number
  /** What each wheel can be given to do, by name; the first is the light one. */
  readonly loads: readonly Load[]
}

/**
 * Torque on one wheel: active + s passive + linear w + quadratic w abs(w), with s the sense of motion [N m].
 */
export interface Load {
  readonly name: string
  /** Weight or spring, which can also drive [N m] */
  readonly active: number
  /** Dry friction, which only opposes [N m] */
  readonly passive: number
  /** [N m s/rad] */
  readonly linear: number
  /** [N m s2/rad2] */
  readonly quadratic: number
}

/** Two bodies that take up heat: the winding, and the case with the magnets; fan and mesh heat go to the air. */
export interface Thermal {
  /** [J/K] */
  readonly windingCapacity: number
  readonly caseCapacity: number
  /** From winding to case at standstill, and what the fan adds at the reference speed [W/K] */
  readonly windingToCase: number
  readonly windingToCaseFan: number
  /** From case to air likewise [W/K] */
  readonly caseToAir: number
  readonly caseToAirFan: number
  /** [r/min] */
  readonly referenceSpeed: number
  /** Power of the speed with which the fan's part grows */
  readonly fanExponent: number
  /** Air around [degC] */
  readonly ambient: number
  /** Class of the insulation by IEC 60085 */
  readonly insulation: InsulationClass
  /** By how much the hottest spot is above the mean of the winding [K] */
  readonly hotSpotMargin: number
  /** Change of the magnet's flux [%/K]; 0 without magnets */
  readonly magnetCoefficient: number
  /** Part of the loss in the brushes, and of friction, that heats the winding; the rest heats the case [%] */
  readonly brushHeatToWinding: number
  readonly frictionHeatToWinding: number
}

/** Both brushes alike; what cannot be read off a machine is set by the user, so what follows is indicative. */
export interface Brushes {
  /** [mm] */
  readonly commutatorDiameter: number
  /** Bars of the commutator */
  readonly bars: number
  /** Width of a brush along the commutator's circumference [mm] */
  readonly arcWidth: number
  /** Contact area of one brush [mm2] */
  readonly area: number
  /** Inductance of one coil [uH] */
  readonly coilInductance: number
  /** Turns of one coil, and the peak of an alternating flux through it [uWb]; 0 in a direct-current machine */
  readonly coilTurns: number
  readonly peakFlux: number
  /** Current density beyond which the brush is overloaded [A/cm2] */
  readonly densityLimit: number
  /** Force of one spring [N], and friction of carbon on the commutator */
  readonly springForce: number
  readonly friction: number
  /** What can wear off [mm], and how fast it does [mm/1000 h] at a sliding speed [m/s] and without current */
  readonly usableLength: number
  readonly wear: number
  readonly wearSpeed: number
  /** Current at which the current's own wear [A] is `wearByCurrent` times that */
  readonly wearCurrent: number
  readonly wearByCurrent: number
}

export type Protection = NoProtection | MeltingProtection | CurrentLimit

export interface NoProtection {
  readonly kind: 'none'
}

/** A fuse that melts, or an overload switch that opens and can be closed again. */
export interface MeltingProtection {
  readonly kind: 'fuse' | 'overload'
  /** Which winding of the transformer it stands in; without one both are the same */
  readonly side: 'primary' | 'secondary'
  /** Smallest current that ever opens it [A r.m.s.] */
  readonly current: number
  /** [s] */
  readonly timeConstant: number
}

/** The chopper opens early where the motor current reaches a limit. */
export interface CurrentLimit {
  readonly kind: 'limit'
  /** [A] */
  readonly current: number
}
