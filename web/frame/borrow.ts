/**
 * A question or a lesson puts a machine of its own on the stage. What the person had there is set aside meanwhile,
 * with its undo, and comes back untouched.
 */
import { copyTurns, noTurns } from '../../sim/drive/turns.ts'
import type { Aside, Looks } from '../store/aside.ts'
import type { View } from '../store/view.ts'
import { hold, placeAt } from './frame.ts'
import type { Workshop } from './workshop.ts'

function looksOf(view: View): Looks {
  const { caseState, motorCut, apart, camera, withoutLosses, panel, panelWide, gearSigns, lit, plan } = view
  const bookmark = { ...view.view, camera }
  return {
    caseState,
    motorCut,
    apart,
    view: bookmark,
    camera,
    withoutLosses,
    panel,
    panelWide,
    gearSigns,
    lit,
    plan,
  }
}

/** Sets aside what is on the stage, once; what comes after it is lent. */
export function setAside({ aside, document, bench, view, frame }: Workshop): void {
  if (aside.getState().held) return
  hold(frame)
  document.endGesture()
  const held: Aside = {
    document: document.store.getState(),
    bench: bench.getState(),
    looks: looksOf(view.getState()),
    moment: copyTurns(noTurns(), frame.state.turns),
  }
  aside.setState({ held })
  document.store.setState({ past: [], future: [] })
}

/** Brings back what was set aside; nothing happens when nothing was. */
export function bringBack({ aside, document, bench, view, frame, copyReading }: Workshop): void {
  const { held } = aside.getState()
  if (!held) return
  hold(frame)
  aside.setState({ held: null })
  document.store.setState(held.document, true)
  bench.setState(held.bench)
  const lost = view.getState().plan
  const { view: bookmark, plan, ...looks } = held.looks
  view.setState(({ view: now }) => ({
    ...looks,
    plan: lost === 'lost' || lost === 'no-webgl' ? lost : plan,
    view: { ...bookmark, nonce: now.nonce + 1 },
  }))
  placeAt(frame, held.moment.turns, held.moment.ticks, held.moment.rest)
  copyReading()
}
