import { expect, test } from 'vitest'
import { meshForces, type Vector } from '../../sim/gear/mesh-forces.ts'
import { leadAngle } from '../../sim/gear/proportions.ts'
import { radians } from '../../sim/quantity/convert.ts'
import type { Given } from '../../sim/question/family.ts'
import { flankForces, onOtherSide } from '../support/flank-forces.ts'
import { near, relativelyNear } from '../support/near.ts'
import { numberAnswer, numberAsked } from '../support/question-answer.ts'
import { questionsOf } from '../support/question-check.ts'

const ROUNDING = 1e-9
const MM = 1e-3
/** Where the family gives no counts, the wheel may have any: its size is given. */
const ANY_TEETH = 20
const ANY_WORM = { z1: 1, q: 10, an: 20 }

const scaled = ([x, y, z]: Vector, by: number): Vector => [by * x, by * y, by * z]
const sum = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]

/**
 * Force [N] on a worm between two wheels without friction, from the normal of its flank on either side: each is as
 * large as turns its wheel against the load.
 */
function onWorm(given: Given): Vector {
  const { T1, T2, d2, z1, z2, q, an } = { z2: ANY_TEETH, ...ANY_WORM, ...given } as Readonly<
    Record<'T1' | 'T2' | 'd2' | 'z1' | 'z2' | 'q' | 'an', number>
  >
  const gearing = { wormStarts: z1, wheelTeeth: z2, diameterQuotient: q, pressureAngle: an }
  const { onWheel, wheelRadius } = flankForces({ ...gearing, axialModule: d2 / z2 }, 0)
  expect(wheelRadius).toBeCloseTo(d2 / 2, 9)
  const perTorque = 1 / (onWheel[2] * wheelRadius * MM)
  const left = scaled(onOtherSide(onWheel), T1 * perTorque)
  const right = scaled(onWheel, T2 * perTorque)
  return scaled(sum(left, right), -1)
}

/** The same as the picture adds it up. */
function drawnOnWorm(given: Given): Vector {
  const { T1, T2, d2, z1, q, an } = { ...ANY_WORM, ...given } as Readonly<
    Record<'T1' | 'T2' | 'd2' | 'z1' | 'q' | 'an', number>
  >
  const r2 = (d2 / 2) * MM
  const worm = { r1: r2 / 2, g: leadAngle(z1, q), alphaN: radians(an), mu: 0 }
  return meshForces({ ...worm, r2, hand: 1, wormSense: 1, leftTorque: T1, rightTorque: T2 }).wormForce
}

test('both flanks together push the worm along its axis as hard as is asked for', () => {
  for (const { question, given } of questionsOf('thrust-axial')) {
    relativelyNear(numberAnswer(question), Math.abs(onWorm(given)[2]), ROUNDING)
    relativelyNear(numberAnswer(question), Math.abs(drawnOnWorm(given)[2]), ROUNDING)
  }
})

test('both flanks together press the worm across as hard as is asked for', () => {
  for (const { question, given } of questionsOf('thrust-radial')) {
    near(numberAnswer(question), Math.abs(onWorm(given)[0]), ROUNDING)
    near(numberAnswer(question), Math.abs(drawnOnWorm(given)[0]), ROUNDING)
  }
})

test('the worked values: 40 N along the worm, nothing across it under equal loads, 5.9 N under unequal ones', () => {
  const cleaner = { z1: 1, q: 10, an: 20, d2: 40 }
  near(numberAsked('thrust-axial', { T1: 0.4, T2: 0.4, d2: 40, z2: 20 }), 40, 0.5)
  near(numberAsked('thrust-radial', { ...cleaner, T1: 0.4, T2: 0.4 }), 0, ROUNDING)
  near(numberAsked('thrust-radial', { ...cleaner, T1: 0.42, T2: 0.1 }), 5.9, 0.05)
})
