import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Estimate } from '../../../sim/measuring/comparison.ts'
import { fitHeatingCurve } from '../../../sim/measuring/heating-fit.ts'
import { identifyLosses } from '../../../sim/measuring/loss-fit.ts'
import { identifyMotor } from '../../../sim/measuring/motor-fit.ts'
import type { ReadingProblem } from '../../../sim/measuring/reading-problem.ts'
import { identifySeriesMotor } from '../../../sim/measuring/series-motor-fit.ts'

const SEED = 20_264
const RUNS = 400

const anyNumber = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: -1e3, max: 1e3, noNaN: true }) },
  { weight: 1, arbitrary: fc.double() },
  { weight: 1, arbitrary: fc.constantFrom(0, -0, Number.NaN, Infinity, 5e-324, 1e300) },
)
const someNumber = fc.double({ min: -1e3, max: 1e3, noNaN: true })
const someUncertainty = fc.double({ min: 1e-6, max: 10, noNaN: true })
const rowOf = (value: fc.Arbitrary<number>, uncertainty: fc.Arbitrary<number>) =>
  fc.record({
    voltage: value,
    voltageUncertainty: uncertainty,
    current: value,
    currentUncertainty: uncertainty,
    speed: value,
    speedUncertainty: uncertainty,
  })
const anyRows = fc.oneof(
  fc.array(rowOf(anyNumber, anyNumber), { maxLength: 8 }),
  fc.array(rowOf(someNumber, someUncertainty), { minLength: 2, maxLength: 8 }),
)
const temperaturesOf = (value: fc.Arbitrary<number>, uncertainty: fc.Arbitrary<number>) =>
  fc.array(fc.record({ time: value, temperature: value, uncertainty }), { maxLength: 8 })

/** Either an error and no result, or a result all of whose numbers are numbers. */
function honest(identity: {
  readonly fit: object | null
  readonly problems: readonly ReadingProblem[]
}): void {
  const refused = identity.problems.some(({ severity }) => severity === 'error')
  expect(identity.fit === null).toBe(refused)
  if (!identity.fit) return
  for (const part of Object.values(identity.fit) as (number | Estimate)[]) {
    if (typeof part !== 'object' || !('value' in part)) continue
    expect(Number.isFinite(part.value)).toBe(true)
    expect(part.uncertainty).toBeGreaterThanOrEqual(0)
    expect(Number.isFinite(part.uncertainty)).toBe(true)
  }
}

test(`any rows give a motor or a reason, and never throw (${RUNS} sets, seed ${SEED})`, () => {
  const law = fc.property(anyRows, anyNumber, (rows, number) => {
    honest(identifyMotor(rows, number))
    honest(identifyMotor(rows, null))
    honest(identifyLosses(rows, number))
    honest(identifySeriesMotor(rows, number))
  })
  fc.assert(law, { seed: SEED, numRuns: RUNS })
})

test(`any temperatures give a curve or a reason, and never throw (${RUNS} sets, seed ${SEED})`, () => {
  const rows = fc.oneof(temperaturesOf(anyNumber, anyNumber), temperaturesOf(someNumber, someUncertainty))
  fc.assert(
    fc.property(rows, (each) => honest(fitHeatingCurve(each))),
    { seed: SEED, numRuns: RUNS },
  )
})
