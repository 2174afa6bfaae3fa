import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { BANK, FAMILIES } from '../../../sim/question/bank.ts'
import type { Level } from '../../../sim/question/family.ts'
import { type Coded, readSheetCode, writeSheetCode } from '../../../web/worksheet/sheet-code.ts'
import type { Wanted } from '../../../web/worksheet/wanted.ts'

const SIGNS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'

const level = fc.constantFrom<Level>(1, 2, 3)
const wanted: fc.Arbitrary<Wanted> = fc.record(
  { family: fc.constantFrom(...FAMILIES.map(({ name }) => name)), level },
  { noNullPrototype: true },
)
const all = fc.array(wanted, { minLength: 1, maxLength: 24 })
const seed = fc.string({
  unit: fc.constantFrom(...'abcdefghijklmnopqrstuvwxyz-0123456789'.split('')),
  minLength: 1,
  maxLength: 15,
})
const from: fc.Arbitrary<Coded['from']> = fc.oneof(
  all.map((each) => ({ kind: 'families' as const, wanted: each })),
  fc
    .tuple(fc.nat(2 ** 15 - 1), fc.boolean(), fc.nat(2 ** 10 - 1))
    .map(([id, own, print]) => ({ kind: 'lesson' as const, id, own, print })),
  fc
    .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 12, max: 400 }), fc.boolean(), all)
    .map(([starts, teeth, right, each]) => ({
      kind: 'machine' as const,
      starts,
      teeth,
      right,
      wanted: each,
    })),
)
const codes: fc.Arbitrary<Coded> = fc
  .tuple(seed, fc.nat(40), from)
  .map(([word, version, source]) => ({ bank: BANK, seed: word, version, from: source }))

const SHORT: Coded = {
  bank: BANK,
  seed: 'rado',
  version: 3,
  from: {
    kind: 'families',
    wanted: [
      { family: 'turns-worm', level: 1 },
      { family: 'turns-worm', level: 1 },
      { family: 'torque-each', level: 2 },
    ],
  },
}

describe('a sheet code', () => {
  test('brings back what it was made of', () => {
    fc.assert(
      fc.property(codes, (coded) => {
        expect(readSheetCode(writeSheetCode(coded), BANK)).toEqual({ coded })
      }),
      { numRuns: 500, seed: 20_261 },
    )
  })

  test('is short where little is asked', () => {
    expect(writeSheetCode(SHORT).length).toBeLessThanOrEqual(24)
    expect(writeSheetCode({ ...SHORT, from: { kind: 'lesson', id: 77, own: false, print: 5 } })).toMatch(
      /^[\dA-Z-]{10,19}$/,
    )
  })

  test('is read in any case, with any gaps, and with letters for the digits that they look like', () => {
    const code = writeSheetCode(SHORT)
    const careless = code.toLowerCase().replaceAll('-', ' ').replaceAll('0', 'o').replaceAll('1', 'l')
    expect(readSheetCode(careless, BANK)).toEqual({ coded: SHORT })
  })

  test('with one wrong character, or two neighbours swapped, is refused', () => {
    const signs = writeSheetCode(SHORT).replaceAll('-', '')
    for (let i = 0; i < signs.length; i++) {
      for (const sign of SIGNS) {
        if (sign === signs[i]) continue
        expect(readSheetCode(signs.slice(0, i) + sign + signs.slice(i + 1), BANK)).toHaveProperty('problem')
      }
      const [a, b] = [signs[i], signs[i + 1]]
      if (b === undefined || a === b) continue
      expect(readSheetCode(signs.slice(0, i) + b + a + signs.slice(i + 2), BANK)).toHaveProperty('problem')
    }
  })

  test('of another bank says that the link is the way', () => {
    expect(readSheetCode(writeSheetCode({ ...SHORT, bank: BANK + 1 }), BANK)).toEqual({
      problem: expect.stringContaining('link'),
    })
  })

  test('that is none gives words, never an exception', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc.string({ unit: fc.constantFrom(...SIGNS.split('')), maxLength: 60 }),
    )
    fc.assert(
      fc.property(text, (junk) => {
        const read = readSheetCode(junk, BANK)
        if ('problem' in read) expect(read.problem).toMatch(/^This sheet code .*\.$/)
        else expect(readSheetCode(writeSheetCode(read.coded), BANK)).toEqual(read)
      }),
      { numRuns: 2000, seed: 20_262 },
    )
    expect(readSheetCode('8'.repeat(1_000_000), BANK)).toHaveProperty('problem')
  })
})
