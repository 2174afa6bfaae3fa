import type { CurrentCycle } from './cycle.ts'

/** What the primary side of a transformer adds, for one tap of the secondary. */
export interface Primary {
  /** Primary voltage over secondary emf, > 0 */
  readonly turnsRatio: number
  /** Secondary emf [V r.m.s.] */
  readonly emf: number
  /** Core loss current [A r.m.s.] */
  readonly coreCurrent: number
  /** Magnetising current [A r.m.s.] */
  readonly magnetisingCurrent: number
}

/**
 * Sets the primary current of a solved cycle. The secondary current is no sine; core loss and magnetising
 * current are. With Ip, Iq the secondary current's parts in phase and in leading quadrature with the emf,
 * over all periods, I1^2 = (Is/a)^2 + 2 (Ip Ic - Iq Im)/a + Ic^2 + Im^2. Derived here as the mean square of
 * the sum.
 */
export function solvePrimary(cycle: CurrentCycle, primary: Primary): void {
  const { turnsRatio, emf, coreCurrent, magnetisingCurrent } = primary
  const cross = (cycle.sourcePower * coreCurrent - cycle.sourceQuadrature * magnetisingCurrent) / emf
  const square =
    cycle.sourceSquare / (turnsRatio * turnsRatio) +
    (2 * cross) / turnsRatio +
    coreCurrent * coreCurrent +
    magnetisingCurrent * magnetisingCurrent
  // Kept from below zero, where rounding could carry a current of almost nothing.
  cycle.primary = square > 0 ? Math.sqrt(square) : 0
}
