import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { fuseTime, meltingIntegral } from '../../sim/heat/fuse.ts'
import { tell } from '../../web/drive/transient-words.ts'
import { type Happening, happen, optionsFor, roundUp } from '../../sim/run/happenings.ts'
import {
  integral,
  peakOf,
  rmsBetween,
  squareIntegral,
  timeAt,
  turnsBetween,
} from '../../web/drive/transient-facts.ts'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../support/machines.ts'
import { near, relativelyNear } from '../support/near.ts'

const time = Float64Array.from({ length: 101 }, (_, n) => n / 100)
const ramp = time.map((t) => 10 * t)

describe('what is read off a run', () => {
  test('the peak is the largest size, whatever its sense', () => {
    const { at, value } = peakOf(
      time,
      time.map((t) => -5 * Math.exp(-((t - 0.3) ** 2) / 0.001)),
    )
    near(at, 0.3, 1e-12)
    near(value, 5, 1e-12)
  })

  test('a level is found between samples', () => {
    near(timeAt(time, ramp, 2.345, 'up'), 0.2345, 1e-12)
    near(
      timeAt(
        time,
        ramp.map((value) => 10 - value),
        2.345,
        'down',
      ),
      0.7655,
      1e-12,
    )
  })

  test('a level that is never reached is told as such, and one that stands at the start at once', () => {
    expect(timeAt(time, ramp, 11, 'up')).toBe(Infinity)
    near(timeAt(time, ramp, 5, 'down', 0), 0, 0)
    near(timeAt(time, ramp, 5, 'up', 0.8), 0.8, 1e-12)
  })

  test('integrals end between samples too', () => {
    near(integral(time, ramp, 0.105, 0.305), 5 * (0.305 ** 2 - 0.105 ** 2), 1e-12)
    near(integral(time, ramp, 0, 2), 5, 1e-12)
  })

  test('I²t and r.m.s. of a steady current', () => {
    const steady = time.map(() => -3)
    near(squareIntegral(time, steady, 0, 0.5), 4.5, 1e-12)
    near(rmsBetween(time, steady, 0.25, 0.5), 3, 1e-12)
  })

  test('turns are counted from the speed', () => {
    near(turnsBetween({ time, speed: time.map(() => -20 * Math.PI) }, 0, 0.5), 5, 1e-12)
  })
})

const atSetting = (machine: Machine, setting: number, what: Happening) =>
  happen(compileDrive(machine), { ...firstInput(), setting }, what)!

describe('a start, a jam, a pull of the plug', () => {
  test.each([
    ['boot cleaner', bootCleaner, 4],
    ['vent opener', ventOpener, 3],
    ['cord winder', cordWinder, 4],
  ] as const)('a start of the %s is followed until it is up to speed', (_, machine, setting) => {
    const steady = operatingPoint(compileDrive(machine), { ...firstInput(), setting })!
    const wave = atSetting(machine, setting, 'start')
    near(wave.speed[0]!, 0, 0)
    relativelyNear(wave.speed.at(-1)!, steady.speed, 0.05)
    const { sentences, marks } = tell('start', wave, machine)
    expect(sentences[0]).toMatch(/^The current rises to .* after the start/)
    const [peak, up] = marks
    near(Math.abs(peak!.value), Math.max(...wave.motorCurrent.map(Math.abs)), 0)
    relativelyNear(up!.value, (0.9 * steady.speed * 60) / (2 * Math.PI), 0.02)
  })

  test('a jam is followed past standstill, and the locked current is that of the standing motor', () => {
    const wave = atSetting(bootCleaner, 4, 'jam-left')
    near(wave.speed.at(-1)!, 0, 0)
    const input = { ...firstInput(), setting: 4, jammed: 'left' as const }
    const locked = operatingPoint(compileDrive(bootCleaner), input)!.reading.currentRms
    const told = tell('jam-left', wave, bootCleaner).sentences
    // the last 20 ms, sampled every 0.1 ms or finer, of a current that has had 60 ms and more to settle
    relativelyNear(Number(/Then ([\d.]+) A rms/.exec(told.join(' '))![1]), locked, 0.01)
    const seconds = Number(/opens about ([\d.]+) s after/.exec(told.join(' '))![1])
    relativelyNear(seconds, fuseTime(locked, 5.2, 6), 0.05)
  })

  test('unplugged, it is followed to rest', () => {
    const wave = atSetting(bootCleaner, 4, 'unplug')
    near(wave.speed.at(-1)!, 0, 0)
    near(wave.motorCurrent.at(-1)!, 0, 0)
    expect(tell('unplug', wave, bootCleaner).sentences.join(' ')).toMatch(/comes to rest \d+ ms later/)
  })

  test('a capacitor is told with its energy, what stays in it and the time constant of its bleed', () => {
    const rectifier = { ...bootCleaner.rectifier!, capacitance: 2200 }
    const machine = { ...bootCleaner, rectifier }
    const wave = atSetting(machine, 4, 'unplug')
    const told = tell('unplug', wave, machine).sentences.join(' ')
    const [, volts, joules] = /holds ([\d.]+) V, that is ([\d.]+) J/.exec(told)!.map(Number)
    relativelyNear(joules!, (2200e-6 * volts! ** 2) / 2, 2e-3)
    expect(told).toMatch(/below 34 V from the start/)
    // 2200 uF through 10 kohm
    expect(told).toMatch(/time constant is 22\.0 s/)
    // below the brush drop of 1.6 V nothing more flows through the motor
    const left = Number(/([\d.]+) V are left/.exec(told)![1])
    expect(left).toBeLessThanOrEqual(1.6)
    expect(left).toBeGreaterThan(1.4)
  })

  test('the fuse’s share of a start is told against what melts it', () => {
    const wave = atSetting(bootCleaner, 4, 'start')
    const told = tell('start', wave, bootCleaner).sentences.join(' ')
    const [, taken, most] = /I²t of ([\d.]+) A²s; from cold it opens at ([\d.]+) A²s/.exec(told)!.map(Number)
    relativelyNear(most!, meltingIntegral(5.2, 6), 5e-3)
    // a short pulse warms the fuse by its part of that, nearly
    const warmth = wave.fuse[wave.time.findIndex((t) => t > 0.15)]!
    relativelyNear(taken! / most!, warmth, 0.1)
  })

  test('there is none for a crank', () => {
    expect(happen(compileDrive(classroomModel), firstInput(), 'start')).toBeNull()
  })

  test('lengths are round, and long enough', () => {
    expect([0.034, 0.05, 0.051, 0.2, 0.73, 6].map(roundUp)).toEqual([0.05, 0.05, 0.1, 0.2, 1, 10])
    const options = optionsFor(compileDrive(bootCleaner), { ...firstInput(), setting: 4 }, 'unplug')!
    expect(options.changes).toEqual([{ time: 0.1, change: { connected: false } }])
  })
})
