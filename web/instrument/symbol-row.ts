/** How a symbol of the formulas is told. */
import type { Machine } from '../../sim/machine/machine.ts'
import type { Unit } from './reading-text.ts'
import type { Situation } from './situation.ts'

export interface SymbolRow {
  readonly letter: string
  readonly index?: string
  readonly words: string
  readonly unit: Unit
  /** set: a number of the machine; read: the reading; found: by another formula */
  readonly origin: 'set' | 'read' | 'found'
  readonly value: (situation: Situation) => number
}

export type Of<Part> = (part: Part) => number

export const set = (letter: string, words: string, unit: Unit, of: Of<Machine>): SymbolRow => ({
  ...written(letter),
  words,
  unit,
  origin: 'set',
  value: ({ machine }) => of(machine),
})
export const read = (letter: string, words: string, unit: Unit, value: Of<Situation>): SymbolRow => ({
  ...written(letter),
  words,
  unit,
  origin: 'read',
  value,
})
export const found = (letter: string, words: string, unit: Unit, of: Of<Machine>): SymbolRow => ({
  ...set(letter, words, unit, of),
  origin: 'found',
})

/** Changes within a period, so that no one number stands for it. */
export const law = (letter: string, words: string, unit: Unit): SymbolRow => ({
  ...read(letter, words, unit, () => Number.NaN),
})

/** 'z_1' is a z with the index 1. */
export function written(text: string): Pick<SymbolRow, 'letter' | 'index'> {
  const [letter = '', index] = text.split('_')
  return index === undefined ? { letter } : { letter, index }
}
