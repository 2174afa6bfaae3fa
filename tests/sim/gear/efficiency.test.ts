import { expect, test } from 'vitest'
import {
  lockedInertia,
  selfLocking,
  wheelDrivingEfficiency,
  wormDrivingEfficiency,
} from '../../../sim/gear/efficiency.ts'
import { near } from '../../support/near.ts'

const RADIANS = Math.PI / 180

/** The four demonstration meshes as a second, separately written solution of the same forces gave them. */
test.each([
  { starts: 1, q: 10, mu: 0.09, forward: 0.5059, backward: 0.0418, says: 'nearly' },
  { starts: 1, q: 16, mu: 0.12, forward: 0.326, backward: -1.035, says: 'locks' },
  { starts: 3, q: 10, mu: 0.07, forward: 0.7832, backward: 0.7353, says: 'back-drives' },
  { starts: 2, q: 8, mu: 0.25, forward: 0.4522, backward: -0.0602, says: 'locks' },
])('$starts starts on q $q with friction $mu: $says', ({ starts, q, mu, forward, backward, says }) => {
  const gamma = Math.atan(starts / q)
  near(wormDrivingEfficiency(gamma, 20 * RADIANS, mu), forward, 0.00005)
  near(wheelDrivingEfficiency(gamma, 20 * RADIANS, mu), backward, 0.00005)
  expect(selfLocking(gamma, 20 * RADIANS, mu)).toBe(says)
})

test('without friction nothing is lost either way', () => {
  expect(wormDrivingEfficiency(0.1, 0.35, 0)).toBe(1)
  expect(wheelDrivingEfficiency(0.1, 0.35, 0)).toBe(1)
})

test('at the limit of locking the worm drives with (1 - tan2 g)/2: consequence of both formulae', () => {
  for (const gamma of [0.05, 0.1, 0.2, 0.4]) {
    const mu = Math.cos(20 * RADIANS) * Math.tan(gamma)
    near(wheelDrivingEfficiency(gamma, 20 * RADIANS, mu), 0, 1e-15)
    near(wormDrivingEfficiency(gamma, 20 * RADIANS, mu), (1 - Math.tan(gamma) ** 2) / 2, 1e-15)
  }
})

test('the inertia that a locking pair asks of the rotor balances that of its wheels', () => {
  for (const etaB of [-0.06, -1.035, -20]) {
    const J = lockedInertia(etaB, 0.6, 36)
    expect(J).toBeGreaterThan(0)
    near(J + (2 * etaB * 0.6) / 36 ** 2, 0, 1e-15)
  }
  expect(lockedInertia(0.04, 0.6, 36)).toBe(0)
})
