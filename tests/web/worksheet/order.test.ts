import { describe, expect, test } from 'vitest'
import { BANK, FAMILIES } from '../../../sim/question/bank.ts'
import { questionFor } from '../../../sim/question/instance.ts'
import { readAddress } from '../../../web/file/address.ts'
import { readLink } from '../../../web/file/read-link.ts'
import { READY_LESSONS } from '../../../web/lesson/ready-lessons.ts'
import { questionAt } from '../../../web/lesson/question-of.ts'
import { MACHINE_FAMILIES } from '../../../web/worksheet/about-machine.ts'
import { orderFromCode } from '../../../web/worksheet/from-code.ts'
import { sheetLink, shortAddress } from '../../../web/worksheet/link.ts'
import { type AtHand, type Order, type Sheet, firstOrder } from '../../../web/worksheet/order.ts'
import { sheetsOf } from '../../../web/worksheet/sheets.ts'
import { wantedIn, withCount } from '../../../web/worksheet/wanted.ts'
import { bootCleaner, ventOpener } from '../../support/machines.ts'

const AT: AtHand = {
  machine: ventOpener,
  practice: bootCleaner,
  lessons: READY_LESSONS.map((lesson) => ({ lesson, builtIn: true })),
}

function sheets(order: Order, at = AT): readonly Sheet[] {
  const made = sheetsOf(order, at)
  if ('problem' in made) throw new Error(made.problem)
  return made.sheets
}
/** All of it that is data: an order of cards has a function for its slips. */
const plain = (sheet: unknown): unknown => JSON.parse(JSON.stringify(sheet))
const texts = (sheet: Sheet) => sheet.questions.map(({ text }) => text)
const problemOf = (order: Order) => sheetsOf(order, AT)

const PAGE = 'https://counterturn.example/'
const ORDERS: readonly Order[] = [
  firstOrder,
  { ...firstOrder, seed: 'rado-7', level: 2, families: [{ family: 'turns-worm', level: 2 }] },
  { ...firstOrder, from: 'machine', seed: 'mipe' },
  ...READY_LESSONS.map(({ id }): Order => ({
    ...firstOrder,
    from: 'lesson',
    ownNumbers: false,
    lesson: id,
    seed: 'zuna',
  })),
]

describe('sheets of an order', () => {
  test('are the same for the same seed, and others for another', () => {
    for (const order of ORDERS) {
      const [sheet] = sheets(order)
      expect(plain(sheets(order))).toEqual(plain([sheet]))
      const [other] = sheets({ ...order, seed: 'other' })
      expect(texts(other!)).not.toEqual(texts(sheet!))
      expect(other!.code).not.toBe(sheet!.code)
    }
  })

  test('differ from version to version, each by its own seed and code', () => {
    for (const order of ORDERS) {
      const class12 = sheets({ ...order, versions: 12 })
      expect(class12.map(({ version }) => version)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])
      expect(class12[4]!.seed).toBe(`${order.seed}/5`)
      expect(new Set(class12.map(({ code }) => code)).size).toBe(12)
      expect(texts(class12[0]!)).not.toEqual(texts(class12[1]!))
    }
  })

  test('ask every question that was chosen, none twice', () => {
    const families = withCount(firstOrder.families, { family: 'turns-worm', level: 1 }, 8)
    const [sheet] = sheets({ ...firstOrder, families })
    expect(sheet!.questions.map(({ family }) => family)).toEqual(families.map(({ family }) => family))
    const worm = sheet!.questions.filter(({ family }) => family === 'turns-worm')
    expect(new Set(worm.map(({ given }) => JSON.stringify(given))).size).toBe(8)
  })

  test('take every bank question of a lesson, in its order', () => {
    const lesson = READY_LESSONS[0]!
    const [sheet] = sheets({ ...firstOrder, from: 'lesson', ownNumbers: false, lesson: lesson.id })
    expect(sheet!.title).toBe(lesson.name)
    expect(wantedIn(lesson).length).toBeGreaterThan(8)
    expect(sheet!.questions.map(({ family }) => family)).toEqual(wantedIn(lesson).map(({ family }) => family))
  })

  test('of a lesson with its own numbers ask all that it asks, in its own order, in one version', () => {
    for (const lesson of READY_LESSONS) {
      const order: Order = { ...firstOrder, from: 'lesson', lesson: lesson.id, versions: 5 }
      const made = sheets(order)
      expect(made).toHaveLength(1)
      const wanted = lesson.beats.flatMap(({ questions }, beat) =>
        questions.map((_, place) => questionAt(lesson, beat, place)!.text),
      )
      expect(wanted.length).toBeGreaterThan(10)
      expect(texts(made[0]!)).toEqual(wanted)
    }
  })

  test('about a machine ask about its own counts', () => {
    const all = MACHINE_FAMILIES.map(({ name }) => ({ family: name, level: 1 as const }))
    for (let i = 0; i < all.length; i += 6) {
      const order: Order = { ...firstOrder, from: 'machine', aboutMachine: all.slice(i, i + 6) }
      for (const { gearing } of sheets(order)[0]!.questions) {
        const { wormStarts, wheelTeeth, hand } = ventOpener.gearing
        expect({ wormStarts, wheelTeeth, hand, ...gearing }).toMatchObject({ wormStarts, wheelTeeth, hand })
      }
    }
  })
})

describe('an order that makes no sheet', () => {
  test('says in words what is missing or too much', () => {
    expect(problemOf({ ...firstOrder, families: [] })).toHaveProperty('problem')
    expect(problemOf({ ...firstOrder, from: 'lesson', ownNumbers: false, lesson: 'none' })).toHaveProperty(
      'problem',
    )
    const many = FAMILIES.slice(0, 31).map(({ name }) => ({ family: name, level: 1 as const }))
    expect(problemOf({ ...firstOrder, families: many })).toEqual({
      problem: '31 questions are chosen; a sheet holds up to 30.',
    })
    for (const seed of ['', 'two words', 'a|b', 'a/1', 'ä', 'x'.repeat(16)])
      expect(problemOf({ ...firstOrder, seed })).toHaveProperty('problem')
    for (const versions of [0, 41, 1.5, Number.NaN])
      expect(problemOf({ ...firstOrder, versions })).toHaveProperty('problem')
  })
})

describe('a sheet code that is typed', () => {
  test('brings the same sheet back, also that of one version of a class', () => {
    for (const order of ORDERS) {
      for (const versions of [1, 5]) {
        for (const sheet of sheets({ ...order, versions })) {
          const back = orderFromCode(sheet.code, { ...firstOrder, families: [] }, AT)
          if ('problem' in back) throw new Error(back.problem)
          const again = sheets(back.order).find(({ version }) => version === back.version)
          expect(plain(again)).toEqual(plain(sheet))
        }
      }
    }
  })

  test('of a lesson with its own numbers brings it back, and leaves seed and versions as they were', () => {
    const order: Order = { ...firstOrder, from: 'lesson', lesson: READY_LESSONS[1]!.id }
    const [sheet] = sheets(order)
    const back = orderFromCode(sheet!.code, { ...firstOrder, seed: 'mine', versions: 7 }, AT)
    if ('problem' in back) throw new Error(back.problem)
    expect(back.order).toMatchObject({ seed: 'mine', versions: 7 })
    expect(plain(sheets(back.order))).toEqual(plain([sheet]))
  })

  test('says which machine or lesson it needs', () => {
    const [about] = sheets({ ...firstOrder, from: 'machine' })
    const elsewhere = { ...AT, machine: bootCleaner }
    expect(orderFromCode(about!.code, firstOrder, elsewhere)).toEqual({
      problem: expect.stringContaining(`${ventOpener.gearing.wheelTeeth} teeth`),
    })
    const [taken] = sheets({ ...firstOrder, from: 'lesson', ownNumbers: false, lesson: READY_LESSONS[0]!.id })
    expect(orderFromCode(taken!.code, firstOrder, { ...AT, lessons: [] })).toHaveProperty('problem')
    const shorter = { ...READY_LESSONS[0]!, beats: READY_LESSONS[0]!.beats.slice(0, 5) }
    const changed = { ...AT, lessons: [{ lesson: shorter, builtIn: true }] }
    expect(orderFromCode(taken!.code, firstOrder, changed)).toEqual({
      problem: expect.stringContaining('changed'),
    })
  })
})

describe('the link of a sheet', () => {
  test('asks these very questions in Predict', () => {
    for (const order of ORDERS.filter(({ from }) => from !== 'machine')) {
      const [sheet] = sheets({ ...order, versions: 2 })
      const link = sheetLink(sheet!, PAGE)!
      const { way, link: text } = readAddress(link.slice(link.indexOf('#')))
      const { state, problems } = readLink(text!)
      expect(way).toBe('predict')
      expect(problems).toEqual([])
      const { seed, items, bank, at } = state!.asked!
      expect(at).toBe(0)
      expect(items.map((item) => questionFor({ ...item, bank, seed })?.text)).toEqual(texts(sheet!))
      expect(bank).toBe(BANK)
    }
  })

  test('opens the lesson where it is asked as it is; a lesson of a file of one’s own has none', () => {
    const lesson = READY_LESSONS[0]!
    const order: Order = { ...firstOrder, from: 'lesson', lesson: lesson.id }
    const link = sheetLink(sheets(order)[0]!, PAGE)!
    const { state, problems } = readLink(readAddress(link.slice(link.indexOf('#'))).link!)
    expect(problems).toEqual([])
    expect(state).toMatchObject({ way: 'demonstrate', lesson: { id: lesson.id, beat: lesson.beats[0]!.id } })
    const own = { ...AT, lessons: [{ lesson, builtIn: false }] }
    expect(sheetLink(sheets(order, own)[0]!, PAGE)).toBeNull()
  })

  test('stands short on paper', () => {
    expect(shortAddress('https://counterturn.example/')).toBe('counterturn.example')
    expect(shortAddress('http://room.local:8080/tools/index.html?quality=low')).toBe('room.local:8080/tools')
  })
})
