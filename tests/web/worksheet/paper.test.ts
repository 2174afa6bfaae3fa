import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { PAPERS, inside, linesOf, pagesOf } from '../../../web/worksheet/paper.ts'

const heights = fc.array(fc.double({ min: 5, max: 260, noNaN: true }), { maxLength: 30 })
const filling = fc.record({
  first: fc.double({ min: 60, max: 220, noNaN: true }),
  rest: fc.double({ min: 60, max: 260, noNaN: true }),
  most: fc.integer({ min: 1, max: 6 }),
  gap: fc.double({ min: 0, max: 12, noNaN: true }),
})

describe('pages', () => {
  test('hold every block once, in order, none over the page unless it stands alone', () => {
    fc.assert(
      fc.property(heights, filling, (all, room) => {
        const pages = pagesOf(all, room)
        expect(pages.flat()).toEqual(all.map((_, i) => i))
        pages.forEach((page, i) => {
          expect(page.length).toBeGreaterThan(0)
          expect(page.length).toBeLessThanOrEqual(room.most)
          const taken = page.reduce((sum, block) => sum + all[block]! + room.gap, -room.gap)
          if (page.length > 1) expect(taken).toBeLessThanOrEqual((i === 0 ? room.first : room.rest) + 1e-9)
        })
      }),
      { seed: 20_263 },
    )
  })

  test('are as full as they can be: the first block of a page would not have fitted on the one before', () => {
    fc.assert(
      fc.property(heights, filling, (all, room) => {
        const pages = pagesOf(all, room)
        pages.slice(1).forEach((page, i) => {
          const before = pages[i]!
          const taken = before.reduce((sum, block) => sum + all[block]! + room.gap, 0)
          const had = i === 0 ? room.first : room.rest
          expect(before.length === room.most || taken + all[page[0]!]! > had - 1e-9).toBe(true)
        })
      }),
      { seed: 20_264 },
    )
  })

  test('leave 15 mm on every side of A4 and Letter', () => {
    // ISO 216 and ANSI/ASME Y14.1, from memory: 210 mm by 297 mm, 8.5 in by 11 in.
    expect(PAPERS.a4).toEqual({ width: 210, height: 297 })
    expect(PAPERS.letter.width).toBeCloseTo(8.5 * 25.4, 9)
    expect(PAPERS.letter.height).toBeCloseTo(11 * 25.4, 9)
    expect(inside('a4').width).toBe(180)
    expect(inside('a4').height).toBeLessThanOrEqual(267)
    expect(inside('letter').height).toBeLessThanOrEqual(249.4)
  })
})

describe('lines of a text', () => {
  test('are counted without cutting words', () => {
    expect(linesOf('one two three', 13)).toBe(1)
    expect(linesOf('one two three', 12)).toBe(2)
    expect(linesOf('one two three', 5)).toBe(3)
  })

  test('begin later where something stands before them', () => {
    expect(linesOf('one two three', 16, 3)).toBe(1)
    expect(linesOf('one two three', 15, 3)).toBe(2)
  })
})
