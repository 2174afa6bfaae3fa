/** Printed uncertainties of readings, of products of readings, and of meters. GUM is JCGM 100:2008. */
import { describe, expect, test } from 'vitest'
import {
  combinedUncertainty,
  covarianceOf,
  digitUncertainty,
  instrument,
  limitOfError,
  readingUncertainty,
  rectangularUncertainty,
  sensitivities,
  worstCaseLimit,
} from '../../sim/measuring/uncertainty.ts'
import { near } from '../support/near.ts'

describe('resistance and reactance from correlated readings: GUM H.2, printed page seen', () => {
  const inputs = [4.999, 0.019661, 1.04446]
  const u = [0.0032, 9.5e-6, 0.00075]
  const correlations = [
    [1, -0.36, 0.86],
    [-0.36, 1, -0.65],
    [0.86, -0.65, 1],
  ]
  const r = (j: number, k: number) => correlations[j]![k]!
  type Law = (inputs: readonly number[]) => number
  const R: Law = ([V = 0, I = 0, phi = 0]) => (V / I) * Math.cos(phi)
  const X: Law = ([V = 0, I = 0, phi = 0]) => (V / I) * Math.sin(phi)
  const Z: Law = ([V = 0, I = 0]) => V / I
  const c = (law: Law) => sensitivities(law, inputs, u)
  const correlation = (a: Law, b: Law) =>
    covarianceOf(c(a), c(b), u, r) / (combinedUncertainty(c(a), u, r) * combinedUncertainty(c(b), u, r))

  test('values', () => {
    near(R(inputs), 127.732, 0.0006)
    near(X(inputs), 219.85, 0.005)
    near(Z(inputs), 254.26, 0.005)
  })
  test('combined uncertainties', () => {
    near(combinedUncertainty(c(R), u, r), 0.07, 0.0006)
    near(combinedUncertainty(c(X), u, r), 0.3, 0.005)
    near(combinedUncertainty(c(Z), u, r), 0.24, 0.005)
  })
  test('correlations of the results', () => {
    near(correlation(R, X), -0.59, 0.01)
    near(correlation(R, Z), -0.49, 0.01)
  })
})

test('voltmeter of 14 millionths of reading and 2 of range: GUM 4.3.7 example 2 and 5.1.5, from memory', () => {
  const V = 0.928571
  const meter = instrument({ ofReading: 14e-6, ofRange: 2e-6, range: 1 })
  near(1e6 * limitOfError(V, meter), 15, 0.05)
  const uB = readingUncertainty(V, meter)
  near(1e6 * uB, 8.7, 0.05)
  const uc = combinedUncertainty([1, 1], [12e-6, uB])
  near(1e6 * uc, 15, 0.5)
  near(uc / V, 1.6e-5, 5e-7)
})

test('one digit, and a rectangle of half width 1.5: GUM F.2.2.1 (from memory); EURACHEM guide, E.1', () => {
  near(digitUncertainty(1), 0.29, 0.005)
  near(rectangularUncertainty(1.5), 0.87, 0.005)
})

test('shaft power by dynamometer: Doebelin & Manik, Measurement Systems, Example 3.2 (companion)', () => {
  const inputs = [1202, 45, 0.397, 60]
  const limits = [1, 0.18, 0.00127, 0.5]
  const power = ([N = 0, F = 0, L = 0, t = 1]: readonly number[]) => (2 * Math.PI * F * L * N) / t
  const c = sensitivities(power, inputs, limits)
  near(worstCaseLimit(c, limits), 36.8, 0.006)
  near(combinedUncertainty(c, limits), 22.08, 0.006)
})

test('one per cent of full scale and of reading: A. K. Sawhney, Example 3.3 (companion)', () => {
  near(limitOfError(100, instrument({ ofRange: 0.01, range: 1000 })), 10, 0.005)
  near(limitOfError(100, instrument({ ofReading: 0.01 })), 1, 0.005)
})

test('multimeter of 2.5 % and 3 digits: Kwantlen Polytechnic University, physics notes, page seen', () => {
  const meter = instrument({ ofReading: 0.025, digits: 3, resolution: 0.01 })
  near(limitOfError(32, meter), 0.83, 0.005)
  near(limitOfError(0.09, meter), 0.03225, 1e-5)
  expect(limitOfError(0, meter)).toBe(0.03)
})
