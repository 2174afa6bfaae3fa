import { expect, test } from 'vitest'
import { farSidePhase, handSign, wheelSense } from '../../../sim/gear/wheel-motion.ts'

test('wheels on opposite sides turn opposite ways, and a worm of the other hand turns both back', () => {
  for (const hand of ['right', 'left'] as const) {
    expect(wheelSense('left', hand)).toBe(-wheelSense('right', hand))
    expect(wheelSense('right', hand)).toBe(-handSign(hand))
  }
})

test('left wheel needs half a tooth pitch only where starts and teeth add up to an odd number', () => {
  expect(farSidePhase(1, 20)).toBe(Math.PI / 20)
  expect(farSidePhase(2, 21)).toBe(Math.PI / 21)
  expect(farSidePhase(1, 21)).toBe(0)
  expect(farSidePhase(2, 30)).toBe(0)
})
