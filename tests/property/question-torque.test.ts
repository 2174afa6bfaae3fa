import { expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import type { Reading } from '../../sim/drive/reading.ts'
import type { Given } from '../../sim/question/family.ts'
import { bootCleaner } from '../support/machines.ts'
import { near, relativelyNear } from '../support/near.ts'
import { numberAnswer, numberAsked } from '../support/question-answer.ts'
import { questionsOf } from '../support/question-check.ts'
import { crankedReading, gearingOf } from '../support/question-machine.ts'

const ROUNDING = 1e-9

type Loads = (part: number) => readonly [left: number, right: number]

/** A pair cranked with the torque T: the loads grow in proportion to `part` until the hand feels just that. */
function crankedWith(given: Given, efficiency: number, loads: Loads): Reading {
  const { z1, z2, T } = given as { z1: number; z2: number; T: number }
  const gearing = gearingOf({ z1, z2 }, efficiency)
  const read = (part: number) => crankedReading(gearing, ...loads(part))
  const [none, one] = [read(0).motorTorque, read(1).motorTorque]
  const reading = read((T - none) / (one - none))
  relativelyNear(reading.motorTorque, T, ROUNDING)
  return reading
}

const equal: Loads = (part) => [part, part]

test('the wheels of a pair without losses have together what is asked for', () => {
  for (const { question, given } of questionsOf('torque-total')) {
    const { leftTorque, rightTorque } = crankedWith(given, 1, equal)
    relativelyNear(numberAnswer(question), leftTorque + rightTorque, ROUNDING)
  }
})

test('each wheel of an equally loaded pair without losses has what is asked for', () => {
  for (const { question, given } of questionsOf('torque-each'))
    relativelyNear(numberAnswer(question), crankedWith(given, 1, equal).leftTorque, ROUNDING)
})

test('each wheel of an equally loaded pair with rubbing meshes has what is asked for', () => {
  for (const { question, given } of questionsOf('torque-lossy'))
    relativelyNear(
      numberAnswer(question),
      crankedWith(given, given['e'] as number, equal).rightTorque,
      ROUNDING,
    )
})

test('what one wheel leaves to the other is what is asked for, and both turn as fast', () => {
  for (const { question, given } of questionsOf('torque-uneven')) {
    const { e, T1 } = given as { e: number; T1: number }
    const reading = crankedWith(given, e, (part) => [T1, part])
    expect(reading.leftTorque).toBe(T1)
    expect(reading.leftSpeed).toBe(-reading.rightSpeed)
    relativelyNear(numberAnswer(question), reading.rightTorque, ROUNDING)
  }
})

test('a hand that cranks two loads feels the torque that is asked for', () => {
  for (const { question, given } of questionsOf('torque-motor')) {
    const { z1, z2, T1, T2, e } = given as Readonly<Record<string, number>>
    const reading = crankedReading(gearingOf({ z1: z1!, z2: z2! }, e!), T1!, T2!)
    relativelyNear(numberAnswer(question), reading.motorTorque, ROUNDING)
  }
})

/** Worked by a separate script for the boot cleaner at its fastest setting; half of the last figure is the tolerance. */
const HALF_MILLI = 0.0005
const cleaner = compileDrive(bootCleaner)
const running = (leftLoad: number, rightLoad: number): Reading =>
  operatingPoint(cleaner, { ...firstInput(), setting: 4, leftLoad, rightLoad })!.reading

/** Torque that reaches the worm: the motor's less friction and fan of its shaft. */
const atWorm = (reading: Reading): number =>
  reading.motorTorque - (reading.frictionLoss + reading.fanLoss) / reading.wormSpeed

const { starts: z1, teeth: z2, forwardEfficiency: e, bearingTorque } = cleaner

test('each wheel of the light boot cleaner would have 0.389 N m without losses and has 0.109 N m', () => {
  const reading = running(0, 0)
  near(reading.motorTorque, 0.0389, HALF_MILLI / 10)
  near(numberAsked('torque-each', { z1, z2, T: 0.0389 }), 0.389, HALF_MILLI)
  relativelyNear(numberAsked('torque-each', { z1, z2, T: reading.motorTorque }), reading.idealLeft, ROUNDING)
  relativelyNear(
    numberAsked('torque-total', { z1, z2, T: reading.motorTorque }),
    reading.idealTotal,
    ROUNDING,
  )
  const each = numberAsked('torque-lossy', { z1, z2, T: atWorm(reading), e })
  near(each - bearingTorque, 0.109, HALF_MILLI)
  near(each - bearingTorque, reading.leftTorque, ROUNDING)
})

test('a boot on one brush of the boot cleaner leaves 0.099 N m for the other', () => {
  const reading = running(1, 0)
  near(reading.leftTorque, 0.419, HALF_MILLI)
  const T1 = reading.leftTorque + bearingTorque
  const other = numberAsked('torque-uneven', { z1, z2, T: atWorm(reading), e, T1 }) - bearingTorque
  near(other, 0.099, HALF_MILLI)
  near(other, reading.rightTorque, ROUNDING)
})

test('0.4 N m on each wheel ask 0.0791 N m of one start and 0.0603 N m of two with as many turns', () => {
  const oneStart = numberAsked('mesh-efficiency', { z1: 1, q: 10, an: 20, mu: 0.09 }) / 100
  const twoStarts = numberAsked('mesh-efficiency', { z1: 2, q: 10, an: 20, mu: 0.09 }) / 100
  const loads = { T1: 0.4, T2: 0.4 }
  near(numberAsked('torque-motor', { ...loads, z1: 1, z2: 20, e: oneStart }), 0.0791, HALF_MILLI / 10)
  near(numberAsked('torque-motor', { ...loads, z1: 2, z2: 40, e: twoStarts }), 0.0603, HALF_MILLI / 10)
})
