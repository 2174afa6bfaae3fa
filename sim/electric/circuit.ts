/**
 * The electrical chain of one setting, from the source's emf to the winding, as the waveform level and the shooting
 * method see it; all SI. What is not there is 0, Infinity or null, so that one set of equations serves every chain.
 */
export interface Circuit {
  readonly source: Source
  /** What stands between source and motor: nothing, a two-drop bridge, or one diode with or without a free way back */
  readonly rectifier: 'none' | 'bridge' | 'half-wave' | 'half-wave-freewheel'
  /** All rectifying diodes in the current's way together [V]; without a rectifier 0 */
  readonly diodeDrops: number
  /** Across the bridge's output [F]; 0 is none */
  readonly capacitance: number
  /** Across the capacitor [ohm]; Infinity is none */
  readonly bleedResistance: number
  /** Ahead of the rectifier, or in series with an alternating-current motor; null is none */
  readonly triac: {
    readonly firingAngle: number /* [rad], 0 to pi */
    readonly drop: number /* [V] */
  } | null
  /** Between battery or capacitor and the motor; null is none. With a duty of 1 a relay bridges the switch. */
  readonly chopper: Chopper | null
  readonly winding: Winding
}

export interface Source {
  /** Peak of a sine, or with angularFrequency 0 the constant emf [V] */
  readonly emf: number
  /** [rad/s] */
  readonly angularFrequency: number
  /** [ohm] */
  readonly resistance: number
  /** [H] */
  readonly inductance: number
}

export interface Chopper {
  /** [s] */
  readonly period: number
  /** Part of the period with the switch closed, in (0, 1] */
  readonly duty: number
  /** [V] */
  readonly switchDrop: number
  /** [V] */
  readonly freewheelDrop: number
  /** Motor current at which the switch opens for the rest of the period [A]; Infinity is none */
  readonly currentLimit: number
}

/** Motor between its terminals, warm as it is: emf k(i) w, torque k(i) i, with the drop of the pair of brushes. */
export type Winding = MagnetWinding | SeriesWinding

export interface MagnetWinding {
  readonly kind: 'permanent-magnet'
  /** [V s/rad] */
  readonly emfConstant: number
  /** [ohm] */
  readonly resistance: number
  /** [H], > 0 */
  readonly inductance: number
  /** [V] */
  readonly brushDrop: number
}

/**
 * Field and armature in series: E = k i w and T = k i^2 with k = k0/(1 + |i|/is); flux linkage of the field
 * Lf i/(1 + |i|/is), so L(i) = Lc + Lf/(1 + |i|/is)^2 and the stored energy is consistent.
 */
export interface SeriesWinding {
  readonly kind: 'universal'
  /** k0 [V s/(rad A)] */
  readonly emfConstant: number
  /** is [A]; Infinity is the linear law */
  readonly saturationCurrent: number
  /** [ohm] */
  readonly resistance: number
  /** Lc [H], > 0 */
  readonly inductance: number
  /** Lf [H] */
  readonly fieldInductance: number
  /** [V] */
  readonly brushDrop: number
}
