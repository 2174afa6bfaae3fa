import { beforeEach, describe, expect, test } from 'vitest'
import { TICKS_PER_TURN } from '../../../sim/drive/turns.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { BANK, FAMILIES } from '../../../sim/question/bank.ts'
import { linkFor } from '../../../web/file/link-for.ts'
import { openMachine } from '../../../web/file/open-machine.ts'
import { readLink } from '../../../web/file/read-link.ts'
import { openState } from '../../../web/file/open-state.ts'
import { ownState } from '../../../web/file/workshop-state.ts'
import { isCovered, isHeld } from '../../../web/frame/asking.ts'
import { advanceModel, turnByHand } from '../../../web/frame/frame.ts'
import { type Workshop, createWorkshop } from '../../../web/frame/workshop.ts'
import { ownQuestions } from '../../../web/predict/own-questions.ts'
import * as session from '../../../web/predict/session.ts'
import { withGearing } from '../../../web/question/stage-question.ts'
import { isAtEnd, trialEnd } from '../../../web/question/trial-run.ts'
import { type Exercise, type SetItem, noExercise, withAnswer, withTap } from '../../../web/store/exercise.ts'
import { bootCleaner, cordWinder, ventOpener } from '../../support/machines.ts'

const numbered = (value: number) => (last: Exercise) =>
  withAnswer(last, String(value), { kind: 'number', value })

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
