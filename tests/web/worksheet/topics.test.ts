import { expect, test } from 'vitest'
import { FAMILIES } from '../../../sim/question/bank.ts'
import { TOPICS } from '../../../web/worksheet/topics.ts'

test('every family of the bank stands under one topic', () => {
  const found = TOPICS.flatMap(({ families }) => families.map(({ name }) => name))
  expect(found.toSorted()).toEqual(FAMILIES.map(({ name }) => name).toSorted())
})
