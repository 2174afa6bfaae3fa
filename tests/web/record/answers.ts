/** Workshops in which questions of the bank were answered. */
import { FAMILIES } from '../../../sim/question/bank.ts'
import type { Level } from '../../../sim/question/family.ts'
import { questionFor } from '../../../sim/question/instance.ts'
import type { Sureness } from '../../../sim/question/marking.ts'
import type { Question, Reply } from '../../../sim/question/question.ts'
import { type Workshop, createWorkshop } from '../../../web/frame/workshop.ts'
import { type Occasion, recordAnswer } from '../../../web/record/record-answer.ts'
import { keepRecords } from '../../../web/record/keep-records.ts'
import { asked, committed, compared, skipped, withAnswer, withSureness } from '../../../web/store/exercise.ts'
import type { Answered } from '../../../web/store/records.ts'
import type { ErasableKeeper } from '../../../web/file/storage.ts'
import { bootCleaner } from '../../support/machines.ts'
import { memory } from './storages.ts'

export const RUN = '3f2b8c1a-5d6e-4f70-8a91-b2c3d4e5f607'

export const occasion = (part: Partial<Occasion> = {}): Occasion => ({
  asker: 'practice',
  run: RUN,
  lesson: '',
  why: 'New.',
  began: Date.now() - 20_000,
  ...part,
})

export function workshopWith(keeper: ErasableKeeper | null = memory(), page = new EventTarget()): Workshop {
  const workshop = createWorkshop(bootCleaner, 'light')
  keepRecords(workshop, keeper, page)
  return workshop
}

export function bankQuestion(family: string, index = 0, level: Level = 1): Question {
  const question = questionFor({ bank: 1, seed: 'demo', family, index, level })
  if (!question) throw new Error(`the bank has no ${family}`)
  return question
}

export const familyOfKind = (kind: 'number' | 'choice' | 'order'): string => {
  const family = FAMILIES.find((each) => each.kind === kind)
  if (!family) throw new Error(`the bank has no family of kind ${kind}`)
  return family.name
}

export const rightReply = ({ ask }: Question): Reply => {
  if (ask.kind === 'number') return { kind: 'number', value: ask.answer }
  if (ask.kind === 'choice') return { kind: 'choice', option: ask.answer }
  return ask.kind === 'order' ? { kind: 'order', order: ask.answer } : { kind: 'words', text: 'Because.' }
}

export interface Turn {
  readonly reply?: Reply | null
  readonly text?: string
  readonly sureness?: Sureness
  readonly occasion?: Partial<Occasion>
}

/** Asks a question, answers it (rightly unless told otherwise; null is to skip), compares and records it. */
export function answer(workshop: Workshop, question: Question, turn: Turn = {}): Answered {
  const { exercise } = workshop
  const { reply = rightReply(question), text = 'as typed', sureness } = turn
  exercise.setState(asked(question))
  if (reply) exercise.setState((last) => withAnswer(last, text, reply))
  if (sureness) exercise.setState((last) => withSureness(last, sureness))
  exercise.setState(reply ? committed : skipped)
  exercise.setState(compared)
  const answered = recordAnswer(workshop, occasion(turn.occasion))
  if (!answered) throw new Error('this answer was recorded before')
  return answered
}
