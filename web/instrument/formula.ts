/** One formula: what it gives, how, and who says so. */
import type { Tree } from './formula-tree.ts'
import type { Unit } from './reading-text.ts'
import type { Situation } from './situation.ts'

export interface FormulaRow {
  readonly title: string
  /** What stands left of the equals sign. */
  readonly letter: string
  readonly index?: string
  readonly unit: Unit
  readonly right: Tree
  /** The law only, without numbers put in: its solution needs more than one line. */
  readonly lawOnly?: boolean
  /** One line on where it comes from. */
  readonly source: string
  /** The same quantity in the reading, in the formula's unit; absent for what only the formula gives. */
  readonly reading?: (situation: Situation) => number
  /** Said where the formula and the reading need not agree. */
  readonly holds?: string
}

/** A row that is the same for every machine, or one that depends on what the machine is made of. */
export type Formula = FormulaRow | ((situation: Situation) => FormulaRow)

const RELATIVE = 1e-6
const ABSOLUTE = 1e-9

/** Whether a formula says the same as the reading; it need not while something stands, starts or is driven back. */
export const agrees = (formula: number, reading: number): boolean =>
  Math.abs(formula - reading) <= ABSOLUTE + RELATIVE * Math.max(Math.abs(formula), Math.abs(reading))
