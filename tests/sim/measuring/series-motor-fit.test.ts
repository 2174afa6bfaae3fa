import { expect, test } from 'vitest'
import type { MotorReading } from '../../../sim/measuring/motor-reading.ts'
import { identifySeriesMotor } from '../../../sim/measuring/series-motor-fit.ts'
import { near, relativelyNear } from '../../support/near.ts'
import { evenDraws, scatterOf, spread } from './draws.ts'

const R = 17
const k0 = 0.12
const is = 3
const vb = 2.4
const u = { voltageUncertainty: 0.2, currentUncertainty: 0.004, speedUncertainty: 1 }

const row = (current: number, speed: number, saturation = 1 / is): MotorReading => ({
  voltage:
    vb * Math.sign(current) + R * current + (k0 / (1 + Math.abs(current) * saturation)) * current * speed,
  current,
  speed,
  ...u,
})
const POINTS = [
  [1, 0],
  [2, 0],
  [0.7, 800],
  [1.2, 700],
  [2, 600],
  [3, 400],
] as const
const rows = POINTS.map(([i, w]) => row(i, w))

test('resistance, constant and saturation come back from readings without error, in either sense', () => {
  for (const set of [rows, POINTS.map(([i, w]) => row(-i, w))]) {
    const { fit, problems } = identifySeriesMotor(set, vb)
    relativelyNear(fit!.resistance.value, R, 1e-9)
    relativelyNear(fit!.emfConstant.value, k0, 1e-9)
    relativelyNear(fit!.saturation.value, 1 / is, 1e-9)
    expect(problems).toEqual([])
  }
})

test('a field without saturation is found without', () => {
  const { fit } = identifySeriesMotor(
    POINTS.map(([i, w]) => row(i, w, 0)),
    vb,
  )
  near(fit!.saturation.value, 0, 1e-9)
})

test('uncertainties are the scatter of 4000 misread sets (seed 17)', () => {
  const draw = evenDraws(17)
  const off = (uncertainty: number) => Math.sqrt(3) * uncertainty * draw()
  const told = identifySeriesMotor(rows, vb).fit!
  const sets = Array.from({ length: 4000 }, () => {
    const misread = rows.map((each) => ({
      ...each,
      voltage: each.voltage + off(u.voltageUncertainty),
      current: each.current + off(u.currentUncertainty),
      speed: each.speed + off(u.speedUncertainty),
    }))
    return identifySeriesMotor(misread, vb).fit!
  })
  for (const part of ['resistance', 'emfConstant', 'saturation'] as const)
    relativelyNear(
      spread(sets.map((fit) => fit[part].value)).deviation,
      told[part].uncertainty,
      scatterOf(4000),
    )
  near(spread(sets.map((fit) => fit.chiSquare)).mean, 3, 0.15)
})

test('two rows are too few, and one current does not tell saturation', () => {
  expect(identifySeriesMotor(rows.slice(0, 2), vb).fit).toBeNull()
  expect(identifySeriesMotor([row(1, 0), row(1, 300), row(1, 600)], vb).fit).toBeNull()
})
