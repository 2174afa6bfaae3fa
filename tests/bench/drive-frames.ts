/** What a frame of the running page asks of the drive: four steps and a reading. */
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { newReading, readState } from '../../sim/drive/reading.ts'
import { restState } from '../../sim/drive/state.ts'
import { step } from '../../sim/drive/step.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { bootCleaner, classroomModel, cordWinder, smoothed, ventOpener } from './machines.ts'
import { part } from './times.ts'

const STEP = 1 / 240
const STEPS_A_FRAME = 4
const FRAMES = 18_000
/** [ms] */
const SCREEN_FRAME = 1000 / 60
/** Ten seconds of model time, the last quarter unplugged; then the next setting */
const ROUND = 600
const PLUGGED_IN = 450
const WINDOWS = 12
const WINDOW_STEPS = 100_000

/** Frames of one machine, one at each call. */
function frameOf(machine: Machine): () => void {
  const drive = compileDrive(machine)
  const input = firstInput()
  const state = restState()
  const reading = newReading()
  let count = 0
  return () => {
    input.connected = count % ROUND < PLUGGED_IN
    input.setting = Math.floor(count / ROUND) % drive.steps
    for (let n = 0; n < STEPS_A_FRAME; n++) step(state, drive, input, STEP)
    readState(reading, drive, input, state)
    count += 1
  }
}

function timesOf(frame: () => void): Float64Array {
  const times = new Float64Array(FRAMES)
  for (let n = 0; n < FRAMES; n++) {
    const started = performance.now()
    frame()
    times[n] = performance.now() - started
  }
  return times
}

/** Bytes that stay on the heap over a hundred thousand steps, in the quietest of some windows. */
function garbageOf(frame: () => void): number {
  let least = Infinity
  for (let window = 0; window < WINDOWS; window++) {
    globalThis.gc!()
    const before = process.memoryUsage().heapUsed
    for (let n = 0; n < WINDOW_STEPS / STEPS_A_FRAME; n++) frame()
    least = Math.min(least, process.memoryUsage().heapUsed - before)
  }
  return Math.max(0, least)
}

function figuresOf(what: string, machine: Machine) {
  const frame = frameOf(machine)
  const first = [...timesOf(frame)]
  const later = [...timesOf(frame)]
  return {
    what,
    median: part(later, 0.5),
    most: part(later, 0.99),
    longest: part(later, 1),
    firstLongest: part(first, 1),
    firstLate: first.filter((time) => time > SCREEN_FRAME).length,
    garbage: garbageOf(frame),
  }
}

export const frameFigures = () => [
  figuresOf('boot cleaner', bootCleaner),
  figuresOf('vent opener', ventOpener),
  figuresOf('cord winder', cordWinder),
  figuresOf('classroom model', classroomModel),
  figuresOf('with 2200 uF', smoothed),
]
