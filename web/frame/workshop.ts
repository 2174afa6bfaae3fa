/** Everything that one open page holds: the stores, the frame, and the wires between them. */
import { createContext, useContext } from 'react'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import { type Drive, compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { createAnnouncer } from '../store/announce.ts'
import { createAside } from '../store/aside.ts'
import { type Bench, benchFor, countablePace, createBench, inputOf } from '../store/bench.ts'
import { createDocument, useDocument } from '../store/document.ts'
import { createExercise } from '../store/exercise.ts'
import { createLesson } from '../store/lesson.ts'
import { type LessonPlace, createPredict } from '../store/predict.ts'
import { createReadout } from '../store/readout.ts'
import { createRecords } from '../store/records.ts'
import { type Theme, type View, createView } from '../store/view.ts'
import { createFrame } from './frame-state.ts'
import { changeDrive, read, show } from './frame.ts'

/** How often the panels are given new numbers [ms] */
const READOUT_EVERY = 100

export function createWorkshop(machine: Machine, theme: Theme) {
  const document = createDocument(machine)
  const bench = createBench()
  const view = createView(theme)
  const announcer = createAnnouncer()
  const predict = createPredict()
  const exercise = createExercise()
  const lesson = createLesson()
  const records = createRecords()
  const linked = createStore<{ readonly lesson: LessonPlace | null }>(() => ({ lesson: null }))
  const aside = createAside()
  const frame = createFrame(compileDrive(machine), firstInput())
  const readout = createReadout({ ...frame.reading })

  const copyReading = () => {
    const reading = { ...read(frame) }
    readout.setState({ motion: frame.motion, reading, stopping: frame.stopping })
  }
  let lastCopy = 0
  frame.painters.add(() => {
    const now = performance.now()
    if (frame.motion === readout.getState().motion && now - lastCopy < READOUT_EVERY) return
    lastCopy = now
    copyReading()
  })

  const applyBench = (next: Bench, before?: Bench) => {
    if (before && (next.winding !== before.winding || next.magnet !== before.magnet))
      changeDrive(frame, driveAt(document.store.getState().machine, next))
    Object.assign(frame.input, inputOf(next))
    frame.pace = next.pace
    copyReading()
  }
  document.store.subscribe((now, before) => {
    if (now.machine === before.machine) return
    changeDrive(frame, driveAt(now.machine, benchFor(now.machine, bench.getState())))
    bench.setState((last) => benchFor(now.machine, last))
    copyReading()
    show(frame)
  })
  bench.subscribe(applyBench)
  applyBench(bench.getState())

  return {
    document,
    bench,
    view,
    announcer,
    predict,
    linked,
    exercise,
    lesson,
    records,
    aside,
    readout,
    frame,
    copyReading,
  }
}

/** The machine made ready, as warm as the bench says. */
const driveAt = (machine: Machine, { winding, magnet }: Bench): Drive =>
  compileDrive(machine, { winding, magnet })

export type Workshop = ReturnType<typeof createWorkshop>

/** A pace at which this machine's fastest setting, with free wheels, can be counted by eye. */
export function paceFor(machine: Machine): number {
  const drive = compileDrive(machine)
  const fastest = operatingPoint(drive, { ...firstInput(), setting: drive.steps - 1 })
  return countablePace((fastest?.speed ?? 0) / (2 * Math.PI))
}

const WorkshopContext = createContext<Workshop | null>(null)
export const WorkshopProvider = WorkshopContext.Provider

export function useWorkshop(): Workshop {
  const workshop = useContext(WorkshopContext)
  if (!workshop) throw new Error('useWorkshop is used outside WorkshopProvider')
  return workshop
}

export const useMachine = <T>(select: (machine: Machine) => T): T =>
  useDocument(useWorkshop().document, (document) => select(document.machine))
export const useBench = <T>(select: (bench: Bench) => T): T => useStore(useWorkshop().bench, select)
export const useView = <T>(select: (view: View) => T): T => useStore(useWorkshop().view, select)
