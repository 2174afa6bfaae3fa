import { readFileSync } from 'node:fs'
import { PerformanceObserver } from 'node:perf_hooks'
import { setTimeout } from 'node:timers/promises'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { followPlay, newPlay, settlePlay } from '../../sim/drive/play.ts'
import { newReading, readState } from '../../sim/drive/reading.ts'
import { restState } from '../../sim/drive/state.ts'
import { step } from '../../sim/drive/step.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { machineLayout } from '../../sim/pose/layout.ts'
import { newPoses, posePlan, writePoses } from '../../sim/pose/pose.ts'

/**
 * Run by itself with --expose-gc: prints how many garbage collections a million frames of a machine cause
 * after warming up. Arguments: the machine's file; 'running', 'locked' or 'wasteful', which makes one object
 * a frame.
 */
const [file = '', manner = 'running'] = process.argv.slice(2)

const FRAMES = 1_000_000
/** What is optimised late leaves boxes until then, so the quietest window counts. */
const WINDOWS = manner === 'wasteful' ? 1 : 12

const machine = JSON.parse(readFileSync(file, 'utf8')) as Machine
const drive = compileDrive(machine)
const plan = posePlan(machineLayout(machine))
const poses = newPoses()
const input = { ...firstInput(), setting: drive.steps - 1 }
if (manner === 'locked') input.jammed = 'left'
const state = restState()
const reading = newReading()
const play = newPlay()
settlePlay(play, state.turns, drive.halfPlay)
let last: object = {}

function frames(count: number): void {
  for (let n = 0; n < count; n++) {
    // A start, a run and a stop every ten seconds of model time.
    input.connected = n % 2400 < 1800
    step(state, drive, input, 1 / 240)
    readState(reading, drive, input, state)
    followPlay(play, state.turns)
    writePoses(poses, plan, state.turns, 0, play)
    if (manner === 'wasteful') last = { speed: state.speed }
  }
}

let collections = 0
new PerformanceObserver((list) => {
  collections += list.getEntries().length
}).observe({ entryTypes: ['gc'] })

let fewest = Infinity
frames(FRAMES)
for (let window = 0; window < WINDOWS && fewest > 0; window++) {
  globalThis.gc?.()
  await setTimeout(50)
  collections = 0
  frames(FRAMES)
  await setTimeout(50)
  fewest = Math.min(fewest, collections)
}
process.stdout.write(`${fewest} ${Object.keys(last).length}`)
