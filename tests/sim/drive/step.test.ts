import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import type { DriveInput } from '../../../sim/drive/input.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { operatingPoint } from '../../../sim/drive/operating-point.ts'
import { copyState, restState } from '../../../sim/drive/state.ts'
import { step } from '../../../sim/drive/step.ts'
import { wormTurnsValue } from '../../../sim/drive/turns.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { directCurrentMachine, RPM } from '../../support/direct-current.ts'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../../support/machines.ts'
import { between, near, relativelyNear } from '../../support/near.ts'

const DT = 1 / 240

function runFor(machine: Machine, input: DriveInput, seconds: number, state = restState()) {
  const drive = compileDrive(machine)
  for (let n = 0; n < Math.round(seconds / DT); n++) step(state, drive, input, DT)
  return state
}

describe('a start', () => {
  test('pictures at 30, 60 and 144 a second lead to the same state to the last bit', () => {
    const drive = compileDrive(bootCleaner)
    const ends = [30, 60, 144].map((hertz) => {
      const state = restState()
      let [due, done] = [0, 0]
      for (let picture = 1; picture <= 2 * hertz; picture++) {
        due = Math.floor((picture * 240) / hertz)
        for (; done < due; done++) step(state, drive, firstInput(), DT)
      }
      return state
    })
    expect(ends[1]).toEqual(ends[0])
    expect(ends[2]).toEqual(ends[0])
    expect(ends[0]!.time).toBe(2)
  })

  test.each([
    ['boot cleaner', bootCleaner, 4, 3],
    ['vent opener', ventOpener, 3, 3],
    ['cord winder', cordWinder, 4, 4],
    ['cord winder', cordWinder, 0, 8],
  ])('of the %s ends at its operating point', (_, machine, setting, seconds) => {
    const input = { ...firstInput(), setting }
    const { speed } = operatingPoint(compileDrive(machine), input)!
    relativelyNear(runFor(machine, input, seconds).speed, speed, 1e-6)
  })

  test('of the boot cleaner on step 5 passes close to 424 rad/s at 0.1 s, as integrated mains waves do', () => {
    // Means over half cycles start as if the waves were settled, so they are allowed a mains half cycle's
    // gain.
    const input = { ...firstInput(), setting: 4 }
    between(424, runFor(bootCleaner, input, 0.09).speed, runFor(bootCleaner, input, 0.11).speed)
  })

  test('halving the step changes the speed by the fourth order', () => {
    const machine = directCurrentMachine({
      voltage: 12,
      resistance: 1.4,
      constant: 0.035,
      torque: 0.01,
      inertia: 1e-4,
    })
    const drive = compileDrive(machine)
    const exact = (time: number) => {
      const tau = (1e-4 * 1.4) / 0.035 ** 2
      const final = 12 / 0.035 - (1.4 * 0.01) / 0.035 ** 2
      return final * -Math.expm1(-time / tau)
    }
    const miss = (dt: number) => {
      const state = restState()
      for (let n = 0; n < Math.round(0.1 / dt); n++) step(state, drive, firstInput(), dt)
      return Math.abs(state.speed - exact(0.1))
    }
    between(Math.log2(miss(1 / 250) / miss(1 / 500)), 3.8, 4.3)
  })
})

describe('standstill', () => {
  test('a boot cleaner that is unplugged coasts to rest, and stays', () => {
    const input = { ...firstInput(), setting: 4 }
    const state = runFor(bootCleaner, input, 3)
    runFor(bootCleaner, { ...input, connected: false }, 1, state)
    expect(state.speed).toBe(0)
    expect(state.acceleration).toBe(0)
    const { turns } = copyState(restState(), state)
    runFor(bootCleaner, { ...input, connected: false }, 1, state)
    expect(state.turns).toEqual(turns)
  })

  test('coasting under dry friction stops exactly where it should', () => {
    const constant = 0.035
    const machine = directCurrentMachine({
      voltage: 12,
      resistance: 1.4,
      constant,
      torque: 0.01,
      inertia: 1e-4,
    })
    const state = { ...restState(), speed: 321.1 }
    runFor(machine, { ...firstInput(), connected: false }, 4, state)
    expect(state.speed).toBe(0)
    relativelyNear(wormTurnsValue(state.turns), 321.1 ** 2 / (2 * 100) / (2 * Math.PI), 1e-12)
  })

  test.each([1, -1] as const)(
    'friction holds 0.999 of the motor torque and lets go at 1.001 of it, sense %d',
    (sense) => {
      const stall = (12 / 1.4) * 0.035
      const speedWith = (torque: number) => {
        const machine = directCurrentMachine({ voltage: 12, resistance: 1.4, constant: 0.035, torque })
        return sense * runFor(machine, { ...firstInput(), sense }, 0.1).speed + 0
      }
      expect(speedWith(stall / 0.999)).toBe(0)
      expect(speedWith(stall / 1.001)).toBeGreaterThan(0)
    },
  )

  test.each(['left', 'right'] as const)('a jam of the %s wheel stops both within two turns', (jammed) => {
    const input = { ...firstInput(), setting: 4 }
    const state = runFor(bootCleaner, input, 1)
    const before = wormTurnsValue(state.turns)
    runFor(bootCleaner, { ...input, jammed }, 0.05, state)
    expect(state.speed).toBe(0)
    const stopped = wormTurnsValue(state.turns)
    between(stopped - before, 0.5, 2)
    runFor(bootCleaner, { ...input, jammed }, 1, state)
    expect(wormTurnsValue(state.turns)).toBe(stopped)
    runFor(bootCleaner, input, 1, state)
    expect(state.speed).toBeGreaterThan(100)
  })

  test('a jam that is weaker than the motor slips, and the drive goes on at the speed where it settles', () => {
    const weak: Machine = { ...bootCleaner, outputs: { ...bootCleaner.outputs, jamTorque: 0.5 } }
    const input = { ...firstInput(), setting: 4, jammed: 'left' as const }
    const { speed } = operatingPoint(compileDrive(weak), input)!
    expect(speed).toBeGreaterThan(100)
    relativelyNear(runFor(weak, input, 3).speed, speed, 1e-6)
  })

  test('without friction to speed it up, a jam stops a coasting drive in the time of its torque', () => {
    const machine: Machine = {
      ...directCurrentMachine({ voltage: 12, resistance: 1.4, constant: 0.035, inertia: 1e-4 }),
      gearing: { ...ventOpener.gearing, friction: 0 },
    }
    const jammed = { ...machine, outputs: { ...machine.outputs, jamTorque: 0.36 } }
    const state = { ...restState(), speed: 300 }
    // 0.36 N m at the wheel are 0.01 N m at the worm: 100 rad/s2, so 3 s and 450 rad.
    runFor(jammed, { ...firstInput(), connected: false, jammed: 'left' }, 2.9, state)
    near(state.speed, 10, 1e-9)
    runFor(jammed, { ...firstInput(), connected: false, jammed: 'left' }, 0.2, state)
    expect(state.speed).toBe(0)
    relativelyNear(wormTurnsValue(state.turns), 450 / (2 * Math.PI), 1e-9)
  })

  test.each([1, -1] as const)('a breakaway factor counts at leaving standstill only, sense %d', (sense) => {
    const stall = (12 / 1.4) * 0.035
    const machine = (factor: number, torque: number): Machine => {
      const plain = directCurrentMachine({ voltage: 12, resistance: 1.4, constant: 0.035, torque })
      return { ...plain, rotor: { ...plain.rotor, breakaway: factor } }
    }
    const after = (factor: number, torque: number, speed = 0) =>
      runFor(machine(factor, torque), { ...firstInput(), sense }, 0.2, { ...restState(), speed })
    expect(after(2, stall / 1.999).speed).toBe(0)
    expect(sense * after(2, stall / 2.001).speed).toBeGreaterThan(10)
    // Once it runs, it runs as it would without.
    const [sticky, smooth] = [after(2, stall / 1.9, sense * 50), after(1, stall / 1.9, sense * 50)]
    expect(sticky.speed).toBe(smooth.speed)
    expect(Math.abs(smooth.speed)).toBeGreaterThan(10)
  })

  test('the vents stay open when the motor is off, and need the motor to close', () => {
    expect(runFor(ventOpener, { ...firstInput(), connected: false }, 1).speed).toBe(0)
    expect(runFor(ventOpener, { ...firstInput(), sense: -1 }, 1).speed).toBeLessThan(-50)
  })

  test('turning the polarity round under way goes through zero to the mirrored speed', () => {
    const forward = { ...firstInput(), setting: 3 }
    const state = runFor(ventOpener, forward, 1)
    const backward = { ...forward, sense: -1 } as const
    runFor(ventOpener, backward, 2, state)
    relativelyNear(state.speed, operatingPoint(compileDrive(ventOpener), backward)!.speed, 1e-6)
  })
})

describe('the crank', () => {
  test('comes to 60 r/min in 0.3 s and then turns once a second', () => {
    const state = runFor(classroomModel, firstInput(), 0.15)
    near(state.speed, 30 * RPM, 1e-9)
    runFor(classroomModel, firstInput(), 0.15, state)
    near(state.speed, 60 * RPM, 1e-9)
    const before = wormTurnsValue(state.turns)
    near(before, 0.15, 1e-9)
    runFor(classroomModel, firstInput(), 10, state)
    near(wormTurnsValue(state.turns) - before, 10, 1e-9)
  })

  test('let go, the model stops', () => {
    const state = runFor(classroomModel, firstInput(), 1)
    runFor(classroomModel, { ...firstInput(), connected: false }, 2, state)
    expect(state.speed).toBe(0)
  })
})

test('a drive that is not computed stands still while time goes on', () => {
  const state = runFor({ ...bootCleaner, rectifier: null }, firstInput(), 1)
  expect(state.speed).toBe(0)
  expect(state.time).toBe(1)
})

test('time is the number of steps, also after the step has changed', () => {
  const drive = compileDrive(bootCleaner)
  const state = restState()
  for (let n = 0; n < 240 * 60; n++) step(state, drive, firstInput(), DT)
  expect(state.time).toBe(60)
  for (let n = 0; n < 1000; n++) step(state, drive, firstInput(), 1 / 1000)
  expect(state.time).toBe(61)
})
