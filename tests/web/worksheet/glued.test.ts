import { expect, test } from 'vitest'
import { glued } from '../../../web/worksheet/glued.ts'

const shown = (text: string) => glued(text).replaceAll('\u00a0', '~')

test('a number stays with its unit, and the unit with itself', () => {
  expect(shown('turns with 0.15 N m, and 80 % of 600 r/min')).toBe(
    'turns with 0.15~N~m, and 80~% of 600~r/min',
  )
  expect(shown('1 start, 36 teeth and 3 turns')).toBe('1~start, 36~teeth and 3~turns')
  expect(shown('A meter shows 9 V r.m.s. for 2 s?')).toBe('A meter shows 9~V r.m.s. for 2~s?')
})

test('words that begin like a unit are left alone', () => {
  const text = '4 steps, 20 wheels, 3 Newtons, 5 drops, 12 minutes'
  expect(glued(text)).toBe(text)
})
