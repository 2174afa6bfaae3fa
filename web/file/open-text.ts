/**
 * Puts on the bench what a text says: a link, or what this browser kept. Fetched only when there is such a text, since
 * it brings all that judges a machine.
 */
import type { Workshop } from '../frame/workshop.ts'
import { practisedLast } from './asks.ts'
import type { Outcome } from './OpenProblems.tsx'
import { readAutosave } from './read-autosave.ts'
import { readLink } from './read-link.ts'
import type { Keeper } from './storage.ts'
import { openState } from './open-state.ts'

const LINK_FAILED = 'This link could not be read, so nothing was opened from it.'
const LINK_DOUBTFUL = 'The link was opened, but not all of it could be read.'
const KEPT_FAILED = 'Not all that this browser kept could be read.'

/** Opens the state of a link; says what was wrong with it, if anything was. */
export function openLink(workshop: Workshop, text: string): Outcome | null {
  const { state, problems } = readLink(text)
  if (state) openState(workshop, state)
  return problems.length > 0 ? { outcome: state ? LINK_DOUBTFUL : LINK_FAILED, problems } : null
}

export function openKept(workshop: Workshop, keeper: Keeper | null): Outcome | null {
  const { state, problems } = readAutosave(keeper)
  if (state) openState(workshop, state)
  if (state?.asked === null && practisedLast(keeper)) workshop.predict.setState({ source: 'practice' })
  return problems.length > 0 ? { outcome: KEPT_FAILED, problems } : null
}
