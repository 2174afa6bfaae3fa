import { expect, test } from 'vitest'
import { heatLevel, hotSpot, lifeFactor } from '../../../sim/heat/insulation.ts'
import { relativelyNear } from '../../support/near.ts'

test('a winding is called hot 15 K below its class, and too hot from its class on', () => {
  expect(heatLevel(114.9, 'B')).toBe('cool')
  expect(heatLevel(115, 'B')).toBe('amber')
  expect(heatLevel(129.9, 'B')).toBe('amber')
  expect(heatLevel(130, 'B')).toBe('red')
  expect(heatLevel(130, 'F')).toBe('cool')
  expect(heatLevel(hotSpot(120, 10), 'B')).toBe('red')
})

test('each 10 K halve the life, by the rule of thumb', () => {
  relativelyNear(lifeFactor(150, 'B'), 1 / 4, 1e-12)
  relativelyNear(lifeFactor(120, 'B'), 2, 1e-12)
})
