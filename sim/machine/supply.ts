/** From the socket, the battery or the hand to the terminals of the motor, as machine.ts tells it. */

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
  /** Magnetising reactance across the primary at 50 Hz [kohm] */
  readonly magnetisingReactance: number
}

export interface Rectifier {
  /** Forward drop of one diode of the bridge [V] */
  readonly diodeDrop: number
  /** Smoothing capacitor across the bridge [uF]; 0 is none */
  readonly capacitance: number
  /** What discharges the capacitor when the machine is unplugged [kohm] */
  readonly bleedResistance: number
}

/**
 * How the speed is set. Every kind has one or more steps; the person chooses a step by its number, from 1.
 */
export type Control = TapControl | ChopperControl | PhaseControl | HalfWaveControl | CrankControl

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

/** A diode in series that lets one half wave through, or is bridged so that both pass. */
export interface HalfWaveControl {
  readonly kind: 'half-wave'
  /** [V] */
  readonly diodeDrop: number
  /** Whether a second diode leads the current on round the motor while the first one blocks */
  readonly freewheel: 'none' | 'diode'
  /** Half waves of each period that are used, 1 or 2; a permanent-magnet motor needs 1 */
  readonly steps: readonly { readonly waves: number }[]
}

export interface CrankControl {
  readonly kind: 'crank'
  readonly steps: readonly { readonly speed: number /* [r/min] */ }[]
}
