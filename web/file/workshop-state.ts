/** The open page as the state that a link or the autosave holds. */
import { copyTurns, noTurns } from '../../sim/drive/turns.ts'
import type { Workshop } from '../frame/workshop.ts'
import type { LinkState } from './link-state.ts'

/** What Predict asks where it asks a set. */
function askedSet({ predict, view }: Workshop): LinkState['asked'] {
  const { source, set } = predict.getState()
  return view.getState().way === 'predict' && source === 'set' ? set : null
}

/** What is on the stage now, lent or not. */
export function stateOf(workshop: Workshop): LinkState {
  const { way, caseState, motorCut, apart, view, camera, withoutLosses, large } = workshop.view.getState()
  return {
    machine: workshop.document.store.getState().machine,
    way,
    bench: workshop.bench.getState(),
    picture: { caseState, motorCut, apart, view: view.name, camera, withoutLosses, large },
    moment: copyTurns(noTurns(), workshop.frame.state.turns),
    asked: askedSet(workshop),
    lesson: null,
  }
}

/** The same with what the person had there, where a question or a lesson has the stage. */
export function ownState(workshop: Workshop): LinkState {
  const { held } = workshop.aside.getState()
  const state = stateOf(workshop)
  if (!held) return state
  const { document, bench, looks, moment } = held
  const { caseState, motorCut, apart, view, camera, withoutLosses } = looks
  const { large } = state.picture
  const picture = { caseState, motorCut, apart, view: view.name, camera, withoutLosses, large }
  return { ...state, machine: document.machine, bench, picture, moment }
}
