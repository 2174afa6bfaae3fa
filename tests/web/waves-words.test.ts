import { describe, expect, test } from 'vitest'
import type { Circuit } from '../../sim/electric/circuit.ts'
import { compileDrive } from '../../sim/drive/drive.ts'
import { bootCleaner, cordWinder, ventOpener } from '../support/machines.ts'
import type { Flow } from '../../web/drive/waves-flow.ts'
import { readMeters } from '../../web/drive/waves-meters.ts'
import {
  type Told,
  flowSentence,
  meterSentence,
  rippleSentence,
  timeText,
} from '../../web/drive/waves-words.ts'

const time = Float64Array.from({ length: 1001 }, (_, n) => n / 50_000)
const sine = time.map((t) => 3 * Math.sin(100 * Math.PI * t))

const told = (circuit: Circuit, flow: Flow, more: Partial<Told> = {}): Told => ({
  circuit,
  flow,
  speed: 100,
  emf: 4.32,
  current: readMeters(time, sine),
  smoothed: null,
  resolved: true,
  ...more,
})

const [bridge] = compileDrive(bootCleaner).circuits
const [fired] = compileDrive(cordWinder).circuits
const chopped = compileDrive(ventOpener).circuits

describe('the sentence on the current', () => {
  const pulses: Flow = { motor: 0.52, source: 0.52, around: 0 }
  const whole: Flow = { motor: 1, source: 0.9, around: 0.1 }

  test('speaks of pulses where there are gaps, and names the voltage that makes them', () => {
    expect(flowSentence(told(bridge!, pulses))).toMatch(
      /in pulses, 52\u00a0% of the time.*motor’s own 4\.32 V/,
    )
  })

  test('speaks of the way around the transformer where the current never stops', () => {
    expect(flowSentence(told(bridge!, whole))).toMatch(/never stops.*10\u00a0% of the time the winding/)
  })

  test('tells a standing motor apart', () => {
    const sentence = flowSentence(told(bridge!, pulses, { speed: 0, emf: 0 }))
    expect(sentence).toMatch(/stands still and makes no voltage/)
    expect(sentence).not.toMatch(/own 0/)
  })

  test('tells the firing angle in degrees and in time: 120° of 50 Hz are 6.67 ms', () => {
    expect(flowSentence(told(fired!, pulses))).toMatch(/120°, or 6\.67 ms,/)
  })

  test('tells a chopper’s share and period, and a relay as no chopper', () => {
    expect(flowSentence(told(chopped[0]!, whole))).toMatch(/closed 40\u00a0% of every 125 µs/)
    expect(flowSentence(told(chopped[3]!, whole))).toMatch(/stays closed/)
  })

  test('tells a current limit apart from the chopping, and switching apart from its mean', () => {
    const limited = { ...chopped[3]!, chopper: { ...chopped[3]!.chopper!, currentLimit: 3 } }
    expect(flowSentence(told(limited, whole))).toMatch(/limit of 3\.00 A/)
    expect(flowSentence(told(chopped[0]!, whole, { resolved: false }))).toMatch(/taken at its mean here/)
  })

  test('says so where no current flows', () => {
    expect(flowSentence(told(bridge!, { motor: 0, source: 0, around: 0 }))).toMatch(
      /^No current flows: .*4\.32 V/,
    )
  })
})

describe('the sentence on meters', () => {
  test('leaves a sine alone, and corrects what is none', () => {
    expect(meterSentence('Current', readMeters(time, sine))).toBe(
      'Current: crest factor 1.41, form factor 1.11.',
    )
    const cut = sine.map((value, n) => (n % 500 < 250 ? 0 : value))
    // half of each half wave: r.m.s. 3/2, mean of the size 3/pi, which 1.111 makes 1.061
    expect(meterSentence('Current', readMeters(time, cut))).toMatch(/would show 1\.06 A instead of 1\.50 A/)
  })

  test('ripple is spoken of above 8 per cent only', () => {
    expect(rippleSentence(null)).toBe('')
    expect(rippleSentence(0.09)).toMatch(/swings by 9\.0\u00a0%/)
  })
})

test('times are told in the unit that reads best', () => {
  expect([125e-6, 0.00667, 0.41, 22, 90].map(timeText)).toEqual([
    '125 µs',
    '6.67 ms',
    '410 ms',
    '22.0 s',
    '1.50 min',
  ])
  expect(timeText(-0.01)).toBe('−10.0 ms')
})
