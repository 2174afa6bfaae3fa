/** A load as the motor's shaft feels it: energies and powers are equal on both sides of the gearing. */

/** Inertia J [kg m2] behind a speed ratio a = speed of load/speed of motor: a^2 J. */
export const referredInertia = (J: number, a: number): number => a * a * J

/** Mass M [kg] that moves at v [m/s] while the motor turns at w [rad/s]: M (v/w)^2 [kg m2]. */
export const inertiaOfMass = (M: number, v: number, w: number): number => M * (v / w) ** 2

/** Torque T [N m] behind a speed ratio a and an efficiency eta, motor driving: a T/eta. */
export const referredTorque = (T: number, a: number, eta: number): number => (a * T) / eta

/** Force F [N] on what moves at v [m/s] while the motor turns at w [rad/s], motor driving: F v/(w eta) [N m]. */
export const torqueOfForce = (F: number, v: number, w: number, eta: number): number => (F * v) / (w * eta)
