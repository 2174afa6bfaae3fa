/** What one frame costs before anything is drawn: a step of the model, a reading and the poses. */
import bootCleaner from '../../assets/machines/boot-cleaner.json' with { type: 'json' }
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { newReading, readAt } from '../../sim/drive/reading.ts'
import { restState } from '../../sim/drive/state.ts'
import { step } from '../../sim/drive/step.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { machineLayout } from '../../sim/pose/layout.ts'
import { newPoses, posePlan, writePoses } from '../../sim/pose/pose.ts'

const STEP = 1 / 240

/** Microseconds for each of `runs` runs of `count` rounds, after one run to warm up. */
export function coreTimes(runs: number, count: number): number[] {
  const machine = bootCleaner as Machine
  const drive = compileDrive(machine)
  const plan = posePlan(machineLayout(machine))
  const input = firstInput()
  const state = restState()
  const reading = newReading()
  const poses = newPoses()
  const times: number[] = []
  for (let run = 0; run <= runs; run++) {
    const started = performance.now()
    for (let i = 0; i < count; i++) {
      step(state, drive, input, STEP)
      readAt(reading, drive, input, state.speed, state.acceleration)
      writePoses(poses, plan, state.turns, 0)
    }
    times.push(((performance.now() - started) * 1000) / count)
  }
  return times.slice(1)
}
