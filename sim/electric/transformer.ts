/**
 * Primary current of a transformer [A r.m.s.] whose secondary current is not a sine: the load's part, in phase and in
 * leading quadrature with the emf, beside core loss and magnetising current, which are sines.
 *
 * isRms - secondary current [A r.m.s.], >= 0
 * ip    - its part in phase with the emf, mean(e i)/Vs [A]
 * iq    - its part in leading quadrature [A]
 * a     - primary voltage over secondary emf, > 0
 * ic    - core loss current [A r.m.s.], >= 0
 * im    - magnetising current [A r.m.s.], >= 0
 *
 * Derived here: I1^2 is the mean square of the sum.
 */
export const primaryCurrent = (
  isRms: number,
  ip: number,
  iq: number,
  a: number,
  ic: number,
  im: number,
): number =>
  // Clamped because rounding can carry a current of almost nothing below zero.
  Math.sqrt(Math.max(0, (isRms / a) ** 2 + (2 * (ip * ic - iq * im)) / a + ic * ic + im * im))
