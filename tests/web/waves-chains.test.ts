import fc from 'fast-check'
import { expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { tell } from '../../web/drive/transient-words.ts'
import { happen } from '../../sim/run/happenings.ts'
import type { Moment } from '../../web/drive/waves-moment.ts'
import { looksOf, seenOf, stretchOf } from '../../web/drive/waves-seen.ts'
import { waveAt } from '../../web/drive/waves-work.ts'
import { flowSentence, metersText, momentText } from '../../web/drive/waves-words.ts'
import { arbitraryFittedRun } from '../support/arbitraries.ts'

const SEED = 20_261_125
const warmth = { winding: 20, magnet: 20 }
/** Nothing that is not a number, and no unfinished sentence */
const whole = (text: string) => {
  expect(text).not.toMatch(/NaN|undefined|Infinity|–/)
  expect(text.trim()).not.toBe('')
}

test(`every chain has lanes, meters and a sentence, at every look and speed (seed ${SEED})`, () => {
  fc.assert(
    fc.property(arbitraryFittedRun, fc.double({ min: 0, max: 1, noNaN: true }), ([machine, input], part) => {
      const drive = compileDrive(machine)
      const point = operatingPoint(drive, input)
      if (!point || drive.circuits.length === 0) return
      const speed = part * point.speed
      const circuit = drive.circuits[input.setting]!
      const moment: Moment = {
        machine,
        warmth,
        drive,
        input,
        kind: 'now',
        speed,
        settled: false,
        open: false,
      }
      whole(momentText(moment))
      for (const of of looksOf(circuit)) {
        const wave = waveAt(drive, input, speed, stretchOf(circuit, { periods: 2, of }))
        const seen = seenOf(moment, wave, null)
        for (const lane of seen.lanes) {
          for (const { values } of lane.traces) expect(values.every(Number.isFinite)).toBe(true)
          whole(metersText(lane, seen.meters(lane)))
        }
        const current = seen.meters(seen.lanes.find(({ id }) => id === 'motor-current')!)
        const { flow, emf } = seen
        whole(
          flowSentence({ circuit, flow, speed, emf, current, smoothed: null, resolved: of === 'switching' }),
        )
      }
    }),
    { seed: SEED, numRuns: 30 },
  )
})

test(`every chain can be started, jammed and unplugged (seed ${SEED})`, () => {
  fc.assert(
    fc.property(
      arbitraryFittedRun,
      fc.constantFrom('start', 'jam-left', 'jam-right', 'unplug'),
      ([machine, input], what) => {
        const wave = happen(compileDrive(machine), input, what)
        if (!wave) return
        expect(wave.motorCurrent.every(Number.isFinite)).toBe(true)
        const { sentences, marks } = tell(what, wave, machine)
        for (const sentence of sentences) whole(sentence)
        for (const { time, value } of marks) expect(Number.isFinite(time + value)).toBe(true)
      },
    ),
    { seed: SEED, numRuns: 10 },
  )
}, 60_000)
