import { expect, test } from 'vitest'
import { causeSentence } from '../../../sim/question/causes.ts'

test('a family may word a cause for itself', () => {
  expect(causeSentence('turns-worm', 'inverted', {})).toContain('upside down')
  expect(causeSentence('torque-each', 'inverted', {})).toContain('torque is the larger')
  expect(causeSentence('transformer-tap', 'inverted', {})).toContain('fewer volts')
})

test('figures are filled in as sentences print them', () => {
  expect(causeSentence('tooth', 'tooth-is-degree', { z2: 31 })).toBe('One tooth is 360/31 degrees.')
  expect(causeSentence('speed-volts', 'no-brush-drop', { vb: 0.1 + 0.2 })).toBe(
    'The brushes keep about 0.3 V for themselves.',
  )
})

test('a part of a turn is told as the question tells it', () => {
  expect(causeSentence('turns-worm', 'one-turn-only', { N: 0.25 })).toBe(
    'That is for one turn of the wheel; here it is 1/4.',
  )
})

test('the ratio is worked out from the counts', () => {
  expect(causeSentence('lost-motion', 'wheel-angle', { z1: 3, z2: 20 })).toContain('6.6667 times as far')
})

test('a cause without a sentence, or without its figure, is a mistake of the bank', () => {
  expect(() => causeSentence('turns-worm', 'bad-luck', {})).toThrow('bad-luck has no sentence')
  expect(() => causeSentence('turns-worm', 'no-starts', { z2: 20 })).toThrow('needs z1')
  expect(() => causeSentence('lost-motion', 'wheel-angle', { z1: 3 })).toThrow('needs u')
})
