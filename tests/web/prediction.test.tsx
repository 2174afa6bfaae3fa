import fc from 'fast-check'
import { renderToString } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { createStore } from 'zustand/vanilla'
import bootCleaner from '../../assets/machines/boot-cleaner.json'
import { TICKS_PER_TURN, noTurns } from '../../sim/drive/turns.ts'
import { checkMachine } from '../../sim/machine/check.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { hasErrors } from '../../sim/machine/problem.ts'
import { placeAt, runFrame } from '../../web/frame/frame.ts'
import { WorkshopProvider, createWorkshop } from '../../web/frame/workshop.ts'
import { TurnBand } from '../../web/instrument/TurnBand.tsx'
import { PredictionSheet } from '../../web/predict/PredictionSheet.tsx'
import { echo, readGuess } from '../../web/predict/guess.ts'
import { markIsBack, stepToMark, turnToMark } from '../../web/predict/mark-run.ts'
import { pairOf, withNextPair, withPair } from '../../web/predict/next-pair.ts'
import { isRight, knownMistake, ownCountText } from '../../web/predict/verdict.ts'
import {
  type Prediction,
  committed,
  compared,
  noPrediction,
  withCountShown,
  withDirection,
  withGuess,
  withSureness,
  withTap,
  withoutLastTap,
} from '../../web/store/prediction.ts'

const boots = bootCleaner as Machine
const pair = { starts: 3, teeth: 31 }

describe('reading a guess', () => {
  test.each([
    ['20', 20],
    [' 13.5 ', 13.5],
    ['13,5', 13.5],
    ['31/3', 31 / 3],
    ['10 1/3', 31 / 3],
    ['10⅓', 31 / 3],
    ['½', 0.5],
    ['1/20', 0.05],
    ['12 turns', 12],
    ['12 worm turns', 12],
    ['.5', 0.5],
  ])('%s is read', (text, turns) => {
    const guess = readGuess(text)
    expect('turns' in guess && guess.turns).toBeCloseTo(turns, 12)
  })
  test.each([
    '',
    'twenty',
    '1,200',
    '-3',
    '1/0',
    '1e999',
    '0x10',
    '10 1',
    '2..5',
    '1/2/3',
    '∞',
    '9'.repeat(30),
  ])('%s is answered with what is wanted', (text) => {
    const guess = readGuess(text)
    expect('said' in guess && guess.said.length).toBeGreaterThan(20)
  })
  test('never throws and never reads what is not a finite number', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const guess = readGuess(text)
        if ('turns' in guess) expect(guess.turns).toBeGreaterThanOrEqual(0)
      }),
      { numRuns: 2000, seed: 21 },
    )
  })
  test('what is read otherwise than written is echoed', () => {
    expect(echo('31/3')).toBe('Read as 10.33 turns.')
    expect(echo('1/20')).toBe('Read as 0.05 turns.')
    expect(echo('20')).toBeNull()
    expect(echo('nothing')).toBeNull()
  })
})

describe('a prediction', () => {
  const guessed = withSureness(withDirection(withGuess(noPrediction, '12', 12), 'same'), 2)
  const counting = committed(guessed, pair)
  test('is not committed without a number', () => expect(committed(noPrediction, pair)).toBe(noPrediction))
  test('is committed once, with the counts it is about', () => {
    expect(counting.phase).toBe('count')
    expect(counting.pair).toEqual(pair)
  })
  test('keeps what was committed whatever comes afterwards', () => {
    const change = fc.constantFrom<(last: Prediction) => Prediction>(
      (last) => withGuess(last, '20', 20),
      (last) => withDirection(last, 'opposite'),
      (last) => withSureness(last, 3),
      (last) => committed(last, { starts: 1, teeth: 20 }),
      (last) => withTap(last, 1),
      withoutLastTap,
      withCountShown,
      compared,
    )
    fc.assert(
      fc.property(fc.array(change), (changes) => {
        const after = changes.reduce((last, next) => next(last), counting)
        const { text, turns, direction, sureness, pair: about } = after
        expect({ text, turns, direction, sureness, pair: about }).toEqual({
          text: '12',
          turns: 12,
          direction: 'same',
          sureness: 2,
          pair,
        })
        expect(after.phase).not.toBe('predict')
      }),
      { seed: 22 },
    )
  })
  test('takes taps only while counting, and gives back the last', () => {
    expect(withTap(guessed, 1)).toBe(guessed)
    const tapped = withTap(withTap(counting, 1.1), 2.2)
    expect(withoutLastTap(tapped).taps).toEqual([1.1])
    expect(withTap(compared(tapped), 3).taps).toEqual([1.1, 2.2])
  })
  test('cannot be compared or uncovered before it is committed', () => {
    expect(compared(guessed)).toBe(guessed)
    expect(withCountShown(guessed)).toBe(guessed)
  })
})

describe('the verdict', () => {
  test('is right within half a per cent of z2/z1', () => {
    expect(isRight(10.33, pair)).toBe(true)
    expect(isRight(10.2, pair)).toBe(false)
  })
  test.each([
    [31, /starts are left out/],
    [0.0968, /upside down/],
    [20.67, /both wheels/],
    [93, /multiplied/],
    [10, /one tooth is left out/],
    [32 / 3, /counted twice/],
  ])('%d of 3 starts and 31 teeth has a known cause', (turns, cause) =>
    expect(knownMistake(turns, pair)).toMatch(cause),
  )
  test('no cause is named for a right answer or for a number that fits none', () => {
    expect(knownMistake(20, { starts: 1, teeth: 20 })).toBeNull()
    expect(knownMistake(12, { starts: 1, teeth: 20 })).toBeNull()
  })
  test('the own count names a single missed pass', () => {
    expect(ownCountText([], 20)).toBeNull()
    expect(ownCountText([1, 2.1, 3], 3)).toBe('every pass')
    expect(ownCountText([1, 3], 3)).toBe('one pass missed, at turn 2')
    expect(ownCountText([1, 1.2], 3)).toBe('2 missed, 1 too many')
  })
})

describe('the run to the mark', () => {
  test.each([
    [1, 20],
    [3, 31],
    [7, 40],
  ])('ends exactly on it, %i starts and %i teeth', (starts, teeth) => {
    const { frame } = createWorkshop(withPair(boots, { starts, teeth }), 'light')
    placeAt(frame, 3, 17, 0.5)
    turnToMark(frame, { starts, teeth })
    let seconds = 0
    for (; frame.motion !== 'still' && seconds < 100; seconds += 0.013) runFrame(frame, 0.013)
    const { turns, ticks, rest } = frame.state.turns
    expect((turns * TICKS_PER_TURN + ticks) * starts).toBe(teeth * TICKS_PER_TURN)
    expect(rest).toBe(0)
    expect(markIsBack(frame, { starts, teeth })).toBe(true)
    expect(seconds / (teeth / starts - 3)).toBeGreaterThan(0.9)
  })
  test('turns back from beyond, and under reduced motion goes by quarter turns', () => {
    const { frame } = createWorkshop(withPair(boots, pair), 'light')
    frame.cuts = true
    placeAt(frame, 11, 0, 0)
    stepToMark(frame, pair)
    expect(frame.state.turns.turns).toBe(10)
    expect(frame.state.turns.ticks).toBe(0.75 * TICKS_PER_TURN)
    for (let i = 0; i < 5; i++) stepToMark(frame, pair)
    expect(markIsBack(frame, pair)).toBe(true)
  })
  test('zero is not the mark come back', () => {
    const { frame } = createWorkshop(boots, 'light')
    Object.assign(frame.state.turns, noTurns())
    expect(markIsBack(frame, pairOf(boots))).toBe(false)
  })
})

describe('another pair of counts', () => {
  test('goes round different pairs, each of which the machine can be built with', () => {
    const seen = new Set<string>()
    let machine = boots
    for (let i = 0; i < 20; i++) {
      const next = withNextPair(machine)
      expect(pairOf(next)).not.toEqual(pairOf(machine))
      expect(hasErrors(checkMachine(next))).toBe(false)
      seen.add(JSON.stringify(pairOf(next)))
      machine = next
    }
    expect(seen.size).toBeGreaterThan(3)
  })
})

describe('nothing gives the answer away', () => {
  const ANSWERS: readonly (readonly [starts: number, teeth: number, answer: RegExp])[] = [
    [3, 31, /10\.3|10 1\/3|10⅓|31 ?[/÷:] ?3|0\.096|opposite|clockwise/],
    [2, 27, /13\.5|13 1\/2|13½|27 ?[/÷:] ?2|0\.074|opposite|clockwise/],
    [1, 20, /20 (worm )?turns|20 ?: ?1|1 ?[/÷:] ?20|0\.05|opposite|clockwise/],
  ]
  /** Markup as it is rendered, without the value that a radio button carries. */
  const rendered = (starts: number, teeth: number, prediction: Prediction, covered: boolean): string => {
    const workshop = createWorkshop(withPair(boots, { starts, teeth }), 'light')
    placeAt(workshop.frame, 10, 3_326_400, 0)
    const asked = { ...workshop, prediction: createStore(() => prediction) }
    return renderToString(
      <WorkshopProvider value={asked}>
        <PredictionSheet />
        <TurnBand size="predict" covered={covered} />
      </WorkshopProvider>,
    ).replaceAll('<!-- -->', '')
  }
  const guessed = withGuess(noPrediction, '12', 12)
  test.each(ANSWERS)('%i starts and %i teeth, before and after the commitment', (starts, teeth, answer) => {
    for (const prediction of [noPrediction, guessed, committed(guessed, { starts, teeth })]) {
      const html = rendered(starts, teeth, prediction, true)
      expect(html).not.toMatch(answer)
      expect(html.match(/<output[^>]*>hidden<\/output>/g)).toHaveLength(3)
      expect(html).not.toMatch(/<table/)
    }
  })
  test.each(ANSWERS)(
    '%i starts and %i teeth: the same search finds it in the comparison',
    (starts, teeth, answer) => {
      const done = compared(committed(guessed, { starts, teeth }))
      expect(rendered(starts, teeth, done, false)).toMatch(answer)
    },
  )
})
