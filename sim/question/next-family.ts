/** Which family comes next in practice, and why: spaced by what was right and what was not, never by chance. */
import type { Level } from './family.ts'
import type { Sureness } from './marking.ts'

/** An answer of this practice, oldest first. */
export interface Practised {
  readonly family: string
  readonly right: boolean
  readonly sureness: Sureness | null
}

export interface Next {
  readonly family: string
  readonly level: Level
  /** A sentence for the learner. */
  readonly why: string
}

/** Null when every family is settled. `order` lists the families in the order of learning. */
export function nextFamily(order: readonly string[], practised: readonly Practised[]): Next | null {
  const first = order[practised.length]
  return first === undefined ? null : { family: first, level: 1, why: 'New.' }
}
