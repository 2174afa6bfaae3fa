/** What a shaft tells when it runs down or is sped up without being read electrically. SI. */

/** Friction torque of a run-down at an even rate from w to rest in t: J w/t [N m]. */
export const frictionOfRunDown = (J: number, w: number, t: number): number => (J * w) / t

/** Angle turned meanwhile: w t/2 [rad]. */
export const angleOfRunDown = (w: number, t: number): number => (w * t) / 2

/**
 * Power lost in the machine from two run-downs over the same small drop of speed, the second with a known power taken
 * out besides: W = P t2/(t1 - t2). Retardation test; B. L. Theraja & A. K. Theraja, A Textbook of Electrical
 * Technology, vol. II, chapter 31.
 *
 * P  - mean power taken out in the second run [W]
 * t1 - without it [s], > t2
 * t2 - with it [s]
 */
export const lossOfRunDowns = (P: number, t1: number, t2: number): number => (P * t2) / (t1 - t2)

/** Inertia from a loss W over a small drop dw about w in t: W t/(w dw) [kg m2]. */
export const inertiaOfRunDown = (W: number, w: number, dw: number, t: number): number => (W * t) / (w * dw)

/** Inertia from a net torque T and the acceleration alpha it gives [kg m2]. */
export const inertiaOfAcceleration = (T: number, alpha: number): number => T / alpha

/** Energy of a turning body J w^2/2 [J]. */
export const kineticEnergy = (J: number, w: number): number => (J * w * w) / 2

/** Speed left when an energy E has been taken out of it [rad/s]; 0 where that is more than it had. */
export const speedAfterGiving = (J: number, w: number, E: number): number =>
  Math.sqrt(Math.max(0, w * w - (2 * E) / J))
