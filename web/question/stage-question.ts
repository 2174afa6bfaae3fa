/** Puts on the stage what a question is about: a machine with its counts, at rest, with the marks at their pointers. */
import type { Machine } from '../../sim/machine/machine.ts'
import type { StageGearing } from '../../sim/question/family.ts'
import type { Question } from '../../sim/question/question.ts'
import { setAside } from '../frame/borrow.ts'
import { show, zero } from '../frame/frame.ts'
import type { Workshop } from '../frame/workshop.ts'
import { lookFrom } from '../panel/stage-look.ts'
import { openPanel } from '../panel/panels.ts'

/** The same machine with what the question says of its gears. The sense is no part of a machine: see `senseOf`. */
export function withGearing(base: Machine, gearing: StageGearing | null): Machine {
  if (!gearing) return base
  const { wormStarts, wheelTeeth, hand } = { ...base.gearing, ...gearing }
  return { ...base, gearing: { ...base.gearing, wormStarts, wheelTeeth, hand } }
}

/**
 * What the person had on the stage is set aside, once. The machine is lent: there is nothing to undo in it. The bench
 * stays as it is, as far as the machine offers it.
 */
export function stageQuestion(workshop: Workshop, { gearing }: Question, base: Machine): void {
  const { document, view, frame, copyReading } = workshop
  setAside(workshop)
  document.store.setState({
    machine: withGearing(base, gearing),
    past: [],
    future: [],
    gestureStart: null,
  })
  openPanel(workshop, 'none')
  view.setState((now) => ({ ...lookFrom(now, 'gears'), plan: now.plan, selected: null }))
  zero(frame)
  show(frame)
  copyReading()
}
