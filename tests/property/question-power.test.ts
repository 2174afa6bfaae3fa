import { expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { newReading, type Reading, readState } from '../../sim/drive/reading.ts'
import { restState } from '../../sim/drive/state.ts'
import { step } from '../../sim/drive/step.ts'
import { wheelTurnsValue } from '../../sim/drive/turns.ts'
import type { Load, Machine } from '../../sim/machine/machine.ts'
import type { Given } from '../../sim/question/family.ts'
import { ventOpener } from '../support/machines.ts'
import { relativelyNear } from '../support/near.ts'
import { numberAnswer } from '../support/question-answer.ts'
import { questionsOf } from '../support/question-check.ts'
import { crankedPair, gearingOf } from '../support/question-machine.ts'

const ROUNDING = 1e-9

const COUNTS = { z1: 2, z2: 27 }
/** Long enough for the hand to bring the crank to its speed [s] */
const START = 0.5
const POSES = 24

/** Work [J] of one wheel, torque by torque over the angles of a wheel turn, and what that took [s]. */
function workOfTurn({
  T,
  n,
}: {
  readonly T: number
  readonly n: number
}): readonly [work: number, time: number] {
  const { z1, z2 } = COUNTS
  const drive = compileDrive(crankedPair(gearingOf(COUNTS, 0.5), T, T, (n * z2) / z1))
  const input = { ...firstInput(), rightLoad: 1 }
  const state = restState()
  const reading = newReading()
  step(state, drive, input, START)
  const began = state.time
  const angle = () => 2 * Math.PI * wheelTurnsValue(state.turns, z1, z2)
  const first = angle()
  let work = 0
  for (let pose = 0; pose < POSES; pose++) {
    const before = angle()
    step(state, drive, input, 60 / n / POSES)
    readState(reading, drive, input, state)
    work += reading.leftTorque * (angle() - before)
  }
  relativelyNear(angle() - first, 2 * Math.PI, ROUNDING)
  return [work, state.time - began]
}

test('the work of a wheel turn, over its time, is the power that is asked for', () => {
  const seen = new Set<number>()
  for (const { question, given } of questionsOf('power-shaft')) {
    const { T, n, wheels } = given as { T: number; n: number; wheels: number }
    const [work, time] = workOfTurn({ T, n })
    relativelyNear(numberAnswer(question), (work / time) * wheels, ROUNDING)
    seen.add(wheels)
  }
  expect(seen).toEqual(new Set([1, 2]))
})

type Chain = {
  readonly P: number
  readonly stages: number
  readonly e1: number
  readonly e2: number
  readonly e3: number
  readonly e4: number
}

/** [V] */
const BATTERY = 12
/** [V s/rad] */
const EMF = 0.035

/**
 * A battery machine that loses power in as many places as there are stages, in each the part that the stage loses
 * when P comes out of the battery: battery, winding, shaft, meshes. With three stages the battery is ideal, with
 * two the shaft runs freely too.
 */
function chainMachine({ P, stages, e1, e2, e3, e4 }: Chain): Machine {
  const current = P / BATTERY
  const battery = BATTERY * (1 - e4)
  const [winding, shaft] = stages === 2 ? [e2, 1] : [e3, e2]
  const atMotor = BATTERY - battery
  const { rotor, outputs, motor, control } = ventOpener
  if (motor?.kind !== 'permanent-magnet' || control.kind !== 'chopper') throw new Error('a battery drive')
  return {
    ...ventOpener,
    supply: { kind: 'battery', voltage: BATTERY, resistance: battery / current },
    control: { ...control, steps: [{ duty: 100 }] },
    motor: {
      ...motor,
      emfConstant: EMF,
      brushDrop: 0,
      resistance: (atMotor * (1 - winding)) / current,
    },
    rotor: {
      ...rotor,
      frictionTorque: EMF * current * (1 - shaft),
      viscousTorque: 0,
      fanTorque: 0,
    },
    gearing: { ...ventOpener.gearing, ...gearingOf(COUNTS, e1) },
    outputs: { ...outputs, wheelInertia: 0, bearingTorque: 0 },
    protection: { kind: 'none' },
  }
}

const load = (passive: number): Load => ({ name: 'brush', active: 0, passive, linear: 0, quadratic: 0 })

function settledWith(machine: Machine, passive: number): Reading {
  const loads = [load(passive)]
  const drive = compileDrive({ ...machine, outputs: { ...machine.outputs, loads } })
  const point = operatingPoint(drive, firstInput())
  if (!point) throw new Error('a loaded motor settles')
  return point.reading
}

/** The machine with equal loads at which P comes out of the battery: power grows with the load in a straight line. */
function runOn(given: Given): Reading {
  const chain = given as Chain
  const machine = chainMachine(chain)
  const little = (EMF * chain.P) / BATTERY / 10
  const [none, some] = [settledWith(machine, 0).inputPower, settledWith(machine, little).inputPower]
  const reading = settledWith(machine, (little * (chain.P - none)) / (some - none))
  relativelyNear(reading.inputPower, chain.P, ROUNDING)
  return reading
}

test('what comes out of a running battery machine is what is asked for', () => {
  const seen = new Set<string>()
  for (const { question, given } of questionsOf('power-chain')) {
    const { inputPower, outputLeft, outputRight } = runOn(given)
    const out = outputLeft + outputRight
    const wanted = { out, each: outputRight, loss: inputPower - out }
    relativelyNear(numberAnswer(question), wanted[given['ask'] as keyof typeof wanted], ROUNDING)
    seen.add(`${given['stages']} ${given['ask']}`)
  }
  // Both wheels together are asked for at any length; each of them, and the loss, behind more than two stages.
  expect(seen.size).toBe(7)
})
