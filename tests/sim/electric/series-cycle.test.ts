import { expect, test } from 'vitest'
import { DESCRIBED_WARMTH, compileCircuits } from '../../../sim/drive/circuits.ts'
import type { Circuit } from '../../../sim/electric/circuit.ts'
import type { CurrentCycle } from '../../../sim/electric/cycle.ts'
import { newCycle } from '../../../sim/electric/cycle.ts'
import { seriesOf, solveSeries } from '../../../sim/electric/series-cycle.ts'
import { newSteadyWork, solveCycle } from '../../../sim/electric/steady-cycle.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { cordWinder } from '../../support/machines.ts'
import { relativelyNear } from '../../support/near.ts'

const circuitsOf = (machine: Machine) => compileCircuits(machine, DESCRIBED_WARMTH)
const fired = (angles: readonly number[]): readonly Circuit[] =>
  circuitsOf({
    ...cordWinder,
    control: { kind: 'phase', switchDrop: 1.2, steps: angles.map((angle) => ({ angle })) },
  })
const halves = circuitsOf({
  ...cordWinder,
  control: { kind: 'half-wave', diodeDrop: 0.9, freewheel: 'none', steps: [{ waves: 1 }, { waves: 2 }] },
})

function series(circuit: Circuit, speed: number): CurrentCycle {
  const cycle = newCycle()
  const given = seriesOf(circuit)!
  given.pulse.speed = speed
  expect(solveSeries(cycle, given)).toBe(true)
  return cycle
}

const MEANS = [
  'mean',
  'square',
  'peak',
  'torque',
  'sourcePower',
  'sourceQuadrature',
  'conducting',
  'motorVoltage',
] as const

/** Two solutions of one circuit that share no code: Taylor series of a pulse, shooting with Runge and Kutta. */
test.each([0, 30, 60, 90, 120, 150])('fired at %d deg, a pulse agrees with shooting to 1e-8', (angle) => {
  const [circuit] = fired([angle])
  const work = newSteadyWork()
  for (const speed of [0, 1, 30, 300, 1200, 5000]) {
    const shot = newCycle()
    solveCycle(shot, circuit!, speed, work)
    const pulse = series(circuit!, speed)
    for (const name of MEANS) relativelyNear(pulse[name], shot[name], 1e-8)
  }
})

test.each([0, 1])('with a diode, or without anything, it does so too: %d', (step) => {
  const work = newSteadyWork()
  for (const speed of [0, 100, 1000]) {
    const shot = newCycle()
    solveCycle(shot, halves[step]!, speed, work)
    const pulse = series(halves[step]!, speed)
    for (const name of MEANS) relativelyNear(pulse[name], shot[name], 1e-8)
  }
})

test('power in is what is lost and what becomes torque, whether the current has gaps or not', () => {
  for (const circuit of [...fired([0, 20, 45, 90, 150, 174]), ...halves])
    for (let speed = 0; speed < 3000; speed += 61) {
      const cycle = series(circuit, speed)
      const { source, triac, winding, diodeDrops } = circuit
      const lost =
        (source.resistance + winding.resistance) * cycle.square +
        (winding.brushDrop + (triac?.drop ?? 0) + diodeDrops) * cycle.mean
      relativelyNear(lost + cycle.torque * speed, cycle.sourcePower, 1e-11)
    }
})

test('a triac that fires at once is as good as none but for its drop', () => {
  const [whole] = circuitsOf({
    ...cordWinder,
    control: { kind: 'phase', switchDrop: 0, steps: [{ angle: 0 }] },
  })
  for (const speed of [0, 500, 1300]) {
    const [with0, without] = [series(whole!, speed), series(halves[1]!, speed)]
    for (const name of MEANS) relativelyNear(with0[name], without[name], 1e-12)
  }
})

test('the firing angle goes to 0 without a jump, and what fires later drives less', () => {
  const near0 = series(fired([0.001])[0]!, 800)
  const at0 = series(fired([0])[0]!, 800)
  relativelyNear(near0.torque, at0.torque, 1e-6)
  const torques = fired([0, 30, 60, 90, 120, 150]).map((circuit) => series(circuit, 800).torque)
  expect(torques.toSorted((a, b) => b - a)).toEqual(torques)
})

test('saturation beyond all currents is none: the linear motor is a resistance that grows with speed', () => {
  const { motor } = cordWinder
  if (motor?.kind !== 'universal') throw new Error('needs a series motor')
  const linear = (saturationCurrent: number) =>
    series(circuitsOf({ ...cordWinder, motor: { ...motor, saturationCurrent } })[4]!, 900)
  const [far, farther] = [linear(1e9), linear(1e12)]
  for (const name of MEANS) relativelyNear(far[name], farther[name], 1e-8)
  // T = k0 i^2 at any instant, so its mean is that of the square.
  relativelyNear(farther.torque, motor.emfConstant * farther.square, 1e-11)
  // The same current as through resistance and inductance alone, with k0 w added to the resistance.
  const added = motor.emfConstant * 900
  const still = circuitsOf({
    ...cordWinder,
    motor: { ...motor, saturationCurrent: 1e12, resistance: motor.resistance + added },
  })[4]!
  relativelyNear(series(still, 0).mean, farther.mean, 1e-11)
})

test('no current flows where the source stays below the drops', () => {
  const weak = { ...fired([60])[0]!, source: { ...fired([60])[0]!.source, emf: 3 } }
  expect(series(weak, 0).square).toBe(0)
  expect(series(fired([179.9])[0]!, 100).square).toBe(0)
})

test('turned the wrong way fast enough, the motor excites itself, and its losses come from the shaft', () => {
  const [circuit] = fired([90])
  const { winding, source, triac } = circuit!
  const cycle = series(circuit!, -20_000)
  const lost =
    (source.resistance + winding.resistance) * cycle.square + (winding.brushDrop + triac!.drop) * cycle.mean
  expect(cycle.conducting).toBe(1)
  relativelyNear(lost, 20_000 * cycle.torque, 1e-12)
})
