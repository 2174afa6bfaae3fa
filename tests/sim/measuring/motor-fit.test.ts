import { describe, expect, test } from 'vitest'
import { identifyMotor } from '../../../sim/measuring/motor-fit.ts'
import type { MotorReading } from '../../../sim/measuring/motor-reading.ts'
import { near, relativelyNear } from '../../support/near.ts'
import { evenDraws, scatterOf, spread } from './draws.ts'

const R = 1.1
const k = 0.0432
const vb = 1.6
const u = { voltageUncertainty: 0.03, currentUncertainty: 0.01, speedUncertainty: 0.5 }

const row = (current: number, speed: number): MotorReading => ({
  voltage: R * current + k * speed + vb * Math.sign(current),
  current,
  speed,
  ...u,
})
const rows = [row(2, 0), row(3, 0), row(0.9, 530), row(1.2, 450), row(2.2, 390), row(1.6, 240)]

/** Rows as instruments with errors of rectangular spread would read them. */
function misread(draw: () => number): MotorReading[] {
  const off = (uncertainty: number) => Math.sqrt(3) * uncertainty * draw()
  return rows.map((each) => ({
    ...each,
    voltage: each.voltage + off(u.voltageUncertainty),
    current: each.current + off(u.currentUncertainty),
    speed: each.speed + off(u.speedUncertainty),
  }))
}

describe('readings without error', () => {
  test('give back resistance and constant', () => {
    const { fit, problems } = identifyMotor(rows, vb)
    relativelyNear(fit!.resistance.value, R, 1e-12)
    relativelyNear(fit!.emfConstant.value, k, 1e-12)
    expect(fit!.brushDrop).toEqual({ value: vb, uncertainty: 0 })
    expect(problems).toEqual([])
  })
  test('give back the brush drop too', () => {
    const { fit } = identifyMotor(rows, null)
    relativelyNear(fit!.brushDrop.value, vb, 1e-10)
    relativelyNear(fit!.resistance.value, R, 1e-10)
    relativelyNear(fit!.emfConstant.value, k, 1e-10)
  })
  test('may be taken in both senses', () => {
    const mixed = rows.map((each, j) => (j % 2 ? each : row(-each.current, -each.speed)))
    relativelyNear(identifyMotor(mixed, vb).fit!.resistance.value, R, 1e-12)
  })
})

describe('readings with error', () => {
  const DRAWS = 20_000
  test(`uncertainties are the scatter of ${DRAWS} misread sets (seed 7)`, () => {
    const draw = evenDraws(7)
    const told = identifyMotor(rows, vb).fit!
    const sets = Array.from({ length: DRAWS }, () => identifyMotor(misread(draw), vb).fit!)
    const resistance = spread(sets.map((fit) => fit.resistance.value))
    const constant = spread(sets.map((fit) => fit.emfConstant.value))
    relativelyNear(told.resistance.uncertainty, resistance.deviation, scatterOf(DRAWS))
    relativelyNear(told.emfConstant.uncertainty, constant.deviation, scatterOf(DRAWS))
    near(resistance.mean, R, 0.05 * told.resistance.uncertainty)
    // chi-square is the number of readings to spare on average
    near(spread(sets.map((fit) => fit.chiSquare)).mean, 4, 0.1)
    const product = sets.map((fit) => (fit.resistance.value - R) * (fit.emfConstant.value - k))
    relativelyNear(told.covariance[0]![1]!, spread(product).mean, 0.1)
  })
  test('a wrong row is warned of', () => {
    const wrong = rows.map((each, j) => (j === 2 ? { ...each, voltage: each.voltage + 1 } : each))
    expect(identifyMotor(wrong, vb).problems.map(({ message }) => message)).toEqual([
      expect.stringContaining('one is wrong'),
    ])
  })
  test('readings all alike are warned of, and readings all the same refused', () => {
    const alike = [row(0.9, 530), row(0.905, 528), row(0.91, 531)]
    const warned = identifyMotor(alike, vb)
    expect(warned.fit).not.toBeNull()
    expect(warned.problems.map(({ message }) => message)).toContainEqual(
      expect.stringContaining('rotor held'),
    )
    const same = identifyMotor([row(1, 500), row(1, 500), row(1, 500)], vb)
    expect(same.fit).toBeNull()
    expect(same.problems[0]!.severity).toBe('error')
  })
  test('the constant does not come from locked rows alone', () => {
    expect(identifyMotor([row(2, 0), row(3, 0)], vb).fit).toBeNull()
  })
  test('two readings say that nothing is left to check by', () => {
    expect(identifyMotor([row(2, 0), row(0.9, 530)], vb).problems[0]!.message).toContain('nothing is left')
  })
})

describe('rows that cannot be used', () => {
  test('are named by path', () => {
    const bad = [row(2, 0), { ...row(1, 300), current: Number.NaN }, { ...row(1, 400), speedUncertainty: 0 }]
    expect(identifyMotor(bad, vb).problems.map(({ path }) => path)).toEqual([
      'rows[1].current',
      'rows[2].speedUncertainty',
    ])
  })
  test('one row is too few, and two currents do not tell the brush drop', () => {
    expect(identifyMotor([row(2, 0)], vb).problems[0]!.message).toContain('at least 2 rows')
    const twoLevels = [row(2, 0), row(2.005, 100), row(0.9, 530), row(0.9, 400)]
    expect(identifyMotor(twoLevels, null).fit).toBeNull()
    expect(identifyMotor(twoLevels, vb).fit).not.toBeNull()
  })
})
