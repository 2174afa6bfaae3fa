import { readFileSync } from 'node:fs'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { advanceRun, createRun } from '../../sim/run/waveform.ts'
import { fewestCollections } from './fewest-collections.ts'

/**
 * Run by itself with --expose-gc: prints how many garbage collections the waveform level of a machine causes over many
 * steps after warming up. Arguments: the machine's file; 'running', or 'wasteful', which makes one array for each tenth
 * of a second.
 */
const [file = '', manner = 'running'] = process.argv.slice(2)

/** Tenths of a second, each of more than 500 steps */
const TENTHS = 200
const WINDOWS = manner === 'wasteful' ? 1 : 6

const machine = JSON.parse(readFileSync(file, 'utf8')) as Machine
const run = createRun(compileDrive(machine), firstInput())
let last: object = {}

function frames(count: number): void {
  for (let n = 0; n < count; n++) {
    advanceRun(run, 0.1)
    if (manner === 'wasteful') last = { places: Array.from({ length: 10_000 }, (_, place) => place) }
  }
}

const fewest = await fewestCollections(frames, TENTHS, WINDOWS)
process.stdout.write(`${fewest} ${Object.keys(last).length} ${run.events.steps}`)
