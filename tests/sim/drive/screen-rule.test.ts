import { describe, expect, test } from 'vitest'
import { apparentRate, drawnTruly } from '../../../sim/drive/screen-rule.ts'
import { between, near } from '../../support/near.ts'

describe('what a sampled picture seems to do', () => {
  test.each([
    { flashes: 1005, seen: -5 },
    { flashes: 995, seen: 5 },
  ])(
    'a fan at 1000 r/min under $flashes flashes a minute: instrument maker’s manual of stroboscopes',
    (row) => {
      near(apparentRate(1000, 1, row.flashes), row.seen, 1e-9)
    },
  )
  test('three equal spokes stand still at ten turns a second and 30 pictures a second: rule of camera practice', () => {
    near(apparentRate(10, 3, 30), 0, 1e-9)
  })
  test('the worm of the boot cleaner at 5050 r/min seems to turn at 1450 r/min at 60 pictures a second', () => {
    near(60 * apparentRate(5050 / 60, 1, 60), 1450, 1e-9)
  })
  test('a 20-tooth wheel at 252.5 r/min keeps its mark, while its teeth seem to turn at 72.5 r/min', () => {
    near(60 * apparentRate(252.5 / 60, 1, 60), 252.5, 1e-9)
    near(60 * apparentRate(252.5 / 60, 20, 60), 72.5, 1e-9)
  })
})

describe('whether marks may be drawn', () => {
  test('one mark at 30 flashes a second is sampled below 15 turns a second, drawn truly to 0.8 of that', () => {
    expect(drawnTruly(0.8 * 15 - 1e-9, 1, 30)).toBe(true)
    expect(drawnTruly(0.8 * 15 + 1e-9, 1, 30)).toBe(false)
    expect(drawnTruly(-13, 1, 30)).toBe(false)
  })
  test('what is drawn truly is seen as it is', () => {
    for (let rate = -60; rate <= 60; rate += 0.37)
      for (const symmetry of [1, 3, 20])
        if (drawnTruly(rate, symmetry, 60)) near(apparentRate(rate, symmetry, 60), rate, 1e-12)
        else between(Math.abs(apparentRate(rate, symmetry, 60)), -1, 30 / symmetry + 1e-9)
  })
})
