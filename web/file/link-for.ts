/** The open page as a link. Fetched after the first picture, since writing a link takes a packer and its words. */
import type { Workshop } from '../frame/workshop.ts'
import { plainState } from './link-state.ts'
import { stateOf } from './workshop-state.ts'
import { writeLink } from './write-link.ts'

/** The link to hand on. Before a prediction is committed it holds the machine and the way, and nothing that was turned. */
export function linkFor(workshop: Workshop): string {
  const state = stateOf(workshop)
  const covered = state.way === 'predict' && workshop.prediction.getState().phase === 'predict'
  return writeLink(covered ? plainState(state.machine, state.way) : state)
}

/** All of it, to be kept in this browser. */
export const wholeLink = (workshop: Workshop): string => writeLink(stateOf(workshop))
