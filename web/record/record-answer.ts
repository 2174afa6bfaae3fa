/** Takes what was committed on the sheet or in a lesson into the records. */
import { BANK } from '../../sim/question/bank.ts'
import { mark, toleranceOf } from '../../sim/question/marking.ts'
import type { Ask, Question, Reply } from '../../sim/question/question.ts'
import type { Workshop } from '../frame/workshop.ts'
import type { Exercise } from '../store/exercise.ts'
import type { Answered, Asker } from '../store/records.ts'
import { isUuid } from './check-answered.ts'
import { keepRecords } from './keep-records.ts'
import { randomId } from './random-id.ts'

export interface Occasion {
  readonly asker: Asker
  /** From randomId(), one for each run of a lesson, a set, a practice */
  readonly run: string
  /** id of the lesson, '' outside one */
  readonly lesson: string
  /** The sentence that says why this question was chosen, '' in a fixed set */
  readonly why: string
  /** Date.now() when the question was put [ms since 1970] */
  readonly began: number
}

type Answer = Pick<Answered, 'kind' | 'unit' | 'raw' | 'value' | 'answer' | 'allowed'>

const wordsOf = (ask: Ask, ids: readonly string[]): string => {
  const all = ask.kind === 'choice' ? ask.options : ask.kind === 'order' ? ask.cards : []
  return ids.map((id) => all.find((each) => each.id === id)?.text ?? id).join(' → ')
}

function valueOf(reply: Reply | null): number | string | null {
  if (!reply) return null
  if (reply.kind === 'number') return reply.value
  if (reply.kind === 'choice') return reply.option
  return reply.kind === 'order' ? reply.order.join(' ') : reply.text
}

function rawOf(ask: Ask, { text, reply }: Exercise): string {
  if (reply?.kind === 'choice') return wordsOf(ask, [reply.option])
  if (reply?.kind === 'order') return wordsOf(ask, reply.order)
  return reply?.kind === 'words' ? reply.text : text
}

function answerOf(ask: Ask, exercise: Exercise): Answer {
  const { kind } = ask
  const given = { kind, raw: rawOf(ask, exercise), value: valueOf(exercise.reply) } as const
  if (ask.kind === 'number') {
    const { relative, absolute } = toleranceOf(ask.tolerance, ask.answer)
    const allowed = relative * Math.abs(ask.answer) + absolute
    return { ...given, unit: ask.unit, answer: ask.answer, allowed }
  }
  const answer = ask.kind === 'words' ? '' : ask.kind === 'order' ? ask.answer.join(' ') : ask.answer
  return { ...given, unit: '', answer, allowed: 0 }
}

function whichQuestion({ key, family, given, text }: Question) {
  return {
    bank: key?.bank ?? BANK,
    seed: key?.seed ?? '',
    family: family ?? '',
    index: key?.index ?? 0,
    level: key?.level ?? 1,
    given: given ?? {},
    text,
  }
}

/**
 * Adds what was answered to the records, once for each run, and keeps it. Call it when the comparison begins. Null
 * when nothing is asked, or when this answer is already there.
 */
export function recordAnswer(workshop: Workshop, occasion: Occasion): Answered | null {
  const { exercise, records } = workshop
  keepRecords(workshop)
  const now = exercise.getState()
  const { question, reply, sureness, ownCount } = now
  const { asker, run, lesson, why, began } = occasion
  if (!isUuid(run)) throw new Error(`a run must be an id from randomId(), got ${run}`)
  if (!question || !records.isNew(question, run)) return null
  const marked = reply ? mark(question, reply) : null
  const { committedAt } = records.store.getState()
  const answered: Answered = {
    id: randomId(),
    time: new Date().toISOString(),
    asker,
    run,
    lesson,
    why,
    ...whichQuestion(question),
    ...answerOf(question.ask, now),
    right: marked?.right ?? null,
    cause: marked?.cause ?? '',
    sureness,
    ownCount,
    seconds: Math.max(0, Math.round((committedAt || Date.now()) - began) / 1000),
  }
  records.add(answered)
  return answered
}
