/** One number of a part, as its card and the power's way show it. */
import type { FormulaId } from './formulas.ts'
import { type Unit, givenFigure, quantityText } from './reading-text.ts'
import type { Situation } from './situation.ts'

export interface PartNumber {
  readonly name: string
  readonly text: string
  readonly formula?: FormulaId
}

/** How many there are, and in which order, depends on machine and setting alone. */
export type Numbers = (situation: Situation) => readonly PartNumber[]

export const number = (name: string, value: number, unit: Unit, formula?: FormulaId): PartNumber =>
  formula ? { name, text: quantityText(value, unit), formula } : { name, text: quantityText(value, unit) }

export const given = (name: string, value: number, unit: string): PartNumber => ({
  name,
  text: `${givenFigure(value)}${unit === '' || unit === '°' ? '' : ' '}${unit}`,
})
