import { expect, test } from 'vitest'
import { FAMILIES } from '../../../sim/question/bank.ts'
import { drawFrom } from '../../../sim/question/draw.ts'
import type { Sureness } from '../../../sim/question/marking.ts'
import { type Next, type Practised, nextFamily } from '../../../sim/question/next-family.ts'

/** 'a+' right, 'a-' wrong, 'a-3' wrong though sure */
const practised = (trace: string): readonly Practised[] =>
  trace
    .split(' ')
    .filter((each) => each !== '')
    .map((each) => ({
      family: each[0]!,
      right: each[1] === '+',
      sureness: each[2] === undefined ? null : (Number(each[2]) as Sureness),
    }))

const ORDER = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i', 'j']

const next = (trace: string, order: readonly string[] = ORDER): Next | null =>
  nextFamily(order, practised(trace))

/** Goes on by the rule itself: `answers` says of each question in turn whether it is right. */
function played(order: readonly string[], answers: string): string {
  const trace: string[] = []
  for (const answer of answers) {
    const asked = next(trace.join(' '), order)
    if (!asked) break
    trace.push(`${asked.family}${answer}`)
  }
  return trace.map((each) => each[0]).join('')
}

test('the first question is the first family, at the first level', () => {
  expect(next('')).toEqual({ family: 'a', level: 1, why: 'New.' })
})

test('a wrong answer comes back after three others', () => {
  expect(next('a- b+ c+')?.family).toBe('d')
  expect(next('a- b+ c+ d+')).toEqual({
    family: 'a',
    level: 1,
    why: 'Again, because you missed it four questions ago.',
  })
})

test('a wrong answer that was sure comes back after two others', () => {
  expect(next('a-3 b+')?.family).toBe('c')
  expect(next('a-3 b+ c+')).toEqual({
    family: 'a',
    level: 1,
    why: 'Again, because you missed it three questions ago.',
  })
  expect(next('a-2 b+ c+')?.family).toBe('d')
})

test('a right answer comes back after six others', () => {
  expect(next('a+3 b+ c+ d+ e+ f+')?.family).toBe('g')
  expect(next('a+3 b+ c+ d+ e+ f+ g+')).toEqual({
    family: 'a',
    level: 1,
    why: 'Again, because you had it right seven questions ago: it should last.',
  })
})

test('of two that are due, the one that has been due longer comes first, then the first in the order', () => {
  // due: a at 7, b at 4, c at 5; this is question 7
  expect(next('a+ b-3 c-3 d+ e+ f+ g+')?.family).toBe('b')
  // due: a at 5, b at 4; this is question 5
  expect(next('b- a- c+ d+ e+')?.family).toBe('b')
  // due: b at 4 and a at 4; this is question 4
  expect(next('b- a-3 c+ d+')?.family).toBe('a')
})

test('the second right in a row raises the level and the third settles', () => {
  const two = 'a+ b+ c+ d+ e+ f+ g+ a+'
  expect(next(`${two} b+ c+ d+ e+ f+ g+ h+`)).toMatchObject({ family: 'a', level: 2 })
  expect(next(`${two} b+ c+ d+ e+ f+ g+ h+`, ['a'])).not.toBeNull()
  expect(next(`${two} b+ c+ d+ e+ f+ g+ h+ a+`)).toMatchObject({ family: 'b', level: 2 })
  expect(next('a+ a+ a+', ['a', 'b'])).toMatchObject({ family: 'b', why: 'New.' })
})

test('once all is settled it is asked harder, what was asked longest ago first, until the hardest is settled', () => {
  const settled = 'a+ b+ a+ b+ a+ b+'
  const why = 'All is settled: harder numbers now.'
  expect(next(settled, ['a', 'b'])).toEqual({ family: 'a', level: 3, why })
  expect(next(`${settled} a+`, ['a', 'b'])).toEqual({ family: 'b', level: 3, why })
  expect(next(`${settled} a+ b+`, ['a', 'b'])).toBeNull()
})

test('what is missed when it is asked harder comes back as it was settled', () => {
  expect(next('a+ a+ a+ a-', ['a'])).toMatchObject({ family: 'a', level: 2 })
  expect(next('a+ a+ a+ a- a-', ['a'])).toMatchObject({ level: 1 })
})

test('a wrong answer lowers the level, never below the first, and the row begins again', () => {
  expect(next('a-', ['a'])).toMatchObject({ level: 1 })
  expect(next('a+ a+', ['a'])).toMatchObject({ level: 2 })
  expect(next('a+ a+ a-', ['a'])).toMatchObject({ level: 1 })
  expect(next('a+ a+ a- a+', ['a'])).toMatchObject({ level: 1 })
  expect(next('a+ a+ a- a+ a+', ['a'])).toMatchObject({ level: 2 })
  expect(next('a+ a+ a- a+ a+ a+', ['a'])).toMatchObject({ level: 3 })
  expect(next('a+ a+ a- a+ a+ a+ a+', ['a'])).toBeNull()
})

test('when nothing is due and nothing is new, the one that is due first comes early', () => {
  // due: a 7, b 5, c 9
  expect(next('a+ b- c+', ['a', 'b', 'c'])).toEqual({
    family: 'b',
    level: 1,
    why: 'Early: nothing else is due.',
  })
})

test('the same family never comes twice running unless it is alone', () => {
  // b, wrong in question 1, is due at 5, before a at 7, and was the last one
  expect(next('a+ b-', ['a', 'b'])?.family).toBe('a')
  expect(next('a+ b+ a+ b+ a+ b-', ['a', 'b'])).toMatchObject({ family: 'b', level: 1 })
})

test('all right: three families in turn until each was right three times, and once more, harder', () => {
  expect(played(['a', 'b', 'c'], '++++++++++++++++')).toBe('abcabcabcabc')
})

test('a family that is always missed goes in turn with new ones', () => {
  // a wrong at 0: due 4; e wrong at 5: due 9; a again wrong at 4: due 8
  expect(played(ORDER, '-+++-+++-')).toBe('abcdaefga')
})

test('answers to families that are not practised any more count as questions only', () => {
  expect(next('z- z+ a-3 z+ z+', ['a', 'b'])?.family).toBe('a')
  expect(next('z- z- z-', ['a'])).toMatchObject({ family: 'a', why: 'New.' })
})

/** Practises the whole bank until it is settled, right in so many of ten answers. */
function wholePractice(rightOfTen: number): { readonly asked: readonly Next[]; readonly ended: boolean } {
  const order = FAMILIES.map(({ name }) => name)
  const draw = drawFrom(`right ${rightOfTen} of ten`)
  const answers: Practised[] = []
  const asked: Next[] = []
  while (asked.length < 2000) {
    const coming = nextFamily(order, answers)
    if (!coming) return { asked, ended: true }
    asked.push(coming)
    answers.push({ family: coming.family, right: draw(10) < rightOfTen, sureness: null })
  }
  return { asked, ended: false }
}

test('the whole bank is settled after three right answers to each family, and one harder, when all are right', () => {
  const { asked, ended } = wholePractice(10)
  expect(ended).toBe(true)
  expect(asked).toHaveLength(4 * FAMILIES.length)
  for (const { name } of FAMILIES) {
    const levels = asked.filter(({ family }) => family === name).map(({ level }) => level)
    expect(levels, name).toEqual([1, 1, 2, 3])
  }
})

test.each([5, 7, 9])('right in %d of ten: nothing comes twice running until it is alone', (rightOfTen) => {
  const { asked, ended } = wholePractice(rightOfTen)
  expect(ended).toBe(true)
  const families = asked.map(({ family }) => family)
  expect(new Set(families).size).toBe(FAMILIES.length)
  const settling = asked.findIndex(({ why }) => why.startsWith('All is settled'))
  const twice = families.slice(0, settling).flatMap((family, i) => (families[i - 1] === family ? i : []))
  for (const i of twice) expect(new Set(families.slice(i, settling)).size).toBe(1)
})
