/** Speeds and currents that are asked for, against a machine that is run: wheel counted, motor settled, current followed. */
import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { restState } from '../../sim/drive/state.ts'
import { step } from '../../sim/drive/step.ts'
import { leftWheelAngle } from '../../sim/pose/pose.ts'
import { machineLayout } from '../../sim/pose/layout.ts'
import { familyNamed } from '../../sim/question/bank.ts'
import { questionWith } from '../../sim/question/instance.ts'
import { directCurrentMachine, RPM } from '../support/direct-current.ts'
import { valueAfter } from '../support/follow-rate.ts'
import { classroomModel } from '../support/machines.ts'
import { near, relativelyNear } from '../support/near.ts'
import { answerOf, causeOf, eachOf, numbersOf } from '../support/question-answers.ts'

const MINUTE = 60 // [s]

/** A hand keeps the worm at n for a minute; the left wheel's mark is counted, and where it stands at the end. */
function turnsInMinute(z1: number, z2: number, n: number): number {
  const gearing = { ...classroomModel.gearing, wormStarts: z1, wheelTeeth: z2 }
  const machine = { ...classroomModel, gearing, control: { kind: 'crank', steps: [{ speed: n }] } } as const
  const drive = compileDrive(machine)
  const layout = machineLayout(machine)
  const state = restState()
  state.speed = n * RPM
  // A wheel of 12 teeth or more goes on by a third of a turn at most while a worm of up to 4 starts turns once.
  const steps = n
  let passes = 0
  let before = 0
  for (let i = 0; i < steps; i++) {
    step(state, drive, firstInput(), MINUTE / steps)
    const place = Math.abs(leftWheelAngle(layout, state.turns)) / (2 * Math.PI)
    if (place < before) passes++
    before = place
  }
  return passes + before
}

describe('wheel-speed', () => {
  test.each([
    [450, 'right'],
    [20000, 'inverted'],
    [150, 'no-starts'],
    [225, 'halved'],
    [50, 'times-starts'],
    [333, null],
  ])('takes %f for what it comes from: %s, worked by hand', (value, cause) => {
    expect(causeOf('wheel-speed', { z1: 3, z2: 20, n: 3000 }, value)).toBe(cause)
  })
  test('is what the mark of the left wheel is counted to in a minute', { timeout: 60_000 }, () => {
    eachOf('wheel-speed', ({ z1, z2, n }, answer) =>
      relativelyNear(turnsInMinute(z1!, z2!, n!), answer, 1e-9),
    )
  })
  test('of machine A at its fastest setting', () => {
    near(answerOf('wheel-speed', { z1: 1, z2: 20, n: 5051 }), 252.55, 1e-9)
  })
})

describe('speed-volts', () => {
  test.each([
    [4535.9, 'right'],
    [5252.1, 'no-resistance'],
    [5013.4, 'no-brush-drop'],
    [5729.6, 'volts-only'],
    [475, 'rad-as-rpm'],
  ])('takes %f for what it comes from: %s, worked by hand', (value, cause) => {
    expect(causeOf('speed-volts', { V: 24, vb: 2, R: 1, I: 3, ke: 0.04 }, value)).toBe(cause)
  })
  test('is where a motor with this current settles', () => {
    eachOf('speed-volts', ({ V, vb, R, I, ke }, answer) => {
      const machine = directCurrentMachine({
        voltage: V!,
        brushDrop: vb!,
        resistance: R!,
        constant: ke!,
        torque: ke! * I!,
      })
      const point = operatingPoint(compileDrive(machine), firstInput())!
      near(point.reading.currentMean, I!, 1e-6 * I!)
      relativelyNear(point.speed / RPM, answer, 1e-6)
    })
  })
})

describe('stall-current', () => {
  test.each([
    [11, 'right'],
    [12, 'no-brush-drop'],
    [44, 'product'],
    [0, 'no-current'],
  ])('takes %f for what it comes from: %s, worked by hand', (value, cause) => {
    expect(causeOf('stall-current', { V: 24, vb: 2, R: 2 }, value)).toBe(cause)
  })
  test('is where the current of a locked winding settles', () => {
    eachOf('stall-current', ({ V, vb, R }, answer) => {
      const L = 0.01
      const current = valueAfter((i) => (V! - vb! - R! * i) / L, 0, (40 * L) / R!)
      relativelyNear(current, answer, 1e-7)
    })
  })
})

test('what is given stays in the ranges that the bank promises', () => {
  for (const { z1, z2, n } of numbersOf('wheel-speed')) {
    expect(z1! >= 1 && z1! <= 4 && z2! >= 12 && z2! <= 60 && n! >= 200 && n! <= 12_000).toBe(true)
  }
  for (const { V, vb } of [...numbersOf('speed-volts'), ...numbersOf('stall-current')])
    expect(V! >= 6 && V! <= 30 && vb! >= 0.6 && vb! <= 2).toBe(true)
})

test('the stage takes on the counts', () => {
  const family = familyNamed('wheel-speed')!
  const { gearing } = questionWith(family, { z1: 3, z2: 29, n: 745 })
  expect(gearing).toEqual({ wormStarts: 3, wheelTeeth: 29 })
})
