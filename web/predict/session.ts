/** What Predict does to the page: it asks, goes on, compares, leaves, and finds its question again. */
import { copyTurns, noTurns } from '../../sim/drive/turns.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { questionAbout, questionFor } from '../../sim/question/instance.ts'
import type { Question } from '../../sim/question/question.ts'
import { keepPractising } from '../file/asks.ts'
import { FIRST_MACHINE } from '../file/first-machine.ts'
import { plainState } from '../file/link-state.ts'
import { browserKeeper } from '../file/storage.ts'
import { bringBack } from '../frame/borrow.ts'
import { hold, placeAt, show, zero } from '../frame/frame.ts'
import { type Workshop, paceFor } from '../frame/workshop.ts'
import { stageQuestion } from '../question/stage-question.ts'
import { finishTrial, senseOf } from '../question/trial-run.ts'
import { keepRecords } from '../record/keep-records.ts'
import { randomId } from '../record/random-id.ts'
import { recordAnswer } from '../record/record-answer.ts'
import { benchFor } from '../store/bench.ts'
import { asked, committed, compared, noExercise, skipped } from '../store/exercise.ts'
import type { Predict, Source } from '../store/predict.ts'
import { ownQuestions } from './own-questions.ts'
import { instanceOf, nextPractised, practiceSeed } from './practice.ts'

/** Whether what is asked has the counts of the machine on the bench. */
const isAboutOwn = ({ source, set }: Predict): boolean =>
  source === 'machine' || (source === 'set' && set?.about === 'machine')

/** The machine that the person has on the bench, lent or not. */
const ownMachine = ({ aside, document }: Workshop): Machine =>
  (aside.getState().held?.document ?? document.store.getState()).machine

/** The question at its start on the stage, on a bench where everything is in its plain state. */
function putOnStage(workshop: Workshop, question: Question): void {
  const { predict, bench, document } = workshop
  const own = isAboutOwn(predict.getState())
  stageQuestion(workshop, question, own ? ownMachine(workshop) : FIRST_MACHINE.machine)
  const { machine } = document.store.getState()
  const plain = { ...plainState(machine).bench, sense: senseOf(question), pace: paceFor(machine) }
  bench.setState(benchFor(machine, plain))
}

/** Asks anew; covered first, so that nothing shows through while the stage changes. */
function ask(workshop: Workshop, question: Question | null, why = ''): void {
  const { exercise, predict } = workshop
  exercise.setState(question ? asked(question) : noExercise, true)
  const run = predict.getState().source === 'machine' ? randomId() : predict.getState().run || randomId()
  predict.setState({ why, began: Date.now(), run, left: null })
  if (question) putOnStage(workshop, question)
}

/** The question of the set that stands on the sheet; null when this page's bank does not have it. */
function questionOfSet(workshop: Workshop): Question | null {
  const { set } = workshop.predict.getState()
  const item = set?.items[set.at]
  if (!set || !item) return null
  const key = { bank: set.bank, seed: set.seed, ...item }
  return set.about ? questionAbout(ownMachine(workshop), key) : questionFor(key)
}

/** Asks what the source has to ask now. */
export function askNow(workshop: Workshop): void {
  const { predict, records } = workshop
  const { source, own } = predict.getState()
  if (source === 'set') ask(workshop, questionOfSet(workshop))
  else if (source === 'machine') {
    const questions = ownQuestions(ownMachine(workshop))
    ask(workshop, questions[own % questions.length] ?? null)
  } else {
    const chosen = nextPractised(practiceSeed(browserKeeper()), records.store.getState().answered)
    ask(workshop, chosen?.question ?? null, chosen?.why)
  }
}

/** What was said last stays to be read; it may tell what is asked now. */
export const fallSilent = ({ announcer }: Workshop): void => announcer.say('')

/** Another source begins a run of its own. */
export function chooseSource(workshop: Workshop, source: Source): void {
  fallSilent(workshop)
  workshop.predict.setState({ source, run: randomId() })
  keepPractising(browserKeeper(), source === 'practice')
  askNow(workshop)
}

/** The next of the machine's, of the set's, or what practice chooses. */
export function askNext(workshop: Workshop): void {
  fallSilent(workshop)
  const { predict } = workshop
  const { own, set } = predict.getState()
  predict.setState({ own: own + 1, set: set && { ...set, at: Math.min(set.at + 1, set.items.length - 1) } })
  askNow(workshop)
}

/** The same kind with other numbers, as practice. */
export function askAnother(workshop: Workshop, { family, key }: Question): void {
  const { predict, records } = workshop
  if (family === null) return
  fallSilent(workshop)
  if (predict.getState().source !== 'practice') {
    predict.setState({ source: 'practice', run: randomId() })
    keepPractising(browserKeeper(), true)
  }
  const seed = practiceSeed(browserKeeper())
  const { answered } = records.store.getState()
  ask(
    workshop,
    instanceOf(family, key?.level ?? 1, seed, answered),
    'The same kind again, with other numbers.',
  )
}

/** All is shown: the machine stands at the end of what was asked, and the answer goes into the record, once. */
export function compare(workshop: Workshop): void {
  const { exercise, predict, frame } = workshop
  const { question, phase } = exercise.getState()
  if (!question || phase !== 'count') return
  finishTrial(frame, question)
  exercise.setState(compared, true)
  const { source: asker, run, why, began } = predict.getState()
  recordAnswer(workshop, { asker, run, lesson: '', why, began })
  show(frame)
}

/** What comes after the commitment: the count, or the comparison where there is nothing to count. */
function goOn(workshop: Workshop): void {
  const { exercise, frame } = workshop
  if (exercise.getState().phase !== 'count') return
  zero(frame)
  show(frame)
  if (!exercise.getState().question?.trial) compare(workshop)
}

export function commit(workshop: Workshop): void {
  workshop.exercise.setState(committed, true)
  goOn(workshop)
}

export function skip(workshop: Workshop): void {
  workshop.exercise.setState(skipped, true)
  goOn(workshop)
}

/** The question waits as it is, for as long as its machine is the one on the bench. */
function keepQuestion({ exercise, predict, frame, records }: Workshop, machine: Machine): void {
  const now = exercise.getState()
  if (!now.question) return
  const moment = copyTurns(noTurns(), frame.state.turns)
  const { committedAt } = records.store.getState()
  predict.setState({ left: { exercise: now, moment, machine, committedAt } })
}

/** Asks, or finds the question as it was left. */
export function enter(workshop: Workshop): void {
  const { predict, exercise, frame, records } = workshop
  keepRecords(workshop)
  const { left } = predict.getState()
  if (!left || (isAboutOwn(predict.getState()) && left.machine !== ownMachine(workshop))) {
    askNow(workshop)
    return
  }
  const { question } = left.exercise
  exercise.setState(left.exercise, true)
  records.store.setState({ committedAt: left.committedAt })
  if (question) putOnStage(workshop, question)
  placeAt(frame, left.moment.turns, left.moment.ticks, left.moment.rest)
  predict.setState({ left: null })
  workshop.copyReading()
}

/**
 * Follows the page while Predict is open: another way takes the person's own machine, another machine asks anew.
 * Returns what ends it.
 */
export function followPage(workshop: Workshop): () => void {
  const { view, aside, exercise } = workshop
  const isOpen = () => view.getState().way === 'predict'
  const ends = [
    aside.subscribe((now, before) => {
      if (now.held || !before.held) return
      keepQuestion(workshop, before.held.document.machine)
      queueMicrotask(() => {
        if (isOpen() && !aside.getState().held) enter(workshop)
      })
    }),
    view.subscribe((now, before) => {
      if (before.way !== 'predict' || now.way === 'predict') return
      hold(workshop.frame)
      bringBack(workshop)
      exercise.setState(noExercise, true)
    }),
  ]
  return () => {
    for (const end of ends) end()
  }
}
