import { expect, test } from 'vitest'
import { fitHeatingCurve, settledFromSlopes, timeConstantTo } from '../../../sim/measuring/heating-fit.ts'
import { near, relativelyNear } from '../../support/near.ts'
import { evenDraws, scatterOf, spread } from './draws.ts'

const curve = (settled: number, start: number, tau: number, time: number, error = 0) => ({
  time,
  temperature: settled + (start - settled) * Math.exp(-time / tau) + error,
  uncertainty: 0.4,
})
const TIMES = [0, 300, 600, 1200, 1800, 2700, 3600]

test.each([
  { settled: 36, start: 21, tau: 900 },
  { settled: 21, start: 92, tau: 1500 },
  { settled: 60, start: 21, tau: 140 },
])('warming or cooling to $settled degC with $tau s comes back', ({ settled, start, tau }) => {
  const { fit, problems } = fitHeatingCurve(TIMES.map((time) => curve(settled, start, tau, time)))
  relativelyNear(fit!.settled.value, settled, 1e-9)
  relativelyNear(fit!.start.value, start, 1e-9)
  relativelyNear(fit!.timeConstant.value, tau, 1e-9)
  expect(problems).toEqual([])
})

test('uncertainties are the scatter of 4000 misread runs (seed 23)', () => {
  const draw = evenDraws(23)
  const told = fitHeatingCurve(TIMES.map((time) => curve(60, 21, 900, time))).fit!
  const sets = Array.from(
    { length: 4000 },
    () => fitHeatingCurve(TIMES.map((time) => curve(60, 21, 900, time, Math.sqrt(3) * 0.4 * draw()))).fit!,
  )
  for (const part of ['settled', 'start', 'timeConstant'] as const)
    relativelyNear(
      spread(sets.map((fit) => fit[part].value)).deviation,
      told[part].uncertainty,
      scatterOf(4000),
    )
  near(spread(sets.map((fit) => fit.chiSquare)).mean, 4, 0.15)
})

test('a run that ends too early is warned of', () => {
  const { fit, problems } = fitHeatingCurve([0, 100, 200, 300].map((time) => curve(60, 21, 900, time)))
  relativelyNear(fit!.settled.value, 60, 1e-6)
  expect(problems[0]!.message).toContain('last a time constant')
})

test('temperatures that do not change, or run away, are refused', () => {
  expect(fitHeatingCurve(TIMES.map((time) => ({ time, temperature: 21, uncertainty: 0.4 }))).fit).toBeNull()
  expect(
    fitHeatingCurve(TIMES.map((time) => ({ time, temperature: Math.exp(time / 900), uncertainty: 0.4 }))).fit,
  ).toBeNull()
  expect(fitHeatingCurve(TIMES.slice(0, 2).map((time) => curve(60, 21, 900, time))).fit).toBeNull()
})

test('two temperatures, or two slopes, on an exact curve', () => {
  const at = (time: number) => curve(60, 21, 900, time).temperature
  const slope = (time: number) => (60 - at(time)) / 900
  relativelyNear(timeConstantTo(60, at(100), at(700), 600), 900, 1e-12)
  const { settled, timeConstant } = settledFromSlopes(
    { temperature: at(100), slope: slope(100) },
    { temperature: at(700), slope: slope(700) },
  )
  relativelyNear(settled, 60, 1e-12)
  relativelyNear(timeConstant, 900, 1e-12)
})
