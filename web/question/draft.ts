/**
 * How far the question that is asked has come, kept for as long as this tab lives: after a reload what was typed is
 * still there, and what was committed is still committed. What is read back is checked like anything from outside.
 */
import type { Sureness } from '../../sim/question/marking.ts'
import type { Ask, Question, Reply } from '../../sim/question/question.ts'
import { type ErasableKeeper, keep, kept } from '../file/storage.ts'
import { type Exercise, type Phase, asked } from '../store/exercise.ts'

const DRAFT_KEY = 'counterturn.draft'
/** Nothing that somebody types here is longer. */
const LONGEST = 1000

/** When it was asked and committed [ms since 1970] */
export interface DraftTimes {
  readonly began: number
  readonly committedAt: number
}

export interface Draft extends DraftTimes {
  readonly exercise: Exercise
}

const tabKeeper = (): ErasableKeeper | null => {
  try {
    return globalThis.sessionStorage ?? null
  } catch {
    return null
  }
}

/** Whether this page stands where it stood before in this tab, and was not opened by a link. */
export const isPageAgain = (): boolean =>
  performance.getEntriesByType('navigation').some((entry) => 'type' in entry && entry.type !== 'navigate')

export function keepDraft(
  { question, ...rest }: Exercise,
  times: DraftTimes,
  keeper: ErasableKeeper | null = tabKeeper(),
): void {
  if (question) keep(keeper, DRAFT_KEY, JSON.stringify({ question: question.text, ...rest, ...times }))
}

export function eraseDraft(keeper: ErasableKeeper | null = tabKeeper()): void {
  keeper?.removeItem(DRAFT_KEY)
}

type Fields = Readonly<Record<string, unknown>>

const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null

const textIn = (value: unknown): string => (typeof value === 'string' ? value.slice(0, LONGEST) : '')
const numbersIn = (value: unknown): readonly number[] =>
  Array.isArray(value) ? value.filter((each): each is number => Number.isFinite(each)) : []
const timeIn = (value: unknown): number => (typeof value === 'number' && value > 0 ? value : Date.now())
const surenessIn = (value: unknown): Sureness | null =>
  value === 1 || value === 2 || value === 3 ? value : null
const phaseIn = (value: unknown): Phase => (value === 'count' || value === 'compare' ? value : 'predict')

/** The answer where it is one to what is asked. */
function replyIn(ask: Ask, value: unknown): Reply | null {
  if (!isFields(value) || value['kind'] !== ask.kind) return null
  if (ask.kind === 'number') {
    const number = value['value']
    return typeof number === 'number' && Number.isFinite(number) ? { kind: 'number', value: number } : null
  }
  if (ask.kind === 'choice') {
    const chosen = ask.options.find(({ id }) => id === value['option'])
    return chosen ? { kind: 'choice', option: chosen.id } : null
  }
  if (ask.kind === 'words') {
    const text = textIn(value['text'])
    return text === '' ? null : { kind: 'words', text }
  }
  const { order } = value
  const ids = ask.cards.map(({ id }) => id)
  const isWhole = Array.isArray(order) && order.length === ids.length && ids.every((id) => order.includes(id))
  return isWhole ? { kind: 'order', order: order.map(String) } : null
}

function keptFields(keeper: ErasableKeeper | null): Fields | null {
  try {
    const value: unknown = JSON.parse(kept(keeper, DRAFT_KEY) ?? 'null')
    return isFields(value) ? value : null
  } catch {
    return null
  }
}

/** A count begins anew, since the machine stands at its start again. */
function draftFrom(fields: Fields, question: Question): Draft {
  const reply = replyIn(question.ask, fields['reply'])
  const skipped = fields['skipped'] === true && reply === null
  const phase = reply || skipped ? phaseIn(fields['phase']) : 'predict'
  const reason = fields['reason']
  const compares = phase === 'compare'
  return {
    exercise: {
      ...asked(question),
      phase,
      text: textIn(fields['text']),
      reply,
      sureness: surenessIn(fields['sureness']),
      skipped,
      taps: compares ? numbersIn(fields['taps']) : [],
      ownCount: textIn(fields['ownCount']),
      reason: compares && typeof reason === 'number' && question.reasons[reason] ? reason : null,
      note: textIn(fields['note']),
    },
    began: timeIn(fields['began']),
    committedAt: timeIn(fields['committedAt']),
  }
}

/** What is kept of the one of these questions that it belongs to; null where it belongs to none. */
export function keptDraft(
  questions: readonly Question[],
  keeper: ErasableKeeper | null = tabKeeper(),
): Draft | null {
  const fields = keptFields(keeper)
  const question = fields && questions.find(({ text }) => text === fields['question'])
  return fields && question ? draftFrom(fields, question) : null
}
