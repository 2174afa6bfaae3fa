import { describe, expect, test } from 'vitest'
import { drawFrom, hash32, numbersFrom } from '../../../sim/question/draw.ts'

/** Test vectors of 32 bit FNV-1a; G. Fowler, L. C. Noll and K.-P. Vo, test suite of FNV; from memory. */
const VECTORS = [
  { text: '', hash: 0x811c9dc5 },
  { text: 'a', hash: 0xe40c292c },
  { text: 'foobar', hash: 0xbf9cf968 },
]

test.each(VECTORS)('the hash of "$text" is that of FNV-1a', ({ text, hash }) => {
  expect(hash32(text)).toBe(hash)
})

test('texts are hashed as the bytes of UTF-8', () => {
  const encoder = new TextEncoder()
  for (const text of ['ä', 'Zähne', '€', '𝄞', '\ud800', 'x\udc00y', '\uffff', '\u07ff\u0800']) {
    const bytes = encoder.encode(text)
    const hash = bytes.reduce((last, byte) => Math.imul(last ^ byte, 16_777_619) >>> 0, 2_166_136_261)
    expect(hash32(text), text).toBe(hash)
  }
})

describe('the key demo|turns-worm|0|1, worked out beside the program in exact whole numbers', () => {
  const key = 'demo|turns-worm|0|1'

  test('hashes to 1152472909', () => {
    expect(hash32(key)).toBe(1_152_472_909)
  })

  test('gives these numbers', () => {
    const next = numbersFrom(key)
    expect([next(), next(), next(), next()]).toEqual([
      2_978_200_173, 2_042_819_843, 490_913_352, 1_473_469_213,
    ])
  })

  test('draws 4 2 0 2 4 4 5 5 out of six', () => {
    const draw = drawFrom(key)
    expect(Array.from({ length: 8 }, () => draw(6))).toEqual([4, 2, 0, 2, 4, 4, 5, 5])
  })
})

test('the numbers are those of the mixing written in numbers without bounds', () => {
  const MASK = 2n ** 32n - 1n
  for (const text of ['', 'seed|family|3|1', 'ß']) {
    let a = BigInt(hash32(text))
    const next = numbersFrom(text)
    for (let i = 0; i < 1000; i++) {
      a = (a + 0x9e3779b9n) & MASK
      let t = a ^ (a >> 16n)
      t = (t * 0x21f0aaadn) & MASK
      t ^= t >> 15n
      t = (t * 0x735a2d97n) & MASK
      expect(next()).toBe(Number(t ^ (t >> 15n)))
    }
  }
})

test('each of n places is drawn about equally often, and no other', () => {
  const draw = drawFrom('evenly')
  for (const n of [1, 2, 3, 7, 64]) {
    const times = Array.from({ length: n }, () => 0)
    const draws = 1000 * n
    for (let i = 0; i < draws; i++) times[draw(n)]!++
    expect(times.reduce((sum, each) => sum + each)).toBe(draws)
    // five standard deviations of a binomial count of about 1000
    for (const each of times) expect(Math.abs(each - 1000)).toBeLessThan(5 * Math.sqrt(1000))
  }
})
