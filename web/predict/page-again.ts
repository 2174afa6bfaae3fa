/** Goes on where the page stood before it was loaded again, and keeps how far it has come. */
import { show } from '../frame/frame.ts'
import type { Workshop } from '../frame/workshop.ts'
import { isPageAgain, keepDraft, keptDraft } from '../question/draft.ts'
import { finishTrial } from '../question/trial-run.ts'
import { ownQuestions } from './own-questions.ts'
import { askNow } from './session.ts'

const takenUp = new WeakSet<Workshop>()

/** Asks the one about the own machine that was asked before. */
function askOwn(workshop: Workshop, place: number): void {
  if (place === workshop.predict.getState().own) return
  workshop.predict.setState({ own: place })
  askNow(workshop)
}

/** Only once in a page: what is opened in it later is asked anew. */
export function takeUpDraft(workshop: Workshop, isAgain = isPageAgain()): void {
  const { predict, exercise, records, aside, frame } = workshop
  if (takenUp.has(workshop)) return
  takenUp.add(workshop)
  const { question } = exercise.getState()
  if (!isAgain || !question) return
  const machine = aside.getState().held?.document.machine
  const own = machine && predict.getState().source === 'machine' ? ownQuestions(machine) : []
  const draft = keptDraft([question, ...own])
  if (!draft) return
  const place = own.findIndex(({ text }) => text === draft.exercise.question?.text)
  if (place >= 0) askOwn(workshop, place)
  exercise.setState(({ question: staged }) => ({ ...draft.exercise, question: staged }), true)
  predict.setState({ began: draft.began })
  records.store.setState({ committedAt: draft.committedAt })
  if (draft.exercise.phase === 'compare') finishTrial(frame, question)
  show(frame)
}

/** Keeps each change; returns what ends it. */
export function keepDrafts({ exercise, predict, records }: Workshop): () => void {
  const write = () => {
    const { began } = predict.getState()
    keepDraft(exercise.getState(), { began, committedAt: records.store.getState().committedAt })
  }
  write()
  return exercise.subscribe(write)
}
