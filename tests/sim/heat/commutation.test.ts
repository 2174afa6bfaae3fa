import { describe, expect, test } from 'vitest'
import {
  brushArc,
  coilCurrent,
  commutationIndex,
  commutationTime,
  reactanceVoltage,
  SPARK_GRADES,
  sparkGrade,
  transformerVoltage,
} from '../../../sim/heat/commutation.ts'
import { near, relativelyNear } from '../../support/near.ts'

describe('a coil under a brush', () => {
  const arc = brushArc(0.004, 0.014)
  const at = (angle: number): number => coilCurrent(2, angle, arc)

  test('carries half the armature current before it and as much the other way after it', () => {
    expect(at(-arc)).toBe(1)
    expect(at(arc)).toBe(-1)
    near(at(0), 0, 1e-12)
    near(at(arc / 4), -0.5, 1e-12)
  })

  test('is turned back by the brush of the other sign, and is the same a turn on', () => {
    expect(at(Math.PI - arc)).toBe(-1)
    near(at(Math.PI), 0, 1e-12)
    expect(at(Math.PI + arc)).toBe(1)
    for (const angle of [-3, -0.1, 0.05, 1, 2.9]) {
      near(at(angle + 2 * Math.PI), at(angle), 1e-12)
      near(at(angle - 6 * Math.PI), at(angle), 1e-12)
      near(at(angle + Math.PI), -at(angle), 1e-12)
    }
  })

  test('its mean reactance voltage is inductance times the slope of its current', () => {
    const n = 84.2 // turn/s
    const slope = (at(-0.01) - at(0.01)) / 0.02 // A/rad
    const expected = 40e-6 * slope * 2 * Math.PI * n
    relativelyNear(reactanceVoltage(40e-6, 2, commutationTime(0.004, 0.014, n)), expected, 1e-9)
  })

  test('at standstill nothing turns over', () => {
    expect(commutationTime(0.004, 0.014, 0)).toBe(Infinity)
    expect(reactanceVoltage(40e-6, 2, Infinity)).toBe(0)
  })

  test('an alternating flux gives its derivative, in r.m.s.', () => {
    const [f, turns, peak] = [50, 14, 30e-6]
    let square = 0
    for (let n = 0; n < 100; n++)
      square += (turns * peak * 2 * Math.PI * f * Math.cos((2 * Math.PI * n) / 100)) ** 2 / 100
    relativelyNear(transformerVoltage(f, turns, peak), Math.sqrt(square), 1e-12)
  })
})

test('the grade goes by the worse of both indices and changes at its limits', () => {
  expect(sparkGrade(0.2, 0.3).grade).toBe('1')
  expect(sparkGrade(0.79, 0).grade).toBe('1 1/4')
  expect(sparkGrade(0, 0.8).grade).toBe('1 1/2')
  expect(sparkGrade(1.2, 0.1).grade).toBe('2')
  expect(sparkGrade(0, 37 / 10).grade).toBe('3')
  expect(sparkGrade(Infinity, 0).grade).toBe('3')
  for (const [n, { below }] of SPARK_GRADES.entries())
    if (n > 0) expect(below).toBeGreaterThan(SPARK_GRADES[n - 1]!.below)
  expect(commutationIndex(0.3, 0.1, 0.8)).toBeCloseTo(0.5, 12)
})
