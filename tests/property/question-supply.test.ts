/** Voltages and pulses that are asked for, against waves that are sampled, flux that is summed and charge that leaves. */
import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { checkMachine } from '../../sim/machine/check.ts'
import { familyNamed } from '../../sim/question/bank.ts'
import { questionWith } from '../../sim/question/instance.ts'
import { mark } from '../../sim/question/marking.ts'
import { timeToFall } from '../support/follow-rate.ts'
import { bootCleaner, cordWinder } from '../support/machines.ts'
import { near, relativelyNear } from '../support/near.ts'
import { answerOf, causeOf, eachOf, numbersOf } from '../support/question-answers.ts'

const TURN = 2 * Math.PI

/** Samples of one cycle of what a machine on such mains gets, its crests among them. */
function cycleOf(voltage: number, frequency: number): number[] {
  const supply = { kind: 'mains', voltage, frequency, resistance: 0 } as const
  const { source } = compileDrive({ ...cordWinder, supply }).circuits[0]!
  const count = 400
  const step = TURN / source.angularFrequency / count
  return Array.from({ length: count }, (_, i) => source.emf * Math.sin(source.angularFrequency * i * step))
}

const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length)

describe('supply-peak', () => {
  test.each([
    [325.3, 'right'],
    [162.6, 'divided'],
    [460, 'doubled'],
    [230, 'rms-is-peak'],
    [207.1, 'mean'],
  ])('takes %f for what it comes from: %s, worked by hand', (value, cause) => {
    expect(causeOf('supply-peak', { V: 230 }, value)).toBe(cause)
  })
  test('is the crest of a wave whose r.m.s. is given', () => {
    eachOf('supply-peak', ({ V }, answer) => {
      const wave = cycleOf(V!, 50)
      relativelyNear(rms(wave), V!, 1e-12)
      relativelyNear(Math.max(...wave), answer, 1e-12)
    })
  })
  test('of 230 V: P. S. Bimbhra, Power Electronics, example 6.5, from a companion data set', () => {
    near(answerOf('supply-peak', { V: 230 }), 325.27, 0.005)
  })
})

/** Crests of a rectified sine, sampled at places that fall on none of them. */
function countPulses(f: number, t: number): number {
  const perCycle = 37.3
  const samples = Math.floor(perCycle * f * t)
  const at = (i: number) => Math.abs(Math.sin((TURN * i) / perCycle))
  let crests = 0
  for (let i = 1; i < samples; i++) if (at(i) > at(i - 1) && at(i) >= at(i + 1)) crests++
  return crests
}

describe('supply-pulses', () => {
  test.each([
    [300, 'right'],
    [150, 'mains-not-doubled'],
    [100, 'per-second'],
    [600, 'four-diodes'],
  ])('takes %f for what it comes from: %s, worked by hand', (value, cause) => {
    expect(causeOf('supply-pulses', { f: 50, t: 3 }, value)).toBe(cause)
  })
  test('is how many crests the rectified wave has', () => {
    eachOf('supply-pulses', ({ f, t }, answer) => expect(countPulses(f!, t!)).toBe(answer))
  })
  test('of 50 Hz in a second', () => {
    expect(answerOf('supply-pulses', { f: 50, t: 1 })).toBe(100)
  })
})

const bandAt = (V: number): string => {
  const { ask } = questionWith(familyNamed('supply-band')!, { V })
  return ask.kind === 'choice' ? ask.answer : ''
}

describe('supply-band', () => {
  test.each([
    [206.9, 'below'],
    [207, 'within'],
    [240, 'within'],
    [253, 'within'],
    [253.1, 'above'],
  ])(
    '%f V: IEC 60038, 230 V and 10 %%, from memory; 207 to 253 V in wiring regulations, page seen',
    (V, place) => {
      expect(bandAt(V)).toBe(place)
    },
  )
  test.each([
    [240, 'above', 'must-be-230'],
    [225, 'below', 'must-be-230'],
    [215, 'below', 'five-percent'],
    [245, 'above', 'five-percent'],
    [260, 'within', 'anything-goes'],
    [260, 'below', null],
  ])('%f V taken as %s comes from %s', (V, option, cause) => {
    const question = questionWith(familyNamed('supply-band')!, { V })
    expect(mark(question, { kind: 'choice', option })).toMatchObject({ right: false, cause })
  })
  test('is within where a machine on that supply is passed without a warning', () => {
    const seen = new Set<string>()
    for (const { V } of numbersOf('supply-band')) {
      const supply = { kind: 'mains', voltage: V!, frequency: 50, resistance: 0 } as const
      const warned = checkMachine({ ...bootCleaner, supply }).some(({ path }) => path === 'supply.voltage')
      const place = bandAt(V!)
      expect(warned, `${V} V`).toBe(place !== 'within')
      if (warned) expect(place, `${V} V`).toBe(V! < 230 ? 'below' : 'above')
      seen.add(place)
    }
    expect(seen).toEqual(new Set(['within', 'below', 'above']))
  })
})

/** r.m.s. voltage of N2 turns round the flux that a sine across N1 turns drives, both summed in small steps. */
function inducedVoltage(V1: number, N1: number, N2: number): number {
  const count = 4000
  const step = 0.02 / count
  const across = (i: number) => Math.SQRT2 * V1 * Math.cos((TURN * i) / count)
  const flux = [0]
  for (let i = 0; i < count; i++) flux.push(flux[i]! + (step * (across(i) + across(i + 1))) / 2 / N1)
  return rms(flux.slice(1).map((value, i) => (N2 * (value - flux[i]!)) / step))
}

describe('transformer-tap', () => {
  test.each([
    [24, 'right'],
    [2204, 'inverted'],
    [1030, 'difference'],
    [33.9, 'peak'],
  ])('takes %f for what it comes from: %s, worked by hand', (value, cause) => {
    expect(causeOf('transformer-tap', { V1: 230, N1: 1150, N2: 120 }, value)).toBe(cause)
  })
  test('is what the change of the shared flux makes in the turns of the tap', () => {
    eachOf('transformer-tap', ({ V1, N1, N2 }, answer) =>
      relativelyNear(inducedVoltage(V1!, N1!, N2!), answer, 1e-5),
    )
  })
})

describe('bleed-time', () => {
  test.each([
    [16.74, 'right'],
    [10, 'one-constant'],
    [8.125, 'straight-line'],
    [50, 'five-constants'],
    [7.27, 'ten-log'],
  ])('takes %f for what it comes from: %s, worked by hand', (value, cause) => {
    expect(causeOf('bleed-time', { V: 320, C: 100, R: 100, Vs: 60 }, value)).toBe(cause)
  })
  test('is when a capacitor that loses what its resistor takes has come down', () => {
    eachOf('bleed-time', ({ V, C, R, Vs }, answer) => {
      const farads = 1e-6 * C!
      const ohms = 1e3 * R!
      const falling = (v: number) => -v / ohms / farads
      relativelyNear(timeToFall(falling, V!, Vs!, 0.01), answer, 1e-7)
    })
  })
  test('of 100 uF from the crest of 230 V to 50 V through 100 kohm: R C ln(V/Vs), inputs illustrative', () => {
    near(answerOf('bleed-time', { V: 325.27, C: 100, R: 100, Vs: 50 }), 18.73, 0.02)
  })
})
