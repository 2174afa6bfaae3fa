import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { FAMILIES, familyNamed } from '../../../sim/question/bank.ts'
import { checkFamily } from '../../support/question-check.ts'

const names = FAMILIES.map(({ name }) => name)

test.each(names)('%s asks what may be asked, whatever is drawn', (name) => {
  checkFamily(name)
})

test('every family has a name of its own, a title of its own and at least two wordings', () => {
  expect(new Set(names).size).toBe(names.length)
  expect(new Set(FAMILIES.map(({ title }) => title)).size).toBe(names.length)
  for (const { name, texts } of FAMILIES) expect(texts.length, name).toBeGreaterThanOrEqual(2)
})

test('a learner meets turns before speeds, speeds before torque, torque before its losses', () => {
  const place = (name: string): number => names.indexOf(name)
  const order = ['turns-worm', 'teeth-passed', 'pair-sense', 'wheel-speed', 'torque-total', 'torque-lossy']
  expect(order.toSorted((a, b) => place(a) - place(b))).toEqual(order)
  expect(order.every((name) => familyNamed(name)?.name === name)).toBe(true)
})

test('a name that is not in the bank names nothing', () => {
  expect(familyNamed('turns')).toBeUndefined()
})

/** What asks a family for its questions in the property tests. */
const ASKED = /\b(?:eachNumber|eachChoice|eachOf|numbersOf|questionsOf)\(\s*'([a-z-]+)'/g

test('every family is held against the core by a property test that asks for it by name', () => {
  const folder = new URL('../../property/', import.meta.url)
  const files = readdirSync(folder).filter((file) => file.startsWith('question-'))
  const asked = files.flatMap((file) => {
    const text = readFileSync(new URL(file, folder), 'utf8')
    return [...text.matchAll(ASKED)].map(([, name]) => name)
  })
  expect(names.filter((name) => !asked.includes(name))).toEqual([])
})
