import { describe, expect, test } from 'vitest'
import { fuseExcess, fuseTime, fuseWarmth, meltingIntegral, openingCurrent } from '../../../sim/heat/fuse.ts'
import { near, relativelyNear } from '../../support/near.ts'

/** Of the boot cleaner: smallest melting current [A], time constant [s] */
const Imf = 5.2
const tau = 6

describe('a fuse', () => {
  test('carries its smallest melting current for ever', () => {
    expect(fuseTime(Imf, Imf, tau)).toBe(Infinity)
    expect(fuseTime(0, Imf, tau)).toBe(Infinity)
    expect(fuseTime(1.0001 * Imf, Imf, tau)).toBeLessThan(60)
  })

  test('opens when it has become as warm as it bears', () => {
    for (const I of [5.5, 8.98, 40])
      for (const Q0 of [0, 0.4, 0.99]) near(fuseWarmth(Q0, I, Imf, fuseTime(I, Imf, tau, Q0), tau), 1, 1e-12)
    expect(fuseTime(1, Imf, tau, 1)).toBe(0)
  })

  test('warms by dQ/dt = (x - Q)/tau', () => {
    const h = 1e-4
    const slope = (fuseWarmth(0.3, 7, Imf, 2 + h, tau) - fuseWarmth(0.3, 7, Imf, 2 - h, tau)) / (2 * h)
    relativelyNear(slope, (fuseExcess(7, Imf) - fuseWarmth(0.3, 7, Imf, 2, tau)) / tau, 1e-8)
  })

  test('tends to one I2t under currents that open it at once', () => {
    const I = 1000 * Imf
    relativelyNear(I ** 2 * fuseTime(I, Imf, tau), meltingIntegral(Imf, tau), 1e-6)
  })

  test('opens after the time for which the current was looked up', () => {
    for (const t of [0.01, 1, 30]) relativelyNear(fuseTime(openingCurrent(t, Imf, tau), Imf, tau), t, 1e-9)
  })
})
