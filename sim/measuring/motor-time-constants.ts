/** How a direct-current motor answers: its winding, its shaft, and both together. SI, no other torque or loss. */

/** Of the winding: L/R [s]. */
export const electricalTimeConstant = (L: number, R: number): number => L / R

/** Of the shaft against the motor's own emf: J R/K^2 [s]. */
export const mechanicalTimeConstant = (J: number, R: number, K: number): number => (J * R) / (K * K)

/**
 * Rates at which speed and current settle, slow one first [1/s]: roots of ta s^2 - s + 1/tm = 0, with which e^(-s t)
 * dies away. Null where they swing (4 ta > tm). Source: G. K. Dubey, Fundamentals of Electrical Drives, 2nd ed.,
 * section 5.
 */
export function settlingRates(ta: number, tm: number): readonly [slow: number, fast: number] | null {
  const root = 1 - (4 * ta) / tm
  if (root < 0) return null
  const fast = (1 + Math.sqrt(root)) / (2 * ta)
  return [1 / (ta * tm * fast), fast]
}
