/** Between the open page and the state that a link or the autosave holds. */
import { copyTurns, noTurns } from '../../sim/drive/turns.ts'
import { hold, placeAt } from '../frame/frame.ts'
import { type Workshop, paceFor } from '../frame/workshop.ts'
import { noPrediction } from '../store/prediction.ts'
import { isSame } from './difference.ts'
import { type LinkState, plainState } from './link-state.ts'

export function stateOf(workshop: Workshop): LinkState {
  const { way, caseState, motorCut, apart, view, camera, withoutLosses, large } = workshop.view.getState()
  return {
    machine: workshop.document.store.getState().machine,
    way,
    bench: workshop.bench.getState(),
    picture: { caseState, motorCut, apart, view: view.name, camera, withoutLosses, large },
    moment: copyTurns(noTurns(), workshop.frame.state.turns),
  }
}

/** Sets the page to a state. Undo brings the machine back that was there before. */
export function openState(workshop: Workshop, state: LinkState): void {
  const { machine, way, picture, moment } = state
  hold(workshop.frame)
  workshop.document.endGesture()
  workshop.document.edit((now) => (isSame(now, machine) ? now : machine))
  const uncommitted = way === 'predict' && isSame(plainState(machine, way), state)
  workshop.bench.setState(uncommitted ? { ...state.bench, pace: paceFor(machine) } : state.bench)
  workshop.prediction.setState(noPrediction)
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
