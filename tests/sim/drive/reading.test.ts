import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { newReading, readAt, readState } from '../../../sim/drive/reading.ts'
import { restState } from '../../../sim/drive/state.ts'
import { step } from '../../../sim/drive/step.ts'
import { bootCleaner, ventOpener } from '../../support/machines.ts'
import { near, relativelyNear } from '../../support/near.ts'

const drive = compileDrive(bootCleaner)
const read = (speed: number, acceleration = 0, input = firstInput()) =>
  readAt(newReading(), drive, input, speed, acceleration)

test('a right-hand worm turning about +z turns the right wheel backward and the left wheel forward about +y', () => {
  const reading = read(200)
  near(reading.rightSpeed, -10, 1e-12)
  near(reading.leftSpeed, 10, 1e-12)
})

test('the efficiency is that from the wall, with the iron losses in it', () => {
  const reading = read(200)
  const outputs = reading.outputLeft + reading.outputRight
  relativelyNear(reading.efficiency, outputs / reading.wallPower, 1e-12)
  relativelyNear(reading.wallPower, reading.inputPower + 230 ** 2 / 15_000, 1e-12)
})

test('mean voltage at the brushes is what the source leaves: emf, copper and brushes while current flows', () => {
  const { motorVoltage, currentMean } = read(0)
  near(motorVoltage, 1.6 + 1.1 * currentMean, 1e-12)
})

test('unplugged, a coasting machine takes nothing and its losses come out of its motion', () => {
  const reading = read(300, 0, { ...firstInput(), connected: false })
  expect([reading.wallPower, reading.wallCurrent, reading.currentMean]).toEqual([0, 0, 0])
  expect(reading.wallVoltage).toBe(230)
  expect(reading.frictionLoss + reading.meshLossLeft).toBeGreaterThan(0)
})

test('a reading of the state is the reading at its speed and acceleration', () => {
  const state = restState()
  for (let n = 0; n < 10; n++) step(state, drive, firstInput(), 1 / 240)
  const direct = read(state.speed, state.acceleration)
  expect(readState(newReading(), drive, firstInput(), state)).toEqual({ ...direct, fuse: state.fuse })
  expect(direct.storedRate).toBeGreaterThan(0)
})

test('a closing vent drives its outputs, and still costs motor power through the locking mesh', () => {
  const vents = compileDrive(ventOpener)
  const reading = readAt(newReading(), vents, { ...firstInput(), sense: -1 }, -100, 0)
  expect(reading.outputLeft).toBeLessThan(0)
  expect(reading.meshLossLeft).toBeGreaterThan(-reading.outputLeft)
  expect(reading.efficiency).toBe(0)
})

test('what is not computed reads as nothing, and never as NaN', () => {
  const reading = readAt(newReading(), compileDrive({ ...bootCleaner, rectifier: null }), firstInput(), 0, 0)
  for (const value of Object.values(reading)) expect(value).not.toBeNaN()
  expect(reading.wallPower).toBe(0)
})

test('loads and steps that a machine does not have read as no load and no supply', () => {
  const reading = read(100, 0, { ...firstInput(), setting: 99, leftLoad: 99 })
  expect([reading.leftTorque, reading.inputPower]).toEqual([0, 0])
})

test('an input that has just changed is read with what it does, not with the motion before', () => {
  const input = { ...firstInput(), setting: 4 }
  const state = restState()
  for (let n = 0; n < 960; n++) step(state, drive, input, 1 / 240)
  const out = newReading()
  for (const change of [
    { connected: false },
    { leftLoad: 1 },
    { setting: 0 },
    { connected: true, setting: 4 },
  ]) {
    readState(out, drive, { ...input, ...change }, state)
    expect(Math.abs(out.residual)).toBeLessThan(1e-9)
  }
  readState(out, drive, { ...input, jammed: 'left' }, state)
  expect(out.wormSpeed).toBe(state.speed)
  near(out.leftTorque - out.rightTorque, bootCleaner.outputs.jamTorque, 1e-12)
  expect(out.storedRate).toBeLessThan(-100)
  expect(Math.abs(out.residual)).toBeLessThan(1e-9)
})
