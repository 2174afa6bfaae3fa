/** The one table of formulas: each number on the page leads to its row. */
import { type Formula, type FormulaRow, agrees } from './formula.ts'
import { CURRENT_FORMULAS } from './formulas-current.ts'
import { GEAR_FORMULAS } from './formulas-gear.ts'
import { MOTION_FORMULAS } from './formulas-motion.ts'
import { MOTOR_FORMULAS } from './formulas-motor.ts'
import { SYMBOLS, type SymbolName } from './formula-symbols.ts'
import { worth } from './formula-tree.ts'
import type { Situation } from './situation.ts'

const TABLE = { ...GEAR_FORMULAS, ...MOTION_FORMULAS, ...CURRENT_FORMULAS, ...MOTOR_FORMULAS }

export type FormulaId = keyof typeof TABLE
export const FORMULAS: Readonly<Record<FormulaId, Formula>> = TABLE

/** The formula as it stands for this machine at this setting. */
export function formulaRow(id: FormulaId, situation: Situation): FormulaRow {
  const formula = FORMULAS[id]
  return typeof formula === 'function' ? formula(situation) : formula
}

export const symbolValue =
  (situation: Situation) =>
  (name: SymbolName): number =>
    SYMBOLS[name].value(situation)

/** What a formula gives by itself, in its own unit; NaN for a law that one line cannot solve. */
export function formulaValue(id: FormulaId, situation: Situation): number {
  const { lawOnly, right } = formulaRow(id, situation)
  return lawOnly ? Number.NaN : worth(right, symbolValue(situation))
}

export interface Outcome {
  readonly value: number
  /** Whether the formula, with these numbers put in, gives that value. */
  readonly byFormula: boolean
}

/** What is shown as the result: the reading where there is one, else the formula's own value. */
export function outcome(id: FormulaId, situation: Situation): Outcome {
  const { reading } = formulaRow(id, situation)
  const own = formulaValue(id, situation)
  if (!reading) return { value: own, byFormula: true }
  const value = reading(situation)
  return { value, byFormula: agrees(own, value) }
}
