import { expect, test } from 'vitest'
import { identifyLosses } from '../../../sim/measuring/loss-fit.ts'
import { near, relativelyNear } from '../../support/near.ts'
import { evenDraws, scatterOf, spread } from './draws.ts'

const k = 0.0432
const T0 = 0.006
const b = 6e-6
const c = 2.2e-8
const SPEEDS = [120, 240, 360, 480, 600]

const row = (speed: number, fan: number, error = 0) => ({
  voltage: 12,
  voltageUncertainty: 0.02,
  current: (T0 + b * speed + fan * speed ** 2) / k + error,
  currentUncertainty: 0.002,
  speed,
  speedUncertainty: 0.2,
})

test('friction, viscous and fan loss come back from four rows or more', () => {
  const { fit, problems } = identifyLosses(
    SPEEDS.map((speed) => row(speed, c)),
    k,
  )
  relativelyNear(fit!.friction.value, T0, 1e-10)
  relativelyNear(fit!.viscous.value, b, 1e-9)
  relativelyNear(fit!.fan.value, c, 1e-9)
  expect(problems).toEqual([])
})

test('three rows give a straight line', () => {
  const { fit } = identifyLosses(
    SPEEDS.slice(0, 3).map((speed) => row(speed, 0)),
    k,
  )
  relativelyNear(fit!.viscous.value, b, 1e-10)
  expect(fit!.fan).toEqual({ value: 0, uncertainty: 0 })
})

test('uncertainties are the scatter of 5000 misread sets (seed 13)', () => {
  const draw = evenDraws(13)
  const told = identifyLosses(
    SPEEDS.map((speed) => row(speed, c)),
    k,
  ).fit!
  const sets = Array.from(
    { length: 5000 },
    () =>
      identifyLosses(
        SPEEDS.map((speed) => row(speed, c, Math.sqrt(3) * 0.002 * draw())),
        k,
      ).fit!,
  )
  for (const part of ['friction', 'viscous', 'fan'] as const)
    relativelyNear(
      spread(sets.map((fit) => fit[part].value)).deviation,
      told[part].uncertainty,
      scatterOf(5000),
    )
  near(spread(sets.map((fit) => fit.chiSquare)).mean, 2, 0.1)
})

test('a loss that comes out negative is warned of', () => {
  const rising = [row(100, 0), { ...row(500, 0), current: 0.1 }, { ...row(300, 0), current: 0.13 }]
  expect(identifyLosses(rising, k).problems.map(({ message }) => message)).toContainEqual(
    expect.stringContaining('viscous loss should not be negative'),
  )
})

test('one row, or one speed, is refused', () => {
  expect(identifyLosses([row(100, 0)], k).fit).toBeNull()
  expect(identifyLosses([row(100, 0), row(100, 0)], k).fit).toBeNull()
})
