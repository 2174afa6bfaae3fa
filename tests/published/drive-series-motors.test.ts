/**
 * Printed figures of series and universal motors, run through the circuits. The figures come from an open companion
 * data set of the books (inputs and computed result); the printed pages were not seen.
 */
import { describe, test } from 'vitest'
import type { CurrentCycle } from '../../sim/electric/cycle.ts'
import { lastPlace } from '../../sim/gear/last-place.ts'
import { fanTorqueFactor } from '../../sim/measuring/fan-laws.ts'
import { displacementFactor } from '../../sim/measuring/wave-shape.ts'
import { degrees, radPerSecond, rpm } from '../../sim/quantity/convert.ts'
import { near } from '../support/near.ts'
import type { TextbookCircuit } from './electric-circuit.ts'
import { cycleOf } from './electric-circuit.ts'

const HORSEPOWER = 746 // [W], as American textbooks round it
const MOST_SPEED = 2000 // [rad/s]

type SeriesMotor = TextbookCircuit & { readonly seriesConstant: number }

/** Speed [rad/s] up to which a reading of the motor stays at or above a value. */
const speedWhere = (
  motor: SeriesMotor,
  read: (cycle: CurrentCycle, speed: number) => number,
  value: number,
) => lastPlace(0, MOST_SPEED, (speed) => read(cycleOf({ ...motor, speed }), speed) >= value)

const rms = ({ square }: CurrentCycle) => Math.sqrt(square)

describe('on direct current', () => {
  test('a fan slowed from 300 to 200 r/min: P. C. Sen, Principles of Electric Machines, 2nd ed., Example 4.9', () => {
    const [w1, w2] = [radPerSecond(300), radPerSecond(200)]
    const seriesConstant = (220 - 25 * (0.6 + 0.4)) / (25 * w1)
    const motor = { voltage: 220, frequency: 0, resistance: 0.6 + 0.4, seriesConstant }
    const fast = cycleOf({ ...motor, speed: w1 })
    near(fast.torque * w1, 4875, 1)
    near(fast.torque, 155.2, 0.1)
    const T2 = fast.torque * fanTorqueFactor({ speed: 200 / 300, density: 1 })
    near(T2, 68.98, 0.05)
    // the resistor ahead of the motor that leaves just this torque
    const slowed = (sourceResistance: number) => cycleOf({ ...motor, sourceResistance, speed: w2 })
    const Rae = lastPlace(0, 100, (resistance) => slowed(resistance).torque >= T2)
    near(Rae, 7, 0.01)
    near(slowed(Rae).mean, 16.67, 0.01)
    near((slowed(Rae).torque * w2) / HORSEPOWER, 1.94, 0.005)
  })

  test('7460 W and 1040 W lost in turning: Guru & Hiziroglu, Electric Machinery and Transformers, 3rd ed., Ex. 6.1', () => {
    // any constant will do: the current follows from the power
    const motor = { voltage: 220, frequency: 0, resistance: 0.75 + 0.25, seriesConstant: 0.04 }
    const shaft = ({ torque }: CurrentCycle, speed: number) => torque * speed
    // of the two speeds with this power, the one beyond the peak, at the smaller current
    const peak = 220 / (2 * 1)
    const w = lastPlace(
      speedWhere(motor, rms, peak),
      MOST_SPEED,
      (speed) => shaft(cycleOf({ ...motor, speed }), speed) >= 8500,
    )
    const cycle = cycleOf({ ...motor, speed: w })
    near(cycle.mean, 50, 0.01)
    near((100 * 7460) / cycle.sourcePower, 67.82, 0.01)
  })

  test('44 % more torque, and half the current: J. B. Gupta, Elements of Electric Drives, Example 1.9', () => {
    const seriesConstant = (200 - 20 * 0.5) / (20 * radPerSecond(700))
    const motor = { voltage: 200, frequency: 0, resistance: 0.5, seriesConstant }
    const { torque } = cycleOf({ ...motor, speed: radPerSecond(700) })
    near(rpm(speedWhere(motor, (cycle) => cycle.torque, 1.44 * torque)), 577.2, 0.06)
    near(rpm(speedWhere(motor, rms, 10)), 1437, 0.6)
  })

  test('behind a chopper: P. S. Bimbhra, Power Electronics, Example 12.16', () => {
    const chopper = { voltage: 600, frequency: 0, duty: 0.6, period: 1e-3 }
    // so much inductance that the current does not ripple, as the example has it
    const motor = { ...chopper, resistance: 0.1, inductance: 10, seriesConstant: 0.004 }
    const w = speedWhere(motor, (cycle) => cycle.mean, 300)
    near(rpm(w), 2626.1, 0.06)
    const { torque, sourceMean, sourcePower } = cycleOf({ ...motor, speed: w })
    near(torque, 360, 0.05)
    near(sourcePower / 1000, 108, 0.05)
    near(600 / sourceMean, 3.333, 0.0006)
  })

  test('from a point of the magnetisation curve: S. J. Chapman, Electric Machinery Fundamentals, Ex. 9-5, from memory', () => {
    const seriesConstant = 80 / (50 * radPerSecond(1200))
    const motor = { voltage: 250, frequency: 0, resistance: 0.08, seriesConstant }
    const w = speedWhere(motor, rms, 50)
    near(rpm(w), 3690, 0.6)
    near(cycleOf({ ...motor, speed: w }).torque, 31.8, 0.05)
  })

  test('flux brought to 70 % by a diverter: Theraja & Theraja, Electrical Technology, vol. II, Example 30.36', () => {
    const Ra = 0.5
    const seriesConstant = (200 - 20 * (Ra + 0.2)) / (20 * radPerSecond(1000))
    const whole = { voltage: 200, frequency: 0, resistance: Ra + 0.2, seriesConstant }
    near(rpm(speedWhere(whole, rms, 20)), 1000, 1e-6)
    // field and diverter of 0.2 ohm each side by side, and 0.7 of the flux of 20 A
    const weakened = { ...whole, resistance: Ra + 0.1, seriesConstant: 0.7 * seriesConstant }
    near(rpm(speedWhere(weakened, rms, 20)), 1444, 0.6)
  })
})

describe('on alternating current', () => {
  test('1 A at 220 V on either: Theraja & Theraja, Electrical Technology, vol. II, Example 36.4', () => {
    const seriesConstant = (220 - 1 * 20) / (1 * radPerSecond(2000))
    const motor = { voltage: 220, frequency: 50, resistance: 20, inductance: 0.4, seriesConstant }
    const w = speedWhere(motor, rms, 1)
    near(rpm(w), 1606, 1.5)
    const cycle = cycleOf({ ...motor, speed: w })
    near(cycle.torque, 0.955, 0.001)
    near(cycle.sourcePower / (220 * rms(cycle)), 0.82, 0.005)
  })

  test('17.58 A at 120 V and 8000 r/min: Guru & Hiziroglu, Electric Machinery and Transformers, 3rd ed., Ex. 10.5', () => {
    const I = 17.58
    const w = radPerSecond(8000)
    const circuit = {
      voltage: 120,
      frequency: 60,
      resistance: 0.65 + 1.36,
      inductance: (1.2 + 1.6) / (2 * Math.PI * 60),
      speed: w,
    }
    const run = (seriesConstant: number) => cycleOf({ ...circuit, seriesConstant })
    const cycle = run(lastPlace(0, 0.1, (seriesConstant) => rms(run(seriesConstant)) >= I))
    const power = cycle.torque * w
    near(power / I, 74.1, 0.06)
    // emf in phase with current: both lag the source by the angle of 0.912
    const factor = displacementFactor({
      voltage: 120,
      current: I,
      power: cycle.sourcePower,
      quadrature: cycle.sourceQuadrature,
    })
    near(factor, 0.912, 0.0005)
    near(Math.sign(cycle.sourceQuadrature) * degrees(Math.acos(factor)), -24.22, 0.01)
    const useful = power - 80
    near(useful, 1222.75, 0.05)
    near(useful / w, 1.46, 0.005)
    near((100 * useful) / cycle.sourcePower, 63.6, 0.05)
  })
})

describe('a motor with magnets behind a half-controlled bridge', () => {
  // so much inductance that the current has no gap, as the example has it
  const K = (220 - 12.8 * 2) / radPerSecond(960)
  const bridge = { voltage: 230, rectifier: 'bridge', firingAngle: 60 } as const
  const run = (speed: number) => cycleOf({ ...bridge, resistance: 2, inductance: 1e3, constant: K, speed })

  test('at 60 deg: G. K. Dubey, Fundamentals of Electrical Drives, 2nd ed., Example 5.16', () => {
    near(run(radPerSecond(600)).torque, 32.68, 0.006)
    near(rpm(lastPlace(0, 100, (speed) => run(speed).torque >= 20)), 664.8, 0.06)
  })
})
