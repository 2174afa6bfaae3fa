import { expect, test } from 'vitest'
import { newStepper } from '../../../sim/numeric/dormand-prince.ts'
import type { SwitchedSystem } from '../../../sim/numeric/event-run.ts'
import { newEventRun } from '../../../sim/numeric/event-run.ts'
import { advance } from '../../../sim/numeric/event-steps.ts'
import { near } from '../../support/near.ts'

const GRAVITY = 9.81
const never = { nextInstant: Infinity }

/** A ball that loses no speed when it meets the floor: time, height, speed. */
function ball(): SwitchedSystem & { bounces: number[] } {
  const system = {
    bounces: [] as number[],
    guards: 1,
    longest: 0.3,
    clock: never,
    writeRates(rates: Float64Array, y: Float64Array) {
      rates[0] = 1
      rates[1] = y[2]!
      rates[2] = -GRAVITY
    },
    writeGuards(out: Float64Array, y: Float64Array) {
      out[0] = y[1]!
    },
    change(_guard: number, y: Float64Array) {
      system.bounces.push(y[0]!)
      y[1] = 0
      y[2] = -y[2]!
    },
    passInstant() {},
  }
  return system
}

test('a change comes where its guard passes zero, to rounding, and the next one is not taken for it', () => {
  const system = ball()
  const run = newEventRun(system, newStepper(3, 3, 3))
  run.stepper.y.set([0, 1, 0])
  advance(run, 3)
  const fall = Math.sqrt(2 / GRAVITY)
  expect(system.bounces.length).toBe(Math.floor((3 / fall + 1) / 2))
  for (const [n, time] of system.bounces.entries()) near(time, (2 * n + 1) * fall, 1e-13)
  const { y } = run.stepper
  expect(y[0]).toBe(3)
  near(GRAVITY * y[1]! + y[2]! ** 2 / 2, GRAVITY, 1e-12)
  expect(run.chatter).toBe(0)
})

test('a mode that does not hold where it starts is left at once', () => {
  const system = ball()
  const run = newEventRun(system, newStepper(3, 3, 3))
  run.stepper.y.set([0, 0, -2])
  advance(run, 0.1)
  expect(system.bounces).toEqual([0])
})

test('an instant is the end of a step and comes at its very time', () => {
  const clock = { nextInstant: 0.25 }
  const passed: number[] = []
  const system: SwitchedSystem = {
    ...ball(),
    clock,
    passInstant(y) {
      passed.push(y[0]!)
      clock.nextInstant += 0.25
    },
  }
  const run = newEventRun(system, newStepper(3, 3, 3))
  run.stepper.y.set([0, 1e3, 0])
  advance(run, 0.6)
  advance(run, 1)
  expect(passed).toEqual([0.25, 0.5, 0.75, 1])
})

test('changes that would go on for ever without time are told, and time goes on', () => {
  const system = { ...ball(), change: () => {}, writeGuards: (out: Float64Array) => void (out[0] = -1) }
  const run = newEventRun(system, newStepper(3, 3, 3))
  run.stepper.y.set([0, 1, 0])
  advance(run, 0.2)
  expect(run.chatter).toBeGreaterThan(0)
  expect(run.stepper.y[0]).toBe(0.2)
})

test('equations without a solution are a mistake that is told', () => {
  const system = { ...ball(), writeRates: (rates: Float64Array) => void rates.fill(Number.NaN) }
  const run = newEventRun(system, newStepper(3, 3, 3))
  run.stepper.y.set([1, 1, 0])
  expect(() => advance(run, 2)).toThrow('no step leads on')
})
