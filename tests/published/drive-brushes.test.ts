/** Bands and one worked identity of carbon brushes; data of the trade that the program shows its results against. */
import { describe, expect, test } from 'vitest'
import {
  ASSIGNED_DROP,
  brushContactLoss,
  brushFrictionLoss,
  DROP_CLASSES,
  FRICTION_CLASSES,
  HANDBOOK_PAIR_DROP,
  INDUSTRIAL_LIFE,
  lifeAgainstUsual,
  USUAL_FRICTION,
  USUAL_LIFE,
} from '../../sim/heat/brush-wear.ts'
import { SPARK_GRADES, sparkGrade } from '../../sim/heat/commutation.ts'
import { demoMachines } from '../support/machines.ts'
import { between, near } from '../support/near.ts'

describe('contact drop', () => {
  test('assigned for calculations: IEC 60034-2-1, from memory', () => {
    near(ASSIGNED_DROP.carbon, 1, 0)
    near(ASSIGNED_DROP.metalCarbon, 0.3, 0)
    near(2 * ASSIGNED_DROP.carbon, 2, 0)
  })
  test('of a pair of carbon brushes: Hawkins Electrical Guide, vol. 2, page seen', () => {
    expect(HANDBOOK_PAIR_DROP).toEqual({ least: 1.6, most: 2 })
  })
  test('classes: guides of brush makers, from memory; every machine shown lies between', () => {
    expect(DROP_CLASSES).toEqual({ extremelyLow: 0.5, veryLow: 1.4, low: 2.3, medium: 3 })
    for (const { motor } of demoMachines) {
      if (motor) between(motor.brushDrop, DROP_CLASSES.extremelyLow, DROP_CLASSES.medium)
    }
  })
})

describe('friction', () => {
  test('classes and what is usual: article on life of brushes, Table 1, page seen', () => {
    expect(FRICTION_CLASSES).toEqual({ veryLow: 0.1, low: 0.19, medium: 0.29 })
    expect(USUAL_FRICTION).toEqual({ least: 0.13, most: 0.19 })
    for (const { brushes } of demoMachines) {
      if (brushes) between(brushes.friction, FRICTION_CLASSES.veryLow, FRICTION_CLASSES.medium)
    }
  })
  test('heat of two brushes of 2 N at 8 m/s and of 0.8 A: formulas of a maker’s note, numbers derived', () => {
    near(brushFrictionLoss(0.15, 2, 8), 4.8, 0.001)
    near(brushContactLoss(0.8, 2), 1.6, 0.001)
  })
})

describe('life', () => {
  test('of a medium industrial machine: white paper on life of brushes, page seen', () => {
    expect(INDUSTRIAL_LIFE).toEqual({ least: 2000, leastOfTheGood: 5000, usual: 7500, most: 10_000 })
  })
  test('of a small motor with magnets: statement of a motor maker, page seen', () => {
    expect(USUAL_LIFE['permanent-magnet']).toEqual({ least: 2000, most: 5000 })
    expect([1999, 2000, 5000, 5001].map((hours) => lifeAgainstUsual(hours, 'permanent-magnet'))).toEqual([
      'shorter',
      'usual',
      'usual',
      'longer',
    ])
  })
})

test('five grades of sparking in order: GOST 183, from memory; a five-tier scale seen', () => {
  expect(SPARK_GRADES.map(({ grade }) => grade)).toEqual(['1', '1 1/4', '1 1/2', '2', '3'])
  const seen = [0, 0.6, 1, 1.5, 5].map((index) => sparkGrade(index, 0).grade)
  expect(seen).toEqual(SPARK_GRADES.map(({ grade }) => grade))
})
