/** What a question needs on paper: how high it is at least, and what stands in it. */
import type { Question } from '../../sim/question/question.ts'
import { glued } from './glued.ts'
import { type Filling, type Size, linesOf } from './paper.ts'

/** Signs in a millimetre of text, on the safe side: 10.5 pt on the sheet, 9.5 pt among the answers. */
const SIGNS_PER_MM = 0.54
const ANSWER_SIGNS_PER_MM = 0.62
const LINE = 5
/** Over the answers of a sheet, and over those of each page */
const ANSWER_TITLE = 12
const ABOVE_ANSWERS = 2
/** Signs that the number of a question takes */
const NUMBER_SIGNS = 4
const ANSWER_LINE = 4.4

/** Of the drawing beside a question */
export const PICTURE = { width: 62, height: 50 }
const PICTURE_GAP = 6
const CAPTION = 5
const REPLY = 12
const SURE = 9
const OPTION = 7
const TAPE = 20.5
const STEP = 7
const COUNTS = 14
const LOOK = 11
/** To explain, or to reckon: the heading, and lines to write on */
const EXPLAIN = 8
const WRITING_LINE = 8
const MOST_WRITING = 8
/** Between questions, with the line that parts them; between answers */
const BETWEEN = 8.5
const BETWEEN_ANSWERS = 5

/** Pages and their parts */
const HEAD = 15
const INTRO = 34
const FOOT = 11
/** Of a code that has lines of its own in the foot */
const CODE_LINE = 4.5
/** Signs of a code beside all else in the foot, and in a line of its own */
const CODE_BESIDE = 24
const CODE_ALONE = 76
const MOST_ON_PAGE = 4

const TAPE_TURNS = [30, 60, 150, 300, 600] as const
/** The tape reaches so much further than the answer, so that its length does not tell. */
const BEYOND = 2.2

/** Worm turns on the tape; null where none can be counted on it. */
export function tapeTurns({ trial }: Question): number | null {
  if (!trial || trial.counted === 'senses') return null
  const turns = Math.abs(trial.top / trial.bottom)
  return TAPE_TURNS.find((long) => long >= BEYOND * turns) ?? null
}

/** Whether turns are counted; else, with a trial, it is looked at which way things turn. */
export const isCounted = ({ trial }: Question): boolean => trial !== null && trial.counted !== 'senses'
export const hasPicture = ({ gearing }: Question): boolean => gearing !== null

function replyHeight({ ask }: Question, column: number): number {
  if (ask.kind === 'words') return 0
  if (ask.kind === 'number') return REPLY + SURE
  const options = ask.kind === 'choice' ? ask.options : ask.cards
  const ordered = ask.kind === 'order' ? LINE : 0
  const lines = (text: string) => linesOf(glued(text), SIGNS_PER_MM * column - 6)
  return options.reduce((sum, { text }) => sum + OPTION + LINE * (lines(text) - 1), 3 + ordered) + SURE
}

function countingHeight(question: Question): number {
  if (!question.trial) return 0
  if (!isCounted(question)) return LOOK
  return STEP + COUNTS + (tapeTurns(question) === null ? 0 : TAPE)
}

/** Lines to write on: two to explain, four to reckon as well. */
const leastWriting = (question: Question): number =>
  question.ask.kind === 'number' && !hasPicture(question) ? 4 : 2

/** With a share of what is left of a page [mm], more. */
export const writingLines = (question: Question, share: number): number =>
  Math.min(MOST_WRITING, leastWriting(question) + Math.floor(share / WRITING_LINE))

export function questionHeight(question: Question, { width }: Size): number {
  const picture = hasPicture(question)
  const column = picture ? width - PICTURE.width - PICTURE_GAP : width
  const text = LINE * linesOf(glued(question.text), SIGNS_PER_MM * column, NUMBER_SIGNS)
  const explain = EXPLAIN + WRITING_LINE * leastWriting(question)
  const words = text + replyHeight(question, column) + explain
  const asked = picture ? Math.max(words, PICTURE.height + CAPTION) : words
  return asked + countingHeight(question)
}

/** Lines of its own that a sheet code takes in the foot; none where it stands beside the rest. */
export const codeLines = (code: string): number =>
  code.length <= CODE_BESIDE ? 0 : Math.ceil(code.length / CODE_ALONE)

const footHeight = (code: string): number => FOOT + CODE_LINE * codeLines(code)

export const sheetFilling = ({ height }: Size, code: string): Filling => ({
  first: height - HEAD - INTRO - footHeight(code),
  rest: height - HEAD - footHeight(code),
  most: MOST_ON_PAGE,
  gap: BETWEEN,
})

/** The table for the bench, with the cautions under it; and the cautions alone. */
export const BENCH_HEIGHT = 124
export const SAFETY_HEIGHT = 32

/** The lines of an answer, as they are told: see answer-lines.ts. */
export function answerHeight(lines: readonly string[], { width }: Size): number {
  const signs = ANSWER_SIGNS_PER_MM * (width - 10)
  return 1 + lines.reduce((sum, line) => sum + ANSWER_LINE * linesOf(glued(line), signs), 0)
}

export const answerFilling = ({ height }: Size, code: string): Filling => ({
  first: height - HEAD - ANSWER_TITLE - ABOVE_ANSWERS - footHeight(code),
  rest: height - HEAD - ABOVE_ANSWERS - footHeight(code),
  most: Number.POSITIVE_INFINITY,
  gap: BETWEEN_ANSWERS,
})
