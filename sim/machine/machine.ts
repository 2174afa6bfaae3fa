/**
 * One machine, as plain readonly data without derived values: JSON in, JSON out, equal when deep-equal.
 * Each number is in the unit that the trade writes for it; the unit is told by the field table (`fields.ts`),
 * and `drive/drive.ts` turns everything into SI once. Nothing here knows how a machine behaves.
 */
import type { GearNumbers } from '../gear/gear-numbers.ts'

export interface Machine {
  readonly format: 'counterturn-machine'
  readonly version: 2
  readonly name: string
  readonly about: string
  readonly supply: Supply
  /** Present only behind a mains supply. */
  readonly transformer: Transformer | null
  /** Present only where alternating current feeds a permanent-magnet motor. */
  readonly rectifier: Rectifier | null
  readonly control: Control
  /** Absent on a hand-cranked machine. */
  readonly motor: Motor | null
  readonly rotor: Rotor
  readonly gearing: Gearing
  readonly outputs: Outputs
}

export type Supply = MainsSupply | BatterySupply | CrankSupply

export interface MainsSupply {
  readonly kind: 'mains'
  /** [V r.m.s.] */
  readonly voltage: number
  /** [Hz] */
  readonly frequency: number
  /** Line resistance [ohm]; 0 when it is counted in the transformer's taps. */
  readonly resistance: number
}

export interface BatterySupply {
  readonly kind: 'battery'
  /** Open-circuit voltage [V] */
  readonly voltage: number
  /** [ohm] */
  readonly resistance: number
}

/** A hand that keeps the crank's speed, whatever torque that takes. */
export interface CrankSupply {
  readonly kind: 'crank'
}

export interface Transformer {
  /** Primary voltage at which the taps give their open-circuit voltages [V r.m.s.] */
  readonly primaryVoltage: number
  /** Core loss resistance across the primary [kohm] */
  readonly coreResistance: number
  /** Magnetising reactance across the primary [kohm] */
  readonly magnetisingReactance: number
}

export interface Rectifier {
  /** Forward drop of one diode of the bridge [V] */
  readonly diodeDrop: number
}

/**
 * How the speed is set. Every kind has one or more steps; the person chooses a step by its number, from 1.
 */
export type Control = TapControl | ChopperControl | PhaseControl | CrankControl

export interface TapControl {
  readonly kind: 'taps'
  readonly steps: readonly Tap[]
}

export interface Tap {
  /** Open-circuit secondary voltage [V r.m.s.] */
  readonly voltage: number
  /** Series resistance referred to the secondary [ohm] */
  readonly resistance: number
  /** Leakage inductance referred to the secondary [mH] */
  readonly inductance: number
}

export interface ChopperControl {
  readonly kind: 'chopper'
  /** [kHz] */
  readonly frequency: number
  /** Drop of the closed switch [V] */
  readonly switchDrop: number
  /** Drop of the freewheel diode [V] */
  readonly freewheelDrop: number
  readonly steps: readonly { readonly duty: number /* [%] */ }[]
}

export interface PhaseControl {
  readonly kind: 'phase'
  /** Drop of the conducting triac [V] */
  readonly switchDrop: number
  readonly steps: readonly { readonly angle: number /* firing angle [deg] */ }[]
}

export interface CrankControl {
  readonly kind: 'crank'
  readonly steps: readonly { readonly speed: number /* [r/min] */ }[]
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
