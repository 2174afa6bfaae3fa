import { renderToString } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { createStore } from 'zustand/vanilla'
import bootCleaner from '../../../assets/machines/boot-cleaner.json'
import type { Machine } from '../../../sim/machine/machine.ts'
import { familyNamed } from '../../../sim/question/bank.ts'
import { questionWith } from '../../../sim/question/instance.ts'
import type { Question } from '../../../sim/question/question.ts'
import { WorkshopProvider, createWorkshop } from '../../../web/frame/workshop.ts'
import { AnswerField } from '../../../web/question/AnswerField.tsx'
import { Compared } from '../../../web/question/Compared.tsx'
import { ReasonChoice } from '../../../web/question/ReasonChoice.tsx'
import { SurenessField } from '../../../web/question/SurenessField.tsx'
import { answerText, replyText } from '../../../web/question/answer-words.ts'
import { mixedAnswer } from '../../../web/question/mixed-answer.ts'
import { moved } from '../../../web/question/moved.ts'
import { countedPasses, ownCount, passesText } from '../../../web/question/own-count.ts'
import {
  type Exercise,
  asked,
  committed,
  compared,
  skipped,
  withAnswer,
  withReason,
  withSureness,
  withTap,
} from '../../../web/store/exercise.ts'

const wormTurns = (z1: number, z2: number): Question =>
  questionWith(familyNamed('turns-worm')!, { z1, z2, N: 1 })

const choice: Question = {
  ...wormTurns(1, 20),
  text: 'How many motors?',
  ask: {
    kind: 'choice',
    options: [
      { id: 'one', text: 'One' },
      { id: 'two', text: 'Two' },
    ],
    answer: 'one',
    slips: [{ cause: 'one-each', sentence: 'One motor drives both brushes.', option: 'two' }],
  },
  working: '',
  trial: null,
}
const order: Question = {
  ...choice,
  text: 'In which order?',
  ask: {
    kind: 'order',
    cards: [
      { id: 'open', text: 'Open the case' },
      { id: 'unplug', text: 'Unplug' },
      { id: 'wait', text: 'Wait' },
    ],
    answer: ['unplug', 'wait', 'open'],
    slips: [],
  },
}
const open: Question = { ...choice, text: 'Which, and why?', ask: { kind: 'words' } }

function drawn(exercise: Exercise, part: React.ReactNode): string {
  const workshop = {
    ...createWorkshop(bootCleaner as Machine, 'light'),
    exercise: createStore<Exercise>(() => exercise),
  }
  return renderToString(<WorkshopProvider value={workshop}>{part}</WorkshopProvider>).replaceAll(
    '<!-- -->',
    '',
  )
}
const field = (question: Question, exercise = asked(question), said: string | null = null) =>
  drawn(exercise, <AnswerField question={question} headingId="q" input={{ current: null }} said={said} />)
const comparison = (question: Question, exercise: Exercise) =>
  drawn(exercise, <Compared question={question} exercise={exercise} />)
const answered = (question: Question, value: number, text = String(value)): Exercise =>
  compared(committed(withAnswer(asked(question), text, { kind: 'number', value })))

describe('the field of an answer', () => {
  test('a count has its unit and a button on either side, a torque only its unit', () => {
    expect(field(wormTurns(1, 20))).toMatch(/One less.*turns.*One more/)
    const torque = questionWith(familyNamed('torque-total')!, familyNamed('torque-total')!.example)
    expect(field(torque)).toContain('N m')
    expect(field(torque)).not.toContain('One more')
  })
  test('nothing in it tells the answer', () => {
    expect(field(wormTurns(3, 31)).replaceAll(/<svg.*?<\/svg>/g, '')).not.toMatch(/10[ .]|31|⅓/)
  })
  test('what was written otherwise is echoed as it is read', () => {
    const question = wormTurns(1, 20)
    const sum = withAnswer(asked(question), ' 12.50', { kind: 'number', value: 12.5 })
    expect(field(question, sum)).toContain('Read as 12.5 turns.')
    expect(field(question, withAnswer(asked(question), '20', null))).not.toContain('Read as')
  })
  test('what was missing is said beside it, and a faulty text keeps its own sentence', () => {
    const question = wormTurns(1, 20)
    expect(field(question, asked(question), 'Write a number first.')).toContain('Write a number first.')
    const faulty = field(question, withAnswer(asked(question), '12 apples', null), 'Write a number first.')
    expect(faulty).toContain('value="12 apples"')
    expect(faulty).not.toContain('Write a number first.')
    expect(faulty).toMatch(/aria-invalid="true"/)
  })
  test('options are radio buttons under the question’s heading', () => {
    const html = field(choice)
    expect(html.match(/type="radio"/g)).toHaveLength(2)
    expect(html).toContain('aria-labelledby="q"')
    expect(html).not.toContain('checked')
  })
  test('every card can be moved earlier and later by a button with its name', () => {
    const html = field(order)
    for (const card of ['Open the case', 'Unplug', 'Wait']) {
      expect(html).toContain(`${card}: earlier`)
      expect(html).toContain(`${card}: later`)
    }
  })
  test('an open question is answered in words', () => {
    expect(field(open)).toContain('<textarea')
  })
})

test('a list with one thing moved keeps all its things', () => {
  expect(moved(['a', 'b', 'c'], 0, 2)).toEqual(['b', 'c', 'a'])
  expect(moved(['a', 'b', 'c'], 2, 1)).toEqual(['a', 'c', 'b'])
  const list = ['a', 'b']
  expect(moved(list, 0, -1)).toBe(list)
  expect(moved(list, 1, 2)).toBe(list)
})

test('how sure is asked by number, with the marks of each level only where marks count', () => {
  const exercise = withSureness(asked(choice), 2)
  expect(drawn(exercise, <SurenessField />)).not.toContain('−6')
  const html = drawn(exercise, <SurenessField marksOn />)
  expect(html.match(/>(\+1|\+2|\+3|0|−2|−6)</g)).toEqual(['>+1<', '>+2<', '>+3<', '>0<', '>−2<', '>−6<'])
})

describe('the comparison', () => {
  test('a right number is right, with the way to it', () => {
    const question = wormTurns(3, 31)
    const html = comparison(question, answered(question, 31 / 3, '10 1/3'))
    expect(html).toContain('Right.')
    expect(html).toContain(`${question.working} = 10.333 turns`)
    expect(html).toContain('10 1/3')
  })
  test('a known slip is named as what leads there', () => {
    const question = wormTurns(3, 31)
    const html = comparison(question, answered(question, 31))
    expect(html).toContain('Not yet.')
    expect(html).toContain('A known slip leads to 31 turns.')
  })
  test('where no slip is known, somebody else is asked', () => {
    const question = wormTurns(1, 20)
    expect(comparison(question, answered(question, 17))).toContain('No known slip leads there.')
  })
  test('without a prediction nothing is right or wrong', () => {
    const html = comparison(choice, compared(skipped(asked(choice))))
    expect(html).toContain('No prediction.')
    expect(html).not.toMatch(/Right\.|Not yet\./)
  })
  test('a choice is told in its words', () => {
    const exercise = compared(committed(withAnswer(asked(choice), 'Two', { kind: 'choice', option: 'two' })))
    const html = comparison(choice, exercise)
    expect(html).toMatch(/One motor drives both brushes\..*Two.*One/)
  })
  test('a sentence of one’s own has no verdict', () => {
    const exercise = compared(
      committed(withAnswer(asked(open), 'The first.', { kind: 'words', text: 'The first.' })),
    )
    const html = comparison(open, exercise)
    expect(html).toContain('The first.')
    expect(html).not.toMatch(/Right\.|Not yet\.|Machine/)
  })
})

test('a picked reason is answered at once, and the right one told', () => {
  const question = wormTurns(1, 20)
  const wrong = question.reasons.findIndex(({ right }) => !right)
  const right = question.reasons.findIndex((each) => each.right)
  const base = answered(question, 20)
  const html = (picked: number) => drawn(withReason(base, picked), <ReasonChoice question={question} />)
  expect(html(right)).toContain('That is the reason.')
  expect(html(wrong)).toMatch(/Not yet\./)
})

describe('own counts', () => {
  test('passes of the worm, of the left wheel and of teeth lie as far apart as they do on the machine', () => {
    const at = (counted: 'worm' | 'left' | 'teeth') =>
      countedPasses({ ...wormTurns(2, 30), trial: { top: 30, bottom: 1, counted, words: '' } })
    expect(at('worm')).toEqual({ passes: 30, every: 1 })
    expect(at('left')).toEqual({ passes: 2, every: 15 })
    expect(at('teeth')).toEqual({ passes: 60, every: 0.5 })
  })
  test('met, missed and added passes are told apart', () => {
    const passes = { passes: 4, every: 1 }
    expect(passesText([1, 2.1, 2.9, 4], passes)).toBe('every pass')
    expect(passesText([1, 3, 4], passes)).toBe('one pass missed, number 2')
    expect(passesText([1, 1.2, 3.9], passes)).toBe('2 missed, 1 too many')
    expect(passesText([-1, -2, -3, -4], passes)).toBe('every pass')
  })
  test('a typed count comes before the taps, and nothing counted is nothing', () => {
    const question = wormTurns(1, 20)
    const counting = committed(withAnswer(asked(question), '20', { kind: 'number', value: 20 }))
    expect(ownCount(question, counting)).toBeNull()
    const tapped = withTap(counting, 1)
    expect(ownCount(question, tapped)?.value).toBe('1')
    expect(ownCount(question, { ...tapped, ownCount: ' 19 ' })?.value).toBe('19')
  })
})

test('answers are told in their own form', () => {
  expect(answerText(order)).toBe('1 Unplug; 2 Wait; 3 Open the case')
  expect(replyText(order, { kind: 'order', order: ['open', 'wait', 'unplug'] })).toBe(
    '1 Open the case; 2 Wait; 3 Unplug',
  )
  expect(answerText(open)).toBeNull()
  expect(mixedAnswer(wormTurns(3, 31))).toEqual({ whole: 10, top: 1, bottom: 3 })
  expect(mixedAnswer(choice)).toBeNull()
})
