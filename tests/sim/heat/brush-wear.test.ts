import { expect, test } from 'vitest'
import { brushLife, brushWear, lifeAgainstUsual, slidingSpeed } from '../../../sim/heat/brush-wear.ts'
import { relativelyNear } from '../../support/near.ts'

const law = { wear: 1.2, speed: 4, current: 1.5, byCurrent: 0.5 }

test('a brush wears as told at the speed told, and by the current besides', () => {
  relativelyNear(brushWear(law, 4, 0), 1.2, 1e-12)
  relativelyNear(brushWear(law, 4, 1.5), 1.8, 1e-12)
  relativelyNear(brushWear(law, 8, 3), 2 * 1.2 * 3, 1e-12)
})

test('a brush at rest wears nothing and lasts for ever', () => {
  expect(brushWear(law, 0, 5)).toBe(0)
  expect(brushLife(7, 0)).toBe(Infinity)
  relativelyNear(brushLife(7, 1.4), 5000, 1e-12)
})

test('a life is held against what is usual for its kind of motor', () => {
  expect(lifeAgainstUsual(1000, 'permanent-magnet')).toBe('shorter')
  expect(lifeAgainstUsual(1000, 'universal')).toBe('usual')
  expect(lifeAgainstUsual(Infinity, 'universal')).toBe('longer')
})

test('the surface of the commutator passes once round a turn', () => {
  relativelyNear(slidingSpeed(0.014, -100), 1.4 * Math.PI, 1e-12)
})
