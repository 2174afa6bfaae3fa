/** Between the open page and the stage of a beat, which a lesson holds as what differs from a demo machine's plain state. */
import { copyTurns, noTurns } from '../../sim/drive/turns.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { StageGearing } from '../../sim/question/family.ts'
import { setAside } from '../frame/borrow.ts'
import { hold, placeAt, turnByDrive } from '../frame/frame.ts'
import { steadyNow } from '../frame/steady.ts'
import type { Workshop } from '../frame/workshop.ts'
import { DEMO_MACHINES } from '../file/demo-machines.ts'
import { type Differences, differencesBetween, isSame, withDifferences } from '../file/difference.ts'
import { type LinkState, plainState } from '../file/link-state.ts'
import { stateOf } from '../file/workshop-state.ts'
import { withGearing } from '../question/stage-question.ts'
import { benchFor } from '../store/bench.ts'
import type { BeatStage } from '../store/lesson.ts'
import { type GearSigns, NO_SIGNS } from '../store/view.ts'

/** What a beat may set: neither the way nor how large it is shown, which are the presenter's. */
type StageState = Pick<LinkState, 'machine' | 'bench' | 'picture' | 'moment'>

export const plainStage = (machine: Machine): StageState => {
  const { bench, picture, moment } = plainState(machine)
  return { machine, bench, picture, moment }
}

/** The stage as it is now. What turns is kept as turning, what stands with the place where it stands. */
export function stageOf(workshop: Workshop): BeatStage {
  const { machine, bench, picture, moment } = stateOf(workshop)
  const { panel, gearSigns, lit } = workshop.view.getState()
  const motion = workshop.frame.motion === 'running' ? 'running' : 'still'
  const now: StageState = {
    machine,
    bench,
    picture: { ...picture, large: false },
    moment: motion === 'still' ? moment : copyTurns(noTurns(), noTurns()),
  }
  const choices = DEMO_MACHINES.map((demo) => ({
    machine: demo.id,
    set: differencesBetween(plainStage(demo.machine), now),
  }))
  const size = ({ set }: { set: Differences }) => JSON.stringify(set).length
  const { machine: id, set } = choices.reduce((best, each) => (size(each) < size(best) ? each : best))
  const signs = (Object.keys(NO_SIGNS) as (keyof GearSigns)[]).filter((sign) => gearSigns[sign])
  return { machine: id, set, panel, signs, lit, walk: false, motion }
}

/** The state of a stage from a lesson that was read without problems. */
export function stageState(stage: BeatStage, gearing: StageGearing | null = null): StageState {
  const demo = DEMO_MACHINES.find(({ id }) => id === stage.machine)
  if (!demo) throw new Error(`a beat stands on ${stage.machine}, which is no demo machine`)
  const plain = plainStage(demo.machine)
  const value = withDifferences(plain, stage.set as Differences).value as unknown as StageState
  const machine = withGearing(value.machine, gearing)
  const bench = benchFor(machine, { ...value.bench, sense: gearing?.sense ?? value.bench.sense })
  return { ...value, machine, bench }
}

/** Lets the machine run as it does after a while: a run-up would take minutes where the pace is slow. */
export function runSteadily({ frame, bench }: Workshop): void {
  if (frame.drive.notComputed) return
  turnByDrive(frame)
  const steady = steadyNow(frame.drive, bench.getState())
  if (steady) frame.state.speed = steady.reading.wormSpeed
}

/** Lends the stage to a beat, with the gearing of its question. `moves` is false while it has to stand still. */
export function putStage(
  workshop: Workshop,
  stage: BeatStage,
  { gearing = null, moves = true }: { gearing?: StageGearing | null; moves?: boolean } = {},
): void {
  const { document, view, frame } = workshop
  setAside(workshop)
  const { machine, bench, picture, moment } = stageState(stage, gearing)
  const { view: name, camera, large: _, ...looks } = picture
  const on = (sign: keyof GearSigns) => stage.signs.includes(sign)
  hold(frame)
  const now = document.store.getState().machine
  // The same machine stays the same object, so that the picture need not be built again.
  const next = isSame(now, machine) ? now : machine
  document.store.setState({ machine: next, past: [], future: [], gestureStart: null })
  workshop.bench.setState(bench)
  view.setState((last) => ({
    ...looks,
    camera,
    view: { name, nonce: last.view.nonce + 1, camera },
    panel: stage.panel,
    panelWide: false,
    gearSigns: {
      contact: on('contact'),
      compound: on('compound'),
      forces: on('forces'),
      timing: on('timing'),
      heat: on('heat'),
    },
    lit: stage.lit,
    selected: null,
  }))
  placeAt(frame, moment.turns, moment.ticks, moment.rest)
  workshop.copyReading()
  if (stage.motion === 'running' && moves) runSteadily(workshop)
}
