/**
 * Worked examples of loads behind gearing, of run-up and run-down. Companion: figures from an open data set of the
 * books (inputs and computed result); the printed pages were not seen.
 */
import { describe, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { newReading, readAt } from '../../sim/drive/reading.ts'
import { restState } from '../../sim/drive/state.ts'
import { step } from '../../sim/drive/step.ts'
import { wormTurnsValue } from '../../sim/drive/turns.ts'
import {
  electricalTimeConstant,
  mechanicalTimeConstant,
  settlingRates,
} from '../../sim/measuring/motor-time-constants.ts'
import {
  inertiaOfMass,
  referredInertia,
  referredTorque,
  torqueOfForce,
} from '../../sim/measuring/referred.ts'
import {
  angleOfRunDown,
  frictionOfRunDown,
  inertiaOfAcceleration,
  inertiaOfRunDown,
  kineticEnergy,
  lossOfRunDowns,
  speedAfterGiving,
} from '../../sim/measuring/run-down.ts'
import { radPerSecond, rpm } from '../../sim/quantity/convert.ts'
import { directCurrentMachine } from '../support/direct-current.ts'
import { gearedCrank } from '../support/geared-crank.ts'
import { near } from '../support/near.ts'

const GUPTA = 'Gupta & Singhal, Fundamentals of Electric Drives and Control'
const DUBEY = 'G. K. Dubey, Fundamentals of Electrical Drives, 2nd ed.'
const KHURMI = 'Khurmi & Gupta, Theory of Machines'
const THERAJA = 'Theraja & Theraja, A Textbook of Electrical Technology, vol. II'
/** Weight of a mass [m/s2] */
const g = 9.81

describe('load referred to the motor', () => {
  test(`through a mesh of 10 and 90 %, turned by hand: ${GUPTA}, Example 3.2 (companion)`, () => {
    const given = { ratio: 10, inertia: 0.4, wheelInertia: 10, torque: 50, speed: 1400 }
    const loaded = compileDrive(gearedCrank({ ...given, efficiency: 0.9 }))
    const steady = readAt(newReading(), loaded, firstInput(), radPerSecond(1400), 0)
    near(steady.motorTorque, 5.556, 0.0006)
    near(steady.inputPower, 814.487, 0.01)
    // the book takes the inertia without the mesh's loss
    const idle = compileDrive(gearedCrank({ ...given, torque: 0 }))
    near(readAt(newReading(), idle, firstInput(), radPerSecond(1400), 1).motorTorque, 0.5, 0.0005)
    near(referredTorque(50, 0.1, 0.9), steady.motorTorque, 1e-9)
    near(0.4 + referredInertia(10, 0.1), 0.5, 1e-12)
  })
  test(`a geared load and a lifted one: ${DUBEY}, Example 2.1 (companion)`, () => {
    const w = radPerSecond(1420)
    near(0.2 + referredInertia(10, 0.1) + inertiaOfMass(1000, 1.5, w), 0.4, 0.05)
    near(referredTorque(10, 0.1, 0.9) + torqueOfForce(1000 * g, 1.5, w, 0.85), 117.53, 0.006)
  })
  test(`a gear and a belt without loss: ${GUPTA}, Example 3.9 (companion)`, () => {
    near(0.3 + referredInertia(15, 0.1) + referredInertia(0.6, 10 / 30), 0.5167, 0.0001)
    const T = referredTorque(100, 0.1, 1) + referredTorque(35, 10 / 30, 1)
    near(T, 21.667, 0.0006)
    near(T * radPerSecond(1440), 3267.3, 0.1)
  })
  test(`a car on a slope that gains speed, 40:1 and 85 %: ${KHURMI}, Example 3.4 (companion)`, () => {
    // The slope of 1 in 20 is not among the collected inputs; it was found by recomputation and is the only one to fit.
    const pull = 14_000 * (0.1 + g / 20) + 1200
    const wheel = 0.1 / 0.5
    const behind = 0.5 * pull + 1250 * 0.45 ** 2 * wheel
    const T = referredTorque(behind, 1 / 40, 0.85) + 110 * 0.125 ** 2 * 40 * wheel
    near(T, 154.46, 0.01)
    near((T * 40 * 1.8) / 0.5 / 1000, 22.24, 0.005)
  })
})

describe('run-up, reversal and poles', () => {
  test('inertia from 70 N m and 10 rev/s2: J. B. Gupta, Elements of Electric Drives, Example 1.21 (companion)', () => {
    near(inertiaOfAcceleration(100 - 30, 2 * Math.PI * 10), 1.114, 0.0005)
  })
  test(`reversal against a load that brakes: ${DUBEY}, Example 2.2 (companion)`, () => {
    // T = 100 - 0.1 N, N in r/min, is a motor with R = 1 ohm of this constant; the load is 0.05 N
    const constant = Math.sqrt(0.1 * rpm(1))
    const motor = directCurrentMachine({ voltage: 100 / constant, resistance: 1, constant, inertia: 10 })
    const drive = compileDrive({ ...motor, rotor: { ...motor.rotor, viscousTorque: 0.05 * rpm(1) } })
    const final = radPerSecond(100 / 0.15)
    const state = restState()
    state.speed = final
    const reversed = { ...firstInput(), sense: -1 } as const
    for (let k = 0; k < 240 * 60 && state.speed > -0.95 * final; k++) step(state, drive, reversed, 1 / 240)
    near(state.time, 25.51, 0.3)
  })
  test(`1500 N m on 2500 kg m2 for 10 s: ${KHURMI}, Example 3.1 (companion)`, () => {
    // so much resistance that the current, and the torque, is the same at any speed
    const motor = directCurrentMachine({ voltage: 1500e9, resistance: 1e9, constant: 1, inertia: 2500 })
    const drive = compileDrive(motor)
    const state = restState()
    for (let k = 0; k < 2400; k++) step(state, drive, firstInput(), 1 / 240)
    near(state.acceleration, 0.6, 0.0005)
    near(kineticEnergy(2500, state.speed) / 1000, 45, 0.05)
  })
  test(`time constants and poles of a braked motor: ${DUBEY}, Example 5.9 (companion)`, () => {
    const K = (220 - 175 * 0.08) / radPerSecond(1000)
    near(K, 1.967, 0.0006)
    // at 1050 r/min the braking current is to be twice the rated 175 A
    const R = (K * radPerSecond(1050)) / (2 * 175)
    near(R - 0.08, 0.538, 0.0006)
    const ta = electricalTimeConstant(0.12, R)
    near(ta, 0.194, 0.0006)
    near(mechanicalTimeConstant(8, R, K), 1.274, 0.005)
    const [slow, fast] = settlingRates(ta, mechanicalTimeConstant(8, R, K))!
    near(slow, 0.963, 0.0006)
    near(fast, 4.187, 0.0006)
  })
  test(`a flywheel of 140 kg m2 that gives 6000 J: ${KHURMI}, Example 3.3 (companion)`, () => {
    near(240 - rpm(speedAfterGiving(140, radPerSecond(240), 6000)), 16.9, 0.06)
  })
})

describe('run-down', () => {
  test('a disc of 300 N comes to rest in 120 s: A. K. Tayal, Engineering Mechanics, Example 22-1 (companion)', () => {
    const w = radPerSecond(1500)
    const J = (300 / g) * (0.5 ** 2 / 2)
    const M = frictionOfRunDown(J, w, 120)
    near(M, 5, 0.05)
    near(angleOfRunDown(w, 120) / (2 * Math.PI), 1500, 1)
    const drive = compileDrive(
      directCurrentMachine({ voltage: 1, resistance: 1e9, constant: 1e-9, inertia: J, torque: M }),
    )
    const state = restState()
    state.speed = w
    const unplugged = { ...firstInput(), connected: false }
    for (let k = 0; k < 240 * 200 && state.speed > 0; k++) step(state, drive, unplugged, 1 / 240)
    near(state.time, 120, 1 / 240)
    near(wormTurnsValue(state.turns), 1500, 1)
  })
  test(`inertia and losses, 1525 to 1475 r/min: ${THERAJA}, Example 31.17 (companion)`, () => {
    const W = lossOfRunDowns(1000, 25, 20)
    near(W, 4000, 0.5)
    near(inertiaOfRunDown(W, radPerSecond(1500), radPerSecond(50), 25), 121.7, 0.2)
  })
  test(`mechanical and iron loss apart: ${THERAJA}, Example 31.19 (companion)`, () => {
    const both = lossOfRunDowns(219 * 10, 15, 9)
    const J = inertiaOfRunDown(both, radPerSecond(1000), radPerSecond(60), 15)
    near(J, 74.9, 0.1)
    // the same drop without excitation takes 36 s
    const mechanical = (J * radPerSecond(1000) * radPerSecond(60)) / 36
    near(mechanical, 1368.75, 0.01)
    near(both - mechanical, 1916.25, 0.01)
  })
  test(`stray loss with 10 A taken out from 220 to 190 V: ${THERAJA}, Example 31.16 (companion)`, () => {
    near(lossOfRunDowns(((220 + 190) / 2) * 10, 30, 20), 4100, 0.5)
  })
})
