import { expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { settling } from '../../sim/drive/operating-point.ts'
import type { Gearing, Load, Machine } from '../../sim/machine/machine.ts'
import type { Given } from '../../sim/question/family.ts'
import { flankForces } from '../support/flank-forces.ts'
import { near, relativelyNear } from '../support/near.ts'
import { choiceAnswer, choiceAsked, numberAnswer, numberAsked } from '../support/question-answer.ts'
import { questionsOf } from '../support/question-check.ts'
import { crankedPair, crankedReading, lastPlaceOf } from '../support/question-machine.ts'

const ROUNDING = 1e-9
const MM = 1e-3

type Numbers = Readonly<Record<'z1' | 'z2' | 'q' | 'an' | 'mu' | 'Tc', number>>

const gearingOf = (given: Given): Partial<Gearing> => {
  const { z1, q, an } = given as Numbers
  return { wormStarts: z1, diameterQuotient: q, pressureAngle: an }
}

/** Whether the normal force on the flank turns the worm, friction against it. */
const flankTurnsWorm = (given: Given, mu: number): boolean =>
  flankForces(gearingOf(given), -mu).wormMoment > 0

const NO_LOAD: Load = { name: 'free', active: 0, passive: 0, linear: 0, quadratic: 0 }
/** Holds back what gains speed, and nothing that stands [N m s/rad] */
const SLIGHT = 1e-5

/** A pair whose hand has let go: its worm resists with Tc, and the left wheel is pushed with T [N m]. */
function pushed(given: Given, T: number): Machine {
  const { mu, Tc = 0, z2 = 20 } = given as Partial<Numbers>
  const machine = crankedPair({ ...gearingOf(given), wheelTeeth: z2, friction: mu! }, 0, 0)
  return {
    ...machine,
    rotor: { ...machine.rotor, frictionTorque: Tc, viscousTorque: SLIGHT },
    outputs: { ...machine.outputs, loads: [{ ...NO_LOAD, active: -T }, NO_LOAD] },
  }
}

function isMoved(given: Given, T: number): boolean {
  const { point, reason } = settling(compileDrive(pushed(given, T)), {
    ...firstInput(),
    connected: false,
    rightLoad: 1,
  })
  if (!point) throw new Error(reason)
  return point.speed !== 0
}

test('a pushed wheel turns the worm of the running machine or does not, as is asked for', () => {
  const seen = new Set<string>()
  for (const { question, given, level } of questionsOf('lock-choice')) {
    expect(isMoved(given, 1), JSON.stringify(given)).toBe(choiceAnswer(question) === 'turns')
    expect(flankTurnsWorm(given, (given as Numbers).mu)).toBe(choiceAnswer(question) === 'turns')
    seen.add(`${level} ${choiceAnswer(question)}`)
  }
  expect(seen.size).toBe(6)
})

test('friction is never asked about within 3 % of where it begins to hold', () => {
  for (const { given } of questionsOf('lock-choice')) {
    const { mu } = given as Numbers
    expect(flankTurnsWorm(given, mu / 0.97)).toBe(flankTurnsWorm(given, mu))
    expect(flankTurnsWorm(given, mu / 1.03)).toBe(flankTurnsWorm(given, mu))
  }
})

test('the force on the flank stops turning the worm at the friction that is asked for', () => {
  for (const { question, given } of questionsOf('lock-friction')) {
    const last = lastPlaceOf(0, 1, (mu) => flankTurnsWorm(given, mu))
    relativelyNear(numberAnswer(question), last, ROUNDING)
  }
})

test('the work that the flank does in a turn is the part of the worm’s work that is asked for', () => {
  for (const { question, given } of questionsOf('mesh-efficiency')) {
    const { mu } = given as Numbers
    const { onWheel, wormMoment, lead } = flankForces(gearingOf(given), mu)
    relativelyNear(numberAnswer(question), (100 * onWheel[2] * lead) / (wormMoment * 2 * Math.PI), ROUNDING)
    const { efficiency } = crankedReading({ ...gearingOf(given), friction: mu }, 0.4, 0.1)
    relativelyNear(numberAnswer(question), 100 * efficiency, ROUNDING)
  }
})

test('the flank of a wheel with the torque that is asked for bears the torque of the worm', () => {
  for (const { question, given } of questionsOf('back-torque')) {
    const { z2, mu, Tc } = given as Numbers
    const forces = flankForces({ ...gearingOf(given), wheelTeeth: z2 }, -mu)
    const normal = numberAnswer(question) / (forces.onWheel[2] * forces.wheelRadius * MM)
    relativelyNear(normal * forces.wormMoment * MM, Tc, ROUNDING)
  }
})

test('a wheel begins to move the running machine at the torque that is asked for', () => {
  for (const { question, given } of questionsOf('back-torque')) {
    const torque = numberAnswer(question)
    expect(isMoved(given, torque * (1 - ROUNDING)), JSON.stringify(given)).toBe(false)
    expect(isMoved(given, torque * (1 + ROUNDING)), JSON.stringify(given)).toBe(true)
  }
})

test('the worked values: 0.0940 and 0.188 hold, and 50.6, 66.3 and 73.6 % get through', () => {
  near(numberAsked('lock-friction', { z1: 1, q: 10, an: 20 }), 0.094, 0.00005)
  near(numberAsked('lock-friction', { z1: 2, q: 10, an: 20 }), 0.188, 0.0005)
  near(numberAsked('lock-friction', { z1: 1, q: 16, an: 20 }), 0.0587, 0.00005)
  const percent = [50.6, 66.3, 73.6]
  percent.forEach((value, i) =>
    near(numberAsked('mesh-efficiency', { z1: i + 1, q: 10, an: 20, mu: 0.09 }), value, 0.05),
  )
  near(numberAsked('back-torque', { z1: 1, z2: 20, q: 10, an: 20, mu: 0.09, Tc: 0.006 }), 2.9, 0.05)
})

test('the boot cleaner is not held by its mesh, and the vent opener is', () => {
  expect(choiceAsked('lock-choice', { z1: 1, q: 10, an: 20, mu: 0.09, z2: 20 })).toBe('turns')
  expect(choiceAsked('lock-choice', { z1: 1, q: 16, an: 20, mu: 0.12, z2: 36 })).toBe('holds')
})
