/** Which blocks stand on which page of a sheet, and which answers on its answer pages. */
import type { Question } from '../../sim/question/question.ts'
import { type AnswerLines, answerLines, linesTaken } from './answer-lines.ts'
import {
  BENCH_HEIGHT,
  SAFETY_HEIGHT,
  answerFilling,
  answerHeight,
  questionHeight,
  sheetFilling,
  writingLines,
} from './blocks.ts'
import type { Order, Sheet } from './order.ts'
import { type Size, inside, pagesOf } from './paper.ts'
import type { Made } from './sheets.ts'

export type Block =
  | { readonly kind: 'question'; readonly at: number; readonly lines: number }
  | { readonly kind: 'bench' }
  | { readonly kind: 'safety' }

export type SheetPage =
  | { readonly kind: 'questions'; readonly first: boolean; readonly blocks: readonly Block[] }
  | {
      readonly kind: 'answers'
      readonly first: boolean
      readonly answers: readonly (AnswerLines & { readonly at: number })[]
    }

type Layout = Pick<Order, 'paper' | 'answers' | 'bench'>

const heightOf = ({ kind, question }: Placeable, size: Size): number =>
  question ? questionHeight(question, size) : kind === 'bench' ? BENCH_HEIGHT : SAFETY_HEIGHT

interface Placeable {
  readonly kind: Block['kind']
  readonly question: Question | null
}

/** What is left of each page is shared among its questions, as lines to write on. */
function questionPages({ questions, code }: Sheet, { paper, bench }: Layout): readonly SheetPage[] {
  const size = inside(paper)
  const placeable: Placeable[] = [
    ...questions.map((question) => ({ kind: 'question', question }) as const),
    { kind: bench ? 'bench' : 'safety', question: null },
  ]
  const heights = placeable.map((each) => heightOf(each, size))
  const filling = sheetFilling(size, code)
  return pagesOf(heights, filling).map((page, i) => {
    const room = i === 0 ? filling.first : filling.rest
    const taken = page.reduce((sum, at) => sum + heights[at]! + filling.gap, -filling.gap)
    const asked = page.filter((at) => placeable[at]!.question).length
    const share = Math.max(0, room - taken) / Math.max(1, asked)
    const blocks = page.map((at): Block => {
      const { kind, question } = placeable[at]!
      return question
        ? { kind: 'question', at, lines: writingLines(question, share) }
        : { kind: kind === 'bench' ? 'bench' : 'safety' }
    })
    return { kind: 'questions', first: i === 0, blocks }
  })
}

function answerPages(sheet: Sheet, { paper }: Layout): readonly SheetPage[] {
  const size = inside(paper)
  const answers = sheet.questions.map((question, at) => ({ ...answerLines(question), at }))
  const heights = answers.map((lines) => answerHeight(linesTaken(lines), size))
  return pagesOf(heights, answerFilling(size, sheet.code)).map((page, i) => ({
    kind: 'answers',
    first: i === 0,
    answers: page.map((at) => answers[at]!),
  }))
}

/** A page with the sheet it belongs to, and its number among the pages of its kind. */
export interface PlacedPage {
  readonly sheet: Sheet
  readonly page: SheetPage
  readonly number: number
  readonly of: number
}

const placed = (sheet: Sheet, pages: readonly SheetPage[]): PlacedPage[] =>
  pages.map((page, i) => ({ sheet, page, number: i + 1, of: pages.length }))

/** More pages than this are not printed at once. */
const MOST_PAGES = 400

export type MadePages = { readonly pages: readonly PlacedPage[] } | { readonly problem: string }

/** All of it in the order of printing: every version's questions, then every version's answers. */
export function pagesFor(made: Made, layout: Layout): MadePages {
  if ('problem' in made) return made
  const questions = made.sheets.flatMap((sheet) => placed(sheet, questionPages(sheet, layout)))
  const answers = layout.answers
    ? made.sheets.flatMap((sheet) => placed(sheet, answerPages(sheet, layout)))
    : []
  const pages = [...questions, ...answers]
  if (pages.length > MOST_PAGES) {
    const words = `This comes to ${pages.length} pages; up to ${MOST_PAGES} are printed at once.`
    return { problem: `${words} Choose fewer versions or questions.` }
  }
  return { pages }
}
