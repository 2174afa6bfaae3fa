/**
 * Efficiency of a worm driving its wheel: (cos an - mu tan g)/(cos an + mu cot g).
 *
 * gamma  - lead angle at the reference cylinder [rad], in (0, pi/2)
 * alphaN - normal pressure angle [rad], in (0, pi/2)
 * mu     - coefficient of friction in the mesh, >= 0
 *
 * Bearings and churning are left out. Source: R. G. Budynas & J. K. Nisbett, Shigley's Mechanical Engineering
 * Design, worm gearing, efficiency of the worm drive (from memory).
 */
export const wormDrivingEfficiency = (gamma: number, alphaN: number, mu: number): number =>
  (Math.cos(alphaN) - mu * Math.tan(gamma)) / (Math.cos(alphaN) + mu / Math.tan(gamma))

/**
 * Efficiency of a wheel driving its worm: (cos an - mu cot g)/(cos an + mu tan g). At or below 0 the wheel
 * cannot drive; the worm then needs torque even where the load helps. Same symbols and ranges as above;
 * derived here by turning the friction of the same mesh round.
 */
export const wheelDrivingEfficiency = (gamma: number, alphaN: number, mu: number): number =>
  (Math.cos(alphaN) - mu / Math.tan(gamma)) / (Math.cos(alphaN) + mu * Math.tan(gamma))

/**
 * Inertia that the worm's shaft must exceed for two wheels behind a self-locking pair to have a definite
 * motion: J + etaB sum Jw/u^2 above 0. It is 0 where the wheels can drive. Derived here.
 *
 * etaB - efficiency of the wheel driving
 * Jw   - inertia of each wheel, in any unit and the result in the same, >= 0
 * u    - ratio z2/z1, > 0
 */
export const lockedInertia = (etaB: number, Jw: number, u: number): number =>
  (2 * Math.max(0, -etaB) * Jw) / (u * u)

/** Below this efficiency of the wheel driving, a little more friction locks the mesh. Common practice. */
const NEARLY = 0.1

/** Whether the load can turn the worm back: 'nearly' when it only just can. */
export function selfLocking(gamma: number, alphaN: number, mu: number): 'locks' | 'nearly' | 'back-drives' {
  const efficiency = wheelDrivingEfficiency(gamma, alphaN, mu)
  if (efficiency <= 0) return 'locks'
  return efficiency <= NEARLY ? 'nearly' : 'back-drives'
}
