import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import { accelerate, senseMotion, takeInput } from '../../sim/drive/motion.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import type { Reading } from '../../sim/drive/reading.ts'
import { newReading, readAt } from '../../sim/drive/reading.ts'
import { restState } from '../../sim/drive/state.ts'
import { step } from '../../sim/drive/step.ts'
import { solveTorque } from '../../sim/drive/torque.ts'
import { arbitraryFittedRun, arbitraryPoweredRun, arbitraryRun } from '../support/arbitraries.ts'

const SEED = 20_261_125
/** Shooting brings a period back to itself to 1e-8 as required, so no balance over it is held to rounding. */
const SHOT = 1e-9
/** Worm speed [rad/s] */
const speeds = fc.integer({ min: -800_000, max: 800_000 }).map((thousandths) => thousandths / 1000)

/** The acceleration [rad/s2] that the equation of motion gives at a worm speed; a cranked worm takes any. */
function accelerationAt(drive: Drive, input: DriveInput, speed: number): number {
  takeInput(drive, input)
  drive.work.speed = input.sense * speed
  drive.work.acceleration = 0
  senseMotion(drive.work)
  if (drive.work.motion === 0) return 0
  solveTorque(drive, input)
  accelerate(drive, input)
  return input.sense * drive.work.acceleration
}

/** How far a run from standstill is from a speed when it is nearest to it, at the latest after 400 s [rad/s]. */
function missAfter(drive: Drive, input: DriveInput, speed: number): number {
  const state = restState()
  const miss = () => Math.abs(state.speed - speed)
  for (let n = 0; n < 240 * 400 && miss() > 1e-6 * Math.abs(speed); n++) step(state, drive, input, 1 / 240)
  return miss()
}

/** Everything that motor torque becomes beyond the motor [W] */
const shaftPower = (reading: Reading): number =>
  reading.frictionLoss +
  reading.fanLoss +
  reading.meshLossLeft +
  reading.meshLossRight +
  reading.bearingLossLeft +
  reading.bearingLossRight +
  reading.outputLeft +
  reading.outputRight +
  reading.storedRate

const numbersOf = (reading: Reading): (readonly [string, number])[] =>
  Object.entries(reading).filter((entry): entry is [string, number] => typeof entry[1] === 'number')

const throughput = (reading: Reading): number =>
  Math.abs(reading.inputPower) +
  reading.coreLoss +
  Math.abs(reading.storedRate) +
  Math.abs(reading.motorTorque * reading.wormSpeed)

describe(`over random machines, seed ${SEED}`, () => {
  test('ledger: of the input of 1000 valid motor drives, less than 1e-11 is not accounted for in steady running', () => {
    let running = 0
    fc.assert(
      fc.property(arbitraryPoweredRun, ([machine, input]) => {
        const steady = operatingPoint(compileDrive(machine), input)
        if (steady === null) return
        running++
        const { residual, inputPower, coreLoss } = steady.reading
        // A load that drives the motor can take the input away; what is stored is 0 in steady running.
        const flow = Math.max(Math.abs(inputPower) + coreLoss, Math.abs(steady.reading.outputLeft))
        expect(Math.abs(residual)).toBeLessThanOrEqual(1e-11 * flow)
      }),
      { seed: SEED, numRuns: 1000 },
    )
    expect(running).toBeGreaterThan(900)
  })

  test('the wall gives more than a secondary takes, and no more than volts times amperes', () => {
    fc.assert(
      fc.property(arbitraryPoweredRun, ([machine, input]) => {
        const steady = operatingPoint(compileDrive(machine), input)
        if (steady === null || machine.supply.kind !== 'mains') return
        const { wallPower, powerFactor, inputPower } = steady.reading
        expect(powerFactor).toBeGreaterThan(0)
        expect(powerFactor).toBeLessThanOrEqual(1 + 1e-12)
        if (machine.transformer) expect(wallPower).toBeGreaterThan(inputPower)
        else expect(wallPower).toBe(inputPower)
      }),
      { seed: SEED, numRuns: 300 },
    )
  })

  test('what comes in is what goes out, is lost or is stored, at any speed', () => {
    fc.assert(
      fc.property(arbitraryRun, speeds, ([machine, input], speed) => {
        const drive = compileDrive(machine)
        const reading = readAt(newReading(), drive, input, speed, accelerationAt(drive, input, speed))
        const allowed = drive.tables[input.setting] ? SHOT : 1e-11
        expect(Math.abs(reading.residual)).toBeLessThanOrEqual(allowed * throughput(reading))
      }),
      { seed: SEED, numRuns: 1000 },
    )
  })

  test('every reading is a finite number and no loss gives power, at any speed, at rest and in a jam', () => {
    const states = fc.tuple(
      arbitraryRun,
      fc.oneof(speeds, fc.constant(0)),
      fc.constantFrom('none', 'left', 'right'),
    )
    fc.assert(
      fc.property(states, ([[machine, input], speed, jammed]) => {
        const drive = compileDrive(machine)
        const asked = { ...input, jammed }
        const reading = readAt(newReading(), drive, asked, speed, accelerationAt(drive, asked, speed))
        for (const [name, value] of numbersOf(reading)) expect(Number.isFinite(value), name).toBe(true)
        const rounding =
          -1e-11 * (throughput(reading) + Math.abs(reading.outputLeft) + Math.abs(reading.outputRight))
        for (const [name, value] of numbersOf(reading))
          if (name.includes('Loss')) expect(value, name).toBeGreaterThanOrEqual(rounding)
      }),
      { seed: SEED, numRuns: 1000 },
    )
  })

  test('the acceleration solves the equation of motion with the torques that the reading shows', () => {
    fc.assert(
      fc.property(arbitraryRun, speeds, ([machine, input], speed) => {
        const drive = compileDrive(machine)
        const wrong = accelerationAt(drive, input, speed) + 100
        const reading = readAt(newReading(), drive, input, speed, wrong)
        const prescribed = drive.crankSpeeds.length > 0 && input.connected
        const closes = Math.abs(reading.residual) <= 1e-11 * throughput(reading)
        expect(closes).toBe(prescribed || speed === 0)
      }),
      { seed: SEED, numRuns: 300 },
    )
  })

  test('a drive left to itself comes to where it settles', () => {
    fc.assert(
      fc.property(arbitraryRun, ([machine, input]) => {
        const drive = compileDrive({ ...machine, protection: { kind: 'none' } })
        const point = operatingPoint(drive, input)
        if (!point) {
          expect(drive.notComputed).not.toBeNull()
          return
        }
        expect(missAfter(drive, input, point.speed)).toBeLessThanOrEqual(1e-6 * Math.abs(point.speed))
      }),
      { seed: SEED, numRuns: 100 },
    )
  })

  test('turning the supply round mirrors everything on a machine without weights', () => {
    fc.assert(
      fc.property(arbitraryRun, speeds, ([machine, input], speed) => {
        const loads = machine.outputs.loads.map((load) => ({ ...load, active: 0 }))
        const drive = compileDrive({ ...machine, outputs: { ...machine.outputs, loads } })
        const there = readAt(newReading(), drive, { ...input, sense: 1 }, speed, 1)
        const back = readAt(newReading(), drive, { ...input, sense: -1 }, -speed, -1)
        for (const name of ['wormSpeed', 'leftSpeed', 'rightSpeed'] as const) back[name] *= -1
        // Adding 0 makes negative zeros plain, which say the same.
        const mirrored = new Map(numbersOf(back))
        for (const [name, value] of numbersOf(there)) expect(mirrored.get(name)! + 0, name).toBe(value + 0)
      }),
      { seed: SEED, numRuns: 200 },
    )
  })

  test('wheels with the same load share everything equally', () => {
    fc.assert(
      fc.property(arbitraryRun, speeds, ([machine, input], speed) => {
        const drive = compileDrive(machine)
        const alike = { ...input, rightLoad: input.leftLoad }
        const reading = readAt(newReading(), drive, alike, speed, accelerationAt(drive, alike, speed))
        expect(reading.leftTorque).toBe(reading.rightTorque)
        expect(reading.meshLossLeft).toBe(reading.meshLossRight)
        expect(reading.leftSpeed).toBe(0 - reading.rightSpeed)
      }),
      { seed: SEED, numRuns: 200 },
    )
  })

  test('no weight turns a self-locking drive back', () => {
    fc.assert(
      fc.property(arbitraryRun, ([machine, input]) => {
        const drive = compileDrive({
          ...machine,
          gearing: { ...machine.gearing, wormStarts: 1, friction: 0.2 },
        })
        expect(drive.backwardEfficiency).toBeLessThan(0)
        const state = restState()
        for (let n = 0; n < 240; n++) step(state, drive, { ...input, connected: false }, 1 / 240)
        expect(state.speed).toBe(0)
        expect(state.turns.turns).toBe(0)
      }),
      { seed: SEED, numRuns: 100 },
    )
  })

  test('shooting: in 100 machines of any chain the input is accounted for, at and beside solved speeds', () => {
    let running = 0
    fc.assert(
      fc.property(arbitraryFittedRun, speeds, ([machine, input], speed) => {
        const drive = compileDrive(machine)
        const reading = readAt(newReading(), drive, input, speed, accelerationAt(drive, input, speed))
        expect(Math.abs(reading.residual)).toBeLessThanOrEqual(SHOT * throughput(reading))
        if (reading.currentRms > 0) running++
        readAt(reading, drive, input, speed, 0)
        const lacking = reading.motorTorque * speed * input.sense - shaftPower(reading)
        const flow = throughput(reading) + Math.abs(lacking)
        expect(Math.abs(reading.residual - lacking)).toBeLessThanOrEqual(SHOT * flow)
      }),
      { seed: SEED, numRuns: 100 },
    )
    expect(running).toBeGreaterThan(50)
  })

  test('machines of any chain, left to themselves, come to where they settle', () => {
    fc.assert(
      fc.property(arbitraryFittedRun, ([machine, input]) => {
        const drive = compileDrive({ ...machine, protection: { kind: 'none' } })
        const point = operatingPoint(drive, input)
        if (point)
          expect(missAfter(drive, input, point.speed)).toBeLessThanOrEqual(1e-6 * Math.abs(point.speed))
      }),
      { seed: SEED, numRuns: 40 },
    )
  })
})
