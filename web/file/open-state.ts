/** Sets the open page to the state that a link or the autosave holds. */
import { hold, placeAt } from '../frame/frame.ts'
import { type Workshop, paceFor } from '../frame/workshop.ts'
import { firstPredict } from '../store/predict.ts'
import { isSame } from './difference.ts'
import { leaveLent } from './leave-lent.ts'
import { type LinkState, plainState } from './link-state.ts'

/** Undo brings the machine back that was there before. */
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
