/** What every kind of answer field is told. */
import type { RefObject } from 'react'

export interface AnswerProps {
  /** id of the heading that asks the question */
  readonly headingId: string
  /** Takes the focus where something is missing: the box, the first option, the first card. */
  readonly input: RefObject<HTMLElement | null>
  /** What was missing when it was to be committed. */
  readonly said: string | null
}
