import { readFileSync } from 'node:fs'
import {
  contactField,
  newContactCounts,
  newContactPoints,
  writeContactLines,
} from '../../sim/gear/contact-field.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { fewestCollections } from './fewest-collections.ts'

/**
 * Run by itself with --expose-gc: prints how many garbage collections the contact lines of a machine cause over
 * many frames after warming up. Arguments: the machine's file; 'running', or 'wasteful', which makes one object a
 * frame.
 */
const [file = '', manner = 'running'] = process.argv.slice(2)

const FRAMES = 300_000
const WINDOWS = manner === 'wasteful' ? 1 : 8

const machine = JSON.parse(readFileSync(file, 'utf8')) as Machine
const fields = ([-1, 1] as const).map((sigma) => contactField(machine.gearing, sigma))
const points = fields.map(newContactPoints)
const counts = fields.map(newContactCounts)
const angle = new Float64Array(1)
let last: object = {}

function frames(count: number): void {
  for (let n = 0; n < count; n++) {
    angle[0] = (n % 6283) / 1000
    const i = n & 1
    writeContactLines(points[i]!, counts[i]!, fields[i]!, (n & 2) === 0 ? 'right' : 'left', angle)
    if (manner === 'wasteful') last = { angle: angle[0] }
  }
}

const fewest = await fewestCollections(frames, FRAMES, WINDOWS)
process.stdout.write(`${fewest} ${Object.keys(last).length}`)
