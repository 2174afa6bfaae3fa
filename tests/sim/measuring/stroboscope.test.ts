import { describe, expect, test } from 'vitest'
import { apparentRate } from '../../../sim/drive/screen-rule.ts'
import {
  deceptiveRates,
  frozenImages,
  rateFromThree,
  rateFromTwo,
  strobeRates,
} from '../../../sim/measuring/stroboscope.ts'
import { near, relativelyNear } from '../../support/near.ts'

/** Counts where B marks of a shaft at n are lit by 500 flashes at f, to a millionth of a turn. */
function litPlaces(f: number, n: number, B: number): number {
  const places = new Set<number>()
  for (let flash = 0; flash < 500; flash++)
    for (let mark = 0; mark < B; mark++) {
      const turns = (flash * n) / f + mark / B
      places.add(Math.round(1e6 * (turns - Math.floor(turns + 1e-7))))
    }
  return places.size
}

describe('images under flashes', () => {
  test.each([1, 2, 3, 20])('are as many as places that are lit, with %i marks', (B) => {
    for (const { flashes, images } of strobeRates(84, B, { least: 5, most: 1000, images: 24 })) {
      expect(litPlaces(flashes, 84, B), `${flashes}`).toBe(images)
      expect(frozenImages(flashes, 84, B), `${flashes}`).toBe(images)
    }
  })
  test('creep at any other rate', () => {
    expect(frozenImages(1005, 1000)).toBeNull()
    expect(frozenImages(999.999, 1000)).toBeNull()
  })
  test('come fastest first and within the asked range', () => {
    const rates = strobeRates(3000, 1, { least: 500, most: 9000, images: 3 })
    expect(rates.slice(0, 4)).toEqual([
      { flashes: 9000, images: 3 },
      { flashes: 6000, images: 2 },
      { flashes: 4500, images: 3 },
      { flashes: 3000, images: 1 },
    ])
    expect(rates.at(-1)!.flashes).toBe(500)
    expect(rates.every(({ flashes }, k) => k === 0 || flashes < rates[k - 1]!.flashes)).toBe(true)
  })
  test('stand still where a wheel of 20 teeth seems to stand', () => {
    for (const rate of deceptiveRates(100, 20, 30)) near(apparentRate(rate, 20, 100), 0, 1e-12)
    expect(deceptiveRates(100, 20, 30)).toHaveLength(6)
    expect(deceptiveRates(100, 1, 50)).toEqual([])
  })
})

test.each([1, 2, 3, 7])('neighbouring rates n/%i and on tell n', (k) => {
  const [A, B, C] = [5040 / k, 5040 / (k + 1), 5040 / (k + 2)]
  relativelyNear(rateFromTwo(A, B), 5040, 1e-12)
  relativelyNear(rateFromThree(A, B, C), 5040, 1e-11)
})
