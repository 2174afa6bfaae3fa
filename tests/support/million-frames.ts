import { readFileSync } from 'node:fs'
import { PerformanceObserver } from 'node:perf_hooks'
import { setTimeout } from 'node:timers/promises'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { newReading, readAt } from '../../sim/drive/reading.ts'
import { restState } from '../../sim/drive/state.ts'
import { step } from '../../sim/drive/step.ts'
import type { Machine } from '../../sim/machine/machine.ts'

/** Run by itself with --expose-gc; prints the garbage collections of each loop as JSON. */
let seen = 0
const observer = new PerformanceObserver((list) => {
  seen += list.getEntries().length
})
observer.observe({ entryTypes: ['gc'] })

const FRAMES = 1_000_000
const WARM_UP = 100_000

async function collectionsOver(frames: (count: number) => void): Promise<number> {
  frames(WARM_UP)
  globalThis.gc?.()
  await setTimeout(50)
  seen = 0
  frames(FRAMES)
  await setTimeout(50)
  return seen
}

function framesOf(machine: Machine, jammed: 'none' | 'left'): (count: number) => void {
  const drive = compileDrive(machine)
  const input = { ...firstInput(), setting: drive.steps - 1, jammed }
  const state = restState()
  const reading = newReading()
  return (count) => {
    for (let n = 0; n < count; n++) {
      // A start, a run and a stop every ten seconds of model time.
      input.connected = n % 2400 < 1800
      step(state, drive, input, 1 / 240)
      readAt(reading, drive, input, state.speed, state.acceleration)
    }
  }
}

let kept: object = {}
const result: Record<string, number> = {}
const load = (file: string): Machine =>
  JSON.parse(readFileSync(join(file), 'utf8')) as Machine

function join(file: string): string {
  return `${process.argv[2] ?? 'assets/machines'}/${file}.json`
}

for (const file of ['boot-cleaner', 'vent-opener', 'classroom-model'])
  result[`${file} running`] = await collectionsOver(framesOf(load(file), 'none'))
result['boot-cleaner locked'] = await collectionsOver(framesOf(load('boot-cleaner'), 'left'))
result['one object a frame'] = await collectionsOver((count) => {
  for (let n = 0; n < count; n++) kept = { n, kept: n / 3 }
})
process.stdout.write(JSON.stringify(result))
if (Object.keys(kept).length === 0) throw new Error('the last object must be kept')
