import fc from 'fast-check'
import { renderToString } from 'react-dom/server'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { createStore } from 'zustand/vanilla'
import { TICKS_PER_TURN } from '../../sim/drive/turns.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { BANK, FAMILIES, familyNamed } from '../../sim/question/bank.ts'
import { questionFor, questionWith } from '../../sim/question/instance.ts'
import type { Question } from '../../sim/question/question.ts'
import { linkFor } from '../../web/file/link-for.ts'
import { openMachine } from '../../web/file/open-machine.ts'
import { readLink } from '../../web/file/read-link.ts'
import { openState } from '../../web/file/open-state.ts'
import { ownState } from '../../web/file/workshop-state.ts'
import { isCovered, isHeld } from '../../web/frame/asking.ts'
import { advanceModel, placeAt, runFrame, turnByHand } from '../../web/frame/frame.ts'
import { type Workshop, WorkshopProvider, createWorkshop } from '../../web/frame/workshop.ts'
import { TurnBand } from '../../web/instrument/TurnBand.tsx'
import { PredictionSheet } from '../../web/predict/PredictionSheet.tsx'
import { ownQuestions } from '../../web/predict/own-questions.ts'
import * as session from '../../web/predict/session.ts'
import { answerText } from '../../web/question/answer-words.ts'
import { withGearing } from '../../web/question/stage-question.ts'
import { coveredText } from '../../web/question/spoken-count.ts'
import {
  isAtEnd,
  runSeconds,
  runToEnd,
  stepToEnd,
  trialEnd,
  turnToEnd,
} from '../../web/question/trial-run.ts'
import { playWatch } from '../../web/question/watch-stage.ts'
import {
  type Exercise,
  type SetItem,
  asked,
  committed,
  compared,
  noExercise,
  skipped,
  withAnswer,
  withNote,
  withOwnCount,
  withReason,
  withSureness,
  withTap,
  withoutLastTap,
} from '../../web/store/exercise.ts'
import { bootCleaner, cordWinder, ventOpener } from '../support/machines.ts'

const turnsWorm = questionWith(familyNamed('turns-worm')!, { z1: 3, z2: 31, N: 1 })
const numbered = (value: number) => (last: Exercise) =>
  withAnswer(last, String(value), { kind: 'number', value })

describe('an exercise', () => {
  const guessed = withSureness(numbered(12)(asked(turnsWorm)), 2)
  const counting = committed(guessed)
  test('is not committed without an answer that reads', () => {
    const open = withAnswer(asked(turnsWorm), 'twelve', null)
    expect(committed(open)).toBe(open)
    expect(committed(noExercise)).toBe(noExercise)
  })
  test('keeps what was committed whatever comes afterwards', () => {
    const change = fc.constantFrom<(last: Exercise) => Exercise>(
      numbered(20),
      (last) => withSureness(last, 3),
      committed,
      skipped,
      (last) => withTap(last, 1),
      withoutLastTap,
      (last) => withOwnCount(last, '9'),
      compared,
      (last) => withReason(last, 1),
      (last) => withNote(last, 'so'),
    )
    fc.assert(
      fc.property(fc.array(change), (changes) => {
        const after = changes.reduce((last, next) => next(last), counting)
        const { text, reply, sureness, question } = after
        expect({ text, reply, sureness, question }).toEqual({
          text: '12',
          reply: { kind: 'number', value: 12 },
          sureness: 2,
          question: turnsWorm,
        })
        expect(after.phase).not.toBe('predict')
        expect(after.skipped).toBe(false)
      }),
      { seed: 22 },
    )
  })
  test('takes taps and a count only while counting, a reason only in the comparison', () => {
    expect(withTap(guessed, 1)).toBe(guessed)
    expect(withOwnCount(guessed, '3')).toBe(guessed)
    expect(withReason(counting, 0)).toBe(counting)
    const tapped = withTap(withTap(counting, 1.1), 2.2)
    expect(withoutLastTap(tapped).taps).toEqual([1.1])
    expect(withTap(compared(tapped), 3).taps).toEqual([1.1, 2.2])
  })
  test('a skipped prediction leaves no answer behind', () => {
    expect(skipped(guessed)).toMatchObject({ phase: 'count', skipped: true, text: '', reply: null })
  })
})

describe('the trial', () => {
  const machine = withGearing(bootCleaner, turnsWorm.gearing)
  test('ends exactly where it should, slowly enough to count', () => {
    const { frame } = createWorkshop(machine, 'light')
    const end = trialEnd(turnsWorm)!
    expect(end * 3).toBe(31 * TICKS_PER_TURN)
    placeAt(frame, 3, 17, 0.5)
    turnToEnd(frame, end)
    let seconds = 0
    for (; frame.motion !== 'still' && seconds < 100; seconds += 0.013) runFrame(frame, 0.013)
    const { turns, ticks, rest } = frame.state.turns
    expect((turns * TICKS_PER_TURN + ticks) * 3).toBe(31 * TICKS_PER_TURN)
    expect(rest).toBe(0)
    expect(isAtEnd(frame, end)).toBe(true)
    expect(seconds / (31 / 3 - 3)).toBeGreaterThan(0.9)
  })
  test('turns back from beyond, and under reduced motion goes by quarter turns', () => {
    const { frame } = createWorkshop(machine, 'light')
    const end = trialEnd(turnsWorm)!
    frame.cuts = true
    placeAt(frame, 11, 0, 0)
    stepToEnd(frame, end)
    expect(frame.state.turns).toMatchObject({ turns: 10, ticks: 0.75 * TICKS_PER_TURN })
    for (let i = 0; i < 5; i++) stepToEnd(frame, end)
    expect(isAtEnd(frame, end)).toBe(true)
  })
  test('steps under reduced motion end where they should, and give way to whatever else moves the machine', () => {
    vi.useFakeTimers()
    try {
      const { frame } = createWorkshop(machine, 'light')
      const end = trialEnd(turnsWorm)!
      frame.cuts = true
      runToEnd(frame, end)
      vi.advanceTimersByTime(1000)
      expect(frame.state.turns).toMatchObject({ turns: 1, ticks: 0 })
      vi.advanceTimersByTime(60_000)
      expect(isAtEnd(frame, end)).toBe(true)
      placeAt(frame, 0, 0, 0)
      runToEnd(frame, end)
      vi.advanceTimersByTime(500)
      placeAt(frame, 5, 0, 0)
      vi.advanceTimersByTime(60_000)
      expect(frame.state.turns).toMatchObject({ turns: 5, ticks: 0 })
    } finally {
      vi.useRealTimers()
    }
  })
  test('a long one is hurried, but never faster than can be counted', () => {
    expect(runSeconds(20)).toBe(20)
    expect(runSeconds(100)).toBe(60)
    expect(runSeconds(200) / 200).toBeGreaterThanOrEqual(0.4)
  })
  test('every trial of the bank ends on whole ticks, and is walked to its end', () => {
    for (const { name } of FAMILIES) {
      for (const level of [1, 2, 3] as const) {
        for (let index = 0; index < 20; index++) {
          const question = questionFor({ bank: BANK, seed: 'ticks', family: name, index, level })!
          const { trial } = question
          if (!trial) continue
          const exact = (trial.top * TICKS_PER_TURN) / trial.bottom
          expect(exact, `${name} ${level} ${index}`).toBe(Math.round(exact))
          expect(exact).toBeGreaterThan(0)
        }
      }
    }
  })
})

test('while the counts are covered it is told that it turned, but no number, and no sense where that is asked', () => {
  for (const counted of ['worm', 'left', 'teeth', 'senses'] as const)
    expect(coveredText(counted, 1, 'right')).not.toMatch(/\d/)
  expect(coveredText('senses', -1, 'left')).not.toMatch(/clockwise/)
  expect(coveredText('worm', 1, 'right')).toBe(
    'The worm has turned anticlockwise, seen from the front. The left wheel has turned a little, anticlockwise seen from above; the right wheel clockwise.',
  )
  expect(coveredText('left', 1, 'left')).toContain(
    'a little, clockwise seen from above; the right wheel anticlockwise',
  )
})

describe('the explanation', () => {
  test('turns exactly as far as it says, in the sense of the question', () => {
    const family = familyNamed('pair-sense')!
    for (const sense of ['clockwise', 'anticlockwise']) {
      const question = questionWith(family, { ...family.example, sense })
      const workshop = createWorkshop(withGearing(bootCleaner, question.gearing), 'light')
      placeAt(workshop.frame, 5, 7, 0)
      playWatch(workshop, question)
      advanceModel(workshop.frame, 0)
      const { turns, ticks } = workshop.frame.state.turns
      const way = sense === 'anticlockwise' ? 1 : -1
      expect(turns * TICKS_PER_TURN + ticks).toBe((way * TICKS_PER_TURN) / 4)
    }
  })
  test('opens the panel that it is read from, and runs by the drive where it says so', () => {
    const family = FAMILIES.find((each) => each.watch(each.example).sight === 'torque')!
    const workshop = createWorkshop(bootCleaner, 'light')
    workshop.view.setState({ way: 'predict', panel: 'none' })
    playWatch(workshop, questionWith(family, family.example))
    expect(workshop.view.getState().panel).toBe('torque')
  })
})

/** A page that is open in Predict. */
function inPredict(machine: Machine = bootCleaner): Workshop {
  const workshop = createWorkshop(machine, 'light')
  workshop.view.setState({ way: 'predict' })
  return workshop
}

const answerNow = ({ exercise }: Workshop, value: number) => exercise.setState(numbered(value), true)

describe('Predict', () => {
  let workshop: Workshop
  let end: () => void
  beforeEach(() => {
    workshop = inPredict(cordWinder)
    workshop.view.setState({ caseState: 'closed', panel: 'torque' })
    workshop.bench.setState({ setting: 1, pluggedIn: false })
    workshop.document.edit((machine) => ({ ...machine, name: 'My winder' }))
    turnByHand(workshop.frame, 3 * TICKS_PER_TURN)
    advanceModel(workshop.frame, 0)
    end = session.followPage(workshop)
    session.enter(workshop)
  })

  test('asks first about the machine on the bench, for one turn of a wheel', () => {
    const { gearing } = cordWinder
    const { question, phase } = workshop.exercise.getState()
    expect(phase).toBe('predict')
    expect(question!.ask).toMatchObject({ kind: 'number', answer: gearing.wheelTeeth / gearing.wormStarts })
    expect(workshop.frame.state.turns).toMatchObject({ turns: 0, ticks: 0 })
    expect(isHeld(workshop)).toBe(true)
  })

  test('leaving brings back all that was there, and coming back finds the question as it was', () => {
    answerNow(workshop, 7)
    session.commit(workshop)
    turnByHand(workshop.frame, TICKS_PER_TURN / 2)
    advanceModel(workshop.frame, 0)
    workshop.exercise.setState((last) => withTap(last, 0.5), true)
    const left = workshop.exercise.getState()

    workshop.view.setState({ way: 'demonstrate' })
    end()
    expect(workshop.document.store.getState().machine.name).toBe('My winder')
    expect(workshop.bench.getState()).toMatchObject({ setting: 1, pluggedIn: false })
    expect(workshop.view.getState()).toMatchObject({ caseState: 'closed', panel: 'torque' })
    expect(workshop.frame.state.turns).toMatchObject({ turns: 3, ticks: 0 })
    workshop.document.undo()
    expect(workshop.document.store.getState().machine.name).toBe(cordWinder.name)
    workshop.document.redo()
    expect(isCovered(workshop)).toBe(false)

    workshop.view.setState({ way: 'predict' })
    session.followPage(workshop)
    session.enter(workshop)
    expect(workshop.exercise.getState()).toEqual(left)
    expect(workshop.frame.state.turns).toMatchObject({ turns: 0, ticks: TICKS_PER_TURN / 2 })
  })

  test('undo does not reach into what was there before the question', () => {
    workshop.document.undo()
    expect(workshop.document.store.getState().machine.name).toBe('My winder')
  })

  test('what is kept of the page meanwhile is the own machine', () => {
    session.chooseSource(workshop, 'practice')
    expect(workshop.document.store.getState().machine.name).toBe(bootCleaner.name)
    const { machine, bench, moment } = ownState(workshop)
    expect(machine.name).toBe('My winder')
    expect(bench).toMatchObject({ setting: 1, pluggedIn: false })
    expect(moment.turns).toBe(3)
  })

  test('another machine comes over the own one, and is asked about', async () => {
    answerNow(workshop, 7)
    session.commit(workshop)
    openMachine(workshop, ventOpener)
    await Promise.resolve()
    const { question, phase } = workshop.exercise.getState()
    const { gearing } = ventOpener
    expect(phase).toBe('predict')
    expect(question!.ask).toMatchObject({ answer: gearing.wheelTeeth / gearing.wormStarts })
    workshop.view.setState({ way: 'demonstrate' })
    expect(workshop.document.store.getState().machine).toBe(ventOpener)
    workshop.document.undo()
    expect(workshop.document.store.getState().machine.name).toBe('My winder')
  })

  test('the comparison ends the turn exactly and is recorded once', () => {
    answerNow(workshop, 7)
    session.commit(workshop)
    session.compare(workshop)
    session.compare(workshop)
    expect(isAtEnd(workshop.frame, trialEnd(workshop.exercise.getState().question!)!)).toBe(true)
    expect(isCovered(workshop)).toBe(false)
    const { answered } = workshop.records.store.getState()
    expect(answered).toHaveLength(1)
    expect(answered[0]).toMatchObject({ asker: 'machine', family: 'turns-worm', value: 7, right: false })
  })

  test('a question without a count is compared as soon as it is committed or skipped', () => {
    const item: SetItem = { family: 'torque-each', index: 0, level: 1 }
    const set = { bank: BANK, seed: 'room', items: [item, item], at: 0 }
    workshop.predict.setState({ source: 'set', set })
    session.askNow(workshop)
    session.skip(workshop)
    expect(workshop.exercise.getState()).toMatchObject({ phase: 'compare', skipped: true })
    expect(workshop.records.store.getState().answered.at(-1)).toMatchObject({ asker: 'set', value: null })
    session.askNext(workshop)
    expect(workshop.predict.getState().set!.at).toBe(1)
    expect(workshop.exercise.getState().phase).toBe('predict')
  })

  test('what was said of one question is gone when the next is asked', () => {
    const said = () => workshop.announcer.store.getState().text
    const leading = [session.askNext, () => session.chooseSource(workshop, 'practice')]
    for (const lead of leading) {
      workshop.announcer.say('The left wheel has turned a little, anticlockwise seen from above.')
      lead(workshop)
      expect(said()).toBe('')
    }
    workshop.announcer.say('The left wheel has turned a little.')
    session.askAnother(workshop, workshop.exercise.getState().question!)
    expect(said()).toBe('')
  })

  test('practice knows what was right wherever it was asked', () => {
    const item: SetItem = { family: FAMILIES[0]!.name, index: 0, level: 1 }
    const set = { bank: BANK, seed: 'room', items: [item], at: 0 }
    workshop.predict.setState({ source: 'set', set })
    session.askNow(workshop)
    session.skip(workshop)
    session.compare(workshop)
    session.chooseSource(workshop, 'practice')
    expect(workshop.exercise.getState().question).toMatchObject({
      family: FAMILIES[1]!.name,
      key: { index: 0 },
    })
  })

  test('practice asks something else each time, and after a miss the same kind with other numbers', () => {
    session.chooseSource(workshop, 'practice')
    const first = workshop.exercise.getState().question!
    answerNow(workshop, 0)
    session.commit(workshop)
    session.compare(workshop)
    session.askAnother(workshop, first)
    const again = workshop.exercise.getState().question!
    expect(again.family).toBe(first.family)
    expect(again.key!.index).toBe(first.key!.index + 1)
    session.skip(workshop)
    session.compare(workshop)
    session.askNext(workshop)
    expect(workshop.exercise.getState().question!.family).not.toBe(first.family)
    expect(workshop.predict.getState().why).not.toBe('')
  })

  test('a set of another version or with an unknown kind is not asked', () => {
    const item: SetItem = { family: 'turns-worm', index: 0, level: 1 }
    for (const set of [
      { bank: BANK + 1, seed: 'a', items: [item], at: 0 },
      { bank: BANK, seed: 'a', items: [{ ...item, family: 'no-such' }], at: 0 },
    ]) {
      workshop.predict.setState({ source: 'set', set })
      session.askNow(workshop)
      expect(workshop.exercise.getState()).toEqual(noExercise)
      expect(isHeld(workshop)).toBe(true)
    }
  })

  test('a link made in a question opens in the question, at its place in the set, and holds nothing that was turned', () => {
    const items: SetItem[] = [1, 2].map((index) => ({ family: 'turns-worm', index, level: 1 }))
    const set = { bank: BANK, seed: 'room', items, at: 1 }
    workshop.predict.setState({ source: 'set', set })
    session.askNow(workshop)
    answerNow(workshop, 3)
    session.commit(workshop)
    const { state, problems } = readLink(linkFor(workshop))
    expect(problems).toEqual([])
    expect(state).toMatchObject({ way: 'predict', asked: set, moment: { turns: 0, ticks: 0 } })
    const other = inPredict()
    openState(other, state!)
    session.enter(other)
    expect(other.exercise.getState()).toMatchObject({ phase: 'predict', text: '' })
    expect(other.exercise.getState().question!.key).toEqual({ bank: BANK, seed: 'room', ...items[1] })
  })
})

test('the questions about a machine are about its own counts', () => {
  const questions = ownQuestions(cordWinder)
  expect(questions.map(({ family }) => family)).toEqual([
    'turns-worm',
    'pair-sense',
    'turns-wheel',
    'teeth-passed',
    'tooth-return',
  ])
  for (const { given, gearing } of questions) {
    const { wormStarts, wheelTeeth, hand } = cordWinder.gearing
    if (given && 'z1' in given) expect(given).toMatchObject({ z1: wormStarts, z2: wheelTeeth })
    expect(withGearing(cordWinder, gearing).gearing).toEqual(cordWinder.gearing)
    expect(gearing?.hand ?? hand).toBe(hand)
  }
})

describe('nothing gives the answer away', () => {
  /** The stores as they are now, where the server's renderer looks: in their first state. */
  const frozen = (workshop: Workshop): Workshop => {
    const now = <T,>(store: { getState(): T }) => createStore<T>(() => store.getState())
    return {
      ...workshop,
      exercise: now(workshop.exercise),
      predict: now(workshop.predict),
      view: now(workshop.view),
      document: { ...workshop.document, store: now(workshop.document.store) },
    }
  }
  const rendered = (workshop: Workshop): string =>
    renderToString(
      <WorkshopProvider value={frozen(workshop)}>
        <PredictionSheet />
        <TurnBand size="predict" covered={isCovered(workshop)} />
      </WorkshopProvider>,
    ).replaceAll('<!-- -->', '')

  /** What is seen and what is read out: the text, and names, titles and values of the elements. */
  const told = (html: string): string => {
    const spoken = html.matchAll(/(?:aria-[a-z]+|title|alt|placeholder|value|data-[a-z]+)="([^"]*)"/g)
    return [html.replaceAll(/<[^>]*>/g, ' '), ...[...spoken].map(([, text]) => text)].join(' ')
  }
  const numbersIn = (text: string): readonly string[] => text.match(/\d+(?:\.\d+)?/g) ?? []

  /** A question of the family whose answer is no number that is given, so that finding it means that it was told. */
  function telling(name: string): Question {
    for (const level of [2, 1, 3] as const) {
      for (let index = 0; index < 60; index++) {
        const question = questionFor({ bank: BANK, seed: 'leak', family: name, index, level })!
        const given = `${question.text} ${question.trial?.words} 1 2 3`
        const [answer] = numbersIn(answerText(question) ?? '')
        if (question.ask.kind !== 'number' || !numbersIn(given).includes(answer!)) return question
      }
    }
    throw new Error(`${name} always gives its answer`)
  }
  const withTrial = FAMILIES.filter((family) => {
    const question = questionFor({ bank: BANK, seed: 'leak', family: family.name, index: 0, level: 1 })
    return question!.trial !== null
  }).map(({ name }) => name)

  /** The page at each phase, with the machine turned as far as the answer needs. */
  function pages(question: Question): { readonly before: readonly string[]; readonly after: string } {
    const workshop = inPredict()
    const { family, index, level } = question.key!
    const set = { bank: BANK, seed: 'leak', items: [{ family, index, level }], at: 0 }
    workshop.predict.setState({ source: 'set', set })
    session.enter(workshop)
    const predicting = rendered(workshop)
    session.skip(workshop)
    if (question.trial) {
      turnToEnd(workshop.frame, trialEnd(question)!)
      advanceModel(workshop.frame, 0)
    }
    const counting = question.trial ? rendered(workshop) : ''
    session.compare(workshop)
    return { before: [predicting, counting].map(told), after: told(rendered(workshop)) }
  }

  test('there are families of each sort to look at', () => {
    expect(withTrial.length).toBeGreaterThan(6)
    expect(withTrial).toEqual(
      expect.arrayContaining(['turns-worm', 'turns-wheel', 'pair-sense', 'wheel-sense']),
    )
  })

  test.each(withTrial)('%s, until it is compared', (name) => {
    const question = telling(name)
    const { before, after } = pages(question)
    const answer = answerText(question)!
    const [figure] = numbersIn(answer)
    const isNumber = question.ask.kind === 'number'
    const found = (page: string) =>
      isNumber ? numbersIn(page).includes(figure!) : page.includes(question.working)
    for (const page of before) {
      expect(found(page), page).toBe(false)
      expect(page).not.toContain(question.working)
      for (const { sentence } of question.ask.kind === 'words' ? [] : question.ask.slips)
        expect(page).not.toContain(sentence)
      for (const { text } of question.reasons) expect(page).not.toContain(text)
    }
    if (!isNumber) expect(before[1]).not.toContain(answer)
    expect(found(after)).toBe(true)
  })

  test.each(FAMILIES.map(({ name }) => name))('%s, before it is committed', (name) => {
    const question = telling(name)
    const [page] = pages(question).before
    expect(page).not.toContain(question.working)
    if (question.ask.kind === 'number')
      expect(numbersIn(page!)).not.toContain(numbersIn(answerText(question)!)[0])
    else expect(page!.split(answerText(question)!).length).toBeLessThanOrEqual(2)
  })
})
