import { readFileSync } from 'node:fs'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { followPlay, newPlay, settlePlay } from '../../sim/drive/play.ts'
import { newReading, readState } from '../../sim/drive/reading.ts'
import { restState } from '../../sim/drive/state.ts'
import { step } from '../../sim/drive/step.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { machineLayout } from '../../sim/pose/layout.ts'
import { newPoses, posePlan, writePoses } from '../../sim/pose/pose.ts'
import { fewestCollections } from './fewest-collections.ts'

/**
 * Run by itself with --expose-gc: prints how many garbage collections a million frames of a machine cause
 * after warming up. Arguments: the machine's file; 'running', 'locked', 'smoothed' with a capacitor of 2200 uF, or
 * 'wasteful', which makes one object a frame.
 */
const [file = '', manner = 'running'] = process.argv.slice(2)

const FRAMES = 1_000_000
const WINDOWS = manner === 'wasteful' ? 1 : 12

const described = JSON.parse(readFileSync(file, 'utf8')) as Machine
const machine: Machine =
  manner === 'smoothed' && described.rectifier
    ? { ...described, rectifier: { ...described.rectifier, capacitance: 2200 } }
    : described
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

const fewest = await fewestCollections(frames, FRAMES, WINDOWS)
process.stdout.write(`${fewest} ${Object.keys(last).length}`)
