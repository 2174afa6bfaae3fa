/** What can be wrong with an answer as it is typed. It is told and corrected, never marked. */

export type EntryFault =
  | 'empty'
  | 'too-long'
  | 'not-allowed'
  | 'unknown-word'
  | 'ambiguous-comma'
  | 'wrong-unit'
  | 'mixed-units'
  | 'angle-unit'
  | 'not-finite'
  | 'too-large'
  /** A sum with something missing, or too much of it. */
  | 'unreadable'

/** Thrown inside the reading of an answer, and caught by readEntry alone. */
export class Unreadable extends Error {
  readonly code: EntryFault

  constructor(code: EntryFault, message: string) {
    super(message)
    this.code = code
  }
}
