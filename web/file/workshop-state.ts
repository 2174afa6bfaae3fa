/** Between the open page and the state that a link or the autosave holds. */
import { copyTurns, noTurns } from '../../sim/drive/turns.ts'
import { hold, placeAt } from '../frame/frame.ts'
import { type Workshop, paceFor } from '../frame/workshop.ts'
import { firstPredict } from '../store/predict.ts'
import { isSame } from './difference.ts'
import { leaveLent } from './leave-lent.ts'
import { type LinkState, plainState } from './link-state.ts'

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

/** Sets the page to a state. Undo brings the machine back that was there before. */
export function openState(workshop: Workshop, state: LinkState): void {
  const { machine, way, picture, moment, asked, lesson } = state
  leaveLent(workshop)
  hold(workshop.frame)
  workshop.document.endGesture()
  workshop.document.edit((now) => (isSame(now, machine) ? now : machine))
  const uncommitted = way === 'predict' && isSame({ ...plainState(machine, way), asked }, state)
  workshop.bench.setState(uncommitted ? { ...state.bench, pace: paceFor(machine) } : state.bench)
  workshop.predict.setState({ ...firstPredict, source: asked ? 'set' : 'machine', set: asked })
  workshop.linked.setState({ lesson })
  const { view: name, camera, caseState, motorCut, apart, withoutLosses, large } = picture
  workshop.view.setState(({ view }) => ({
    way,
    caseState,
    motorCut,
    apart,
    withoutLosses,
    large,
    camera,
    view: { name, nonce: view.nonce + 1, camera },
  }))
  placeAt(workshop.frame, moment.turns, moment.ticks, moment.rest)
  workshop.copyReading()
}
