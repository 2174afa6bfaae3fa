/** Printed figures of fans and of air. */
import { describe, test } from 'vitest'
import {
  airDensity,
  fanPowerFactor,
  fanTorqueFactor,
  flowFactor,
  pressureFactor,
  similarSpeedFactor,
} from '../../sim/measuring/fan-laws.ts'
import { near } from '../support/near.ts'

test('a test moved to denser air: J. F. Douglas and others, Fluid Mechanics, Example 9.6 (companion)', () => {
  const density = 1.3 / 0.92
  const change = { speed: similarSpeedFactor(density), density }
  near(1400 * change.speed, 990.8, 0.06)
  near(2 * flowFactor(change), 1.415, 0.0006)
  near(200 * pressureFactor(change), 141.5, 0.06)
})

describe('fan laws: lists of makers, pages seen', () => {
  test('a tenth slower takes 27 % less power and 19 % less pressure', () => {
    const slower = { speed: 0.9, density: 1 }
    near(100 * (1 - fanPowerFactor(slower)), 27, 0.2)
    near(pressureFactor(slower), 0.81, 1e-9)
  })
  test('twice as fast: flow twice, torque four times, power eight times', () => {
    const faster = { speed: 2, density: 1 }
    near(flowFactor(faster), 2, 0)
    near(fanTorqueFactor(faster), 4, 0)
    near(fanPowerFactor(faster), 8, 0)
  })
})

test('air at 20 and 15 degC: ISA 1.225 (from memory), fan standard 0.075 lb/ft3 (page seen)', () => {
  near(airDensity(20), 1.204, 0.0006)
  near(airDensity(15), 1.225, 0.0006)
  const pound = 0.45359237 // [kg]
  const foot = 0.3048 // [m]
  const standard = (0.075 * pound) / foot ** 3
  near(standard, 1.201, 0.001)
  // and the program's air at 70 degF is that
  near(airDensity((70 - 32) / 1.8), standard, 0.002)
})
