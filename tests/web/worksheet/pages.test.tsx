/** Every question of the bank on paper, before a browser lays it out. */
import jsQR from 'jsqr'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { FAMILIES } from '../../../sim/question/bank.ts'
import type { Level } from '../../../sim/question/family.ts'
import { valueText } from '../../../sim/question/value-text.ts'
import { READY_LESSONS } from '../../../web/lesson/ready-lessons.ts'
import { PaperPage } from '../../../web/worksheet/PaperPage.tsx'
import { answerLines, toleranceText } from '../../../web/worksheet/answer-lines.ts'
import { tapeTurns } from '../../../web/worksheet/blocks.ts'
import { sheetLink } from '../../../web/worksheet/link.ts'
import { type Order, type Sheet, firstOrder } from '../../../web/worksheet/order.ts'
import { sheetsOf } from '../../../web/worksheet/sheets.ts'
import { type PlacedPage, pagesFor } from '../../../web/worksheet/pages.ts'
import { qrPicture } from '../../../web/worksheet/qr.ts'
import { bootCleaner } from '../../support/machines.ts'

const AT = {
  machine: bootCleaner,
  practice: bootCleaner,
  lessons: READY_LESSONS.map((lesson) => ({ lesson, builtIn: true })),
}
const ORDER: Order = { ...firstOrder, answers: true }
const ADDRESS = 'https://counterturn.example/'
const LEVELS: readonly Level[] = [1, 2, 3]

function made(order: Order): Sheet {
  const result = sheetsOf(order, AT)
  if ('problem' in result) throw new Error(result.problem)
  return result.sheets[0]!
}

function pages(order: Order): readonly PlacedPage[] {
  const result = pagesFor(sheetsOf(order, AT), order)
  if ('problem' in result) throw new Error(result.problem)
  return result.pages
}

const markup = (placed: PlacedPage) =>
  renderToStaticMarkup(<PaperPage placed={placed} paper="a4" address={ADDRESS} />)
const words = (html: string) =>
  html
    .replaceAll(/<svg.*?<\/svg>/gs, ' ')
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll(/\s+/g, ' ')

/** Six families at a time, twice each, so that a sheet has room for them */
const ofBank = LEVELS.flatMap((level) =>
  Array.from({ length: Math.ceil(FAMILIES.length / 6) }, (_, i): Order => {
    const some = FAMILIES.slice(6 * i, 6 * i + 6).map(({ name }) => ({ family: name, level }))
    return { ...ORDER, level, seed: `bank-${level}`, families: [...some, ...some] }
  }),
)

const ofLessons = READY_LESSONS.map(({ id }): Order => ({
  ...ORDER,
  from: 'lesson',
  lesson: id,
  ownNumbers: true,
}))
const batches = [...ofBank, ...ofLessons]

describe('every question of the bank and of the lessons', () => {
  test('is printed whole, in lines and letters, no number missing', () => {
    for (const order of batches) {
      const html = pages(order).map(markup)
      for (const page of html) expect(page).not.toMatch(/NaN|undefined|Infinity|\[object|<img|<image/)
      const all = words(html.join(' '))
      for (const { text } of made(order).questions) {
        const plain = words(renderToStaticMarkup(<p>{text}</p>)).trim()
        expect(all.split(plain).length - 1, plain).toBeGreaterThanOrEqual(2)
      }
    }
  })

  test('has its working on the answer page alone', () => {
    for (const order of batches) {
      const asked = pages(order).filter(({ page }) => page.kind === 'questions')
      const html = words(asked.map(markup).join(' '))
      for (const { working, ask } of made(order).questions)
        if (ask.kind !== 'order' && working !== '')
          expect(html).not.toContain(words(renderToStaticMarkup(<p>{working}</p>)).trim())
    }
  })

  test('tells on its tape no more than how many turns the answer stays well below', () => {
    for (const order of batches) {
      for (const question of made(order).questions) {
        const long = tapeTurns(question)
        if (long === null || !question.trial) continue
        expect(long / 2).toBeGreaterThan(Math.abs(question.trial.top / question.trial.bottom))
      }
    }
  })
})

describe('the answers', () => {
  test('are those of the core, with every wrong one that has a cause', () => {
    for (const order of batches) {
      for (const question of made(order).questions) {
        const { answer, slips } = answerLines(question)
        const { ask } = question
        if (ask.kind === 'number') {
          expect(answer.startsWith(valueText(ask.answer, ask.unit))).toBe(true)
          expect(slips.map(({ value }) => value)).toEqual(
            ask.slips.map(({ value }) => valueText(value, ask.unit)),
          )
        } else if (ask.kind === 'choice') {
          const right = ask.options.find(({ id }) => id === ask.answer)!
          expect(right.text.startsWith(answer)).toBe(true)
        } else if (ask.kind === 'order') {
          const places = ask.answer.map((id) =>
            answer.indexOf(ask.cards.find((card) => card.id === id)!.text),
          )
          expect(places).toEqual(places.toSorted((a, b) => a - b))
          expect(places[0]).toBeGreaterThan(0)
        }
      }
    }
  })

  test('say how far off still counts, and nothing where the count has to be met', () => {
    const asked = { kind: 'number', slips: [] } as const
    expect(toleranceText({ ...asked, unit: 'turn', tolerance: 'r0.5', answer: 20 })).toBe('')
    expect(toleranceText({ ...asked, unit: 'turn', tolerance: 'r0.5', answer: 20 / 3 })).toBe(
      'give or take 0.5 %',
    )
    expect(toleranceText({ ...asked, unit: 'N m', tolerance: 'r1', answer: 0.4 })).toBe('give or take 1 %')
    expect(toleranceText({ ...asked, unit: 'degC', tolerance: 'a0.5', answer: 30.4 })).toBe(
      'give or take 0.5 °C',
    )
    expect(toleranceText({ ...asked, unit: '1', tolerance: 'exact', answer: 31 })).toBe('')
    expect(toleranceText({ ...asked, unit: 'V', tolerance: 'r1', answer: 0 })).toBe('')
  })

  test('stand on pages of their own after all questions, version by version, or on none', () => {
    const all = pages({ ...ORDER, versions: 3 })
    const kinds = all.map(({ page }) => page.kind)
    expect(kinds).toEqual(kinds.toSorted((a, b) => Number(a === 'answers') - Number(b === 'answers')))
    const answered = all.filter(({ page }) => page.kind === 'answers')
    expect(answered.map(({ sheet }) => sheet.version)).toEqual([1, 2, 3])
    for (const placed of answered) expect(words(markup(placed))).toContain(placed.sheet.code)
    expect(pages({ ...ORDER, versions: 3, answers: false })).toEqual(all.slice(0, kinds.indexOf('answers')))
  })
})

describe('a page', () => {
  test('carries seed, sheet code and its number; the first the QR code; the last the cautions', () => {
    for (const bench of [true, false]) {
      const asked = pages({ ...firstOrder, bench, answers: false })
      const html = asked.map(markup)
      asked.forEach(({ sheet }, i) => {
        expect(words(html[i]!)).toContain(`Seed ${sheet.seed}`)
        expect(words(html[i]!)).toContain(sheet.code)
        expect(words(html[i]!)).toContain(`Page ${i + 1} of ${asked.length}`)
        expect(html[i]!.includes('ws-qr')).toBe(i === 0)
      })
      expect(html.at(-1)!.includes('At the bench')).toBe(bench)
      expect(html.filter((page) => page.includes('licensed practice come first; this sheet'))).toHaveLength(1)
    }
  })

  test('is one of few enough to print at once', () => {
    const families = Array.from({ length: 24 }, () => firstOrder.families[0]!)
    expect(pagesFor(sheetsOf({ ...firstOrder, families, versions: 40 }, AT), firstOrder)).toEqual({
      problem: expect.stringMatching(/^This comes to \d+ pages; up to 400 are printed at once/),
    })
  })
})

describe('a QR code', () => {
  /** As a camera would see it: six dots for a square, four squares of white around. */
  function seen({ size, path }: { readonly size: number; readonly path: string }) {
    const dark = new Set<number>()
    for (const [, x, y, long] of path.matchAll(/M(\d+) (\d+)h(\d+)/g))
      for (let i = 0; i < Number(long); i++) dark.add(Number(y) * size + Number(x) + i)
    const [scale, quiet] = [6, 4]
    const width = scale * (size + 2 * quiet)
    const picture = new Uint8ClampedArray(4 * width * width).fill(255)
    for (let y = 0; y < width; y++) {
      for (let x = 0; x < width; x++) {
        const [column, row] = [Math.floor(x / scale) - quiet, Math.floor(y / scale) - quiet]
        const inside = column >= 0 && column < size && row >= 0 && row < size
        if (inside && dark.has(row * size + column))
          picture.fill(0, 4 * (y * width + x), 4 * (y * width + x) + 3)
      }
    }
    return { picture, width }
  }

  test('of a sheet is read by a reader of its own as the link', () => {
    const link = sheetLink(made(firstOrder), ADDRESS)!
    const code = qrPicture(link)!
    const { picture, width } = seen(code)
    expect(jsQR(picture, width, width)?.data).toBe(link)
    // at 30 mm a square is then 0.38 mm at least, which the camera of a phone still tells apart (common practice)
    expect(code.size).toBeLessThanOrEqual(77)
  })

  test('is left out where a link is too long for one', () => {
    expect(qrPicture('x'.repeat(4000))).toBeNull()
  })
})
