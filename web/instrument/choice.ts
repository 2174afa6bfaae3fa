/** A field of a machine that is chosen, not measured. */
import type { SectionName } from '../../sim/machine/field.ts'
import type { Machine } from '../../sim/machine/machine.ts'

export interface Option {
  readonly value: string
  readonly words: string
}

export interface Choice {
  readonly path: string
  readonly label: string
  readonly section: SectionName
  /** Above or below the numbers of its section */
  readonly place: 'above' | 'below'
  readonly help: string
  /** Those that go with the rest of the machine; with none there is nothing to choose */
  readonly options: (machine: Machine) => readonly Option[]
  readonly chosen: (machine: Machine) => string
  readonly choose: (machine: Machine, value: string) => Machine
}

export const optionsOf = (words: Readonly<Record<string, string>>): readonly Option[] =>
  Object.entries(words).map(([value, said]) => ({ value, words: said }))
