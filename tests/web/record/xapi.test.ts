/**
 * Every statement is given to an independent validator, @learninglocker/xapi-validation. It knows xAPI 1.0.x alone, so
 * it is given each statement with version '1.0.3' in the place of '2.0.0'; what 2.0 asks beyond that is in
 * xapi-rules.ts.
 */
import validation from '@learninglocker/xapi-validation'
import { expect, test } from 'vitest'
import { FAMILIES } from '../../../sim/question/bank.ts'
import type { Question } from '../../../sim/question/question.ts'
import type { Answered } from '../../../web/store/records.ts'
import { passageStatements } from '../../../web/record/xapi-passages.ts'
import type { Owner } from '../../../web/record/xapi-parts.ts'
import { type Statement, statements } from '../../../web/record/xapi.ts'
import { RUN, answer, bankQuestion, familyOfKind, workshopWith } from './answers.ts'
import { broken } from './xapi-rules.ts'

const OWNER: Owner = { homePage: 'https://school.example/drive/', account: 'a1b2c3', marksOn: true }

/** What the validator finds wrong, as it sees the statement in its own version. */
const warnings = (statement: object): readonly unknown[] =>
  validation({ ...statement, ...('version' in statement ? { version: '1.0.3' } : {}) })

const statementOf = (answered: Answered, owner: Partial<Owner> = {}): Statement =>
  statements([answered], { ...OWNER, ...owner })[0]!

const ownWords: Question = {
  ...bankQuestion('turns-worm'),
  text: 'Which, and why?',
  ask: { kind: 'words' },
  family: null,
  given: null,
  key: null,
}

function everyKind(): readonly Answered[] {
  const workshop = workshopWith()
  const number = () => bankQuestion(familyOfKind('number'))
  answer(workshop, number(), { sureness: 3 })
  answer(workshop, number(), { sureness: 3, reply: { kind: 'number', value: -1e-9 } })
  answer(workshop, number())
  answer(workshop, number(), { reply: null })
  answer(workshop, bankQuestion(familyOfKind('choice')), { sureness: 1 })
  answer(workshop, bankQuestion(familyOfKind('order')), {
    sureness: 2,
    occasion: { asker: 'lesson', lesson: 'boot-cleaner' },
  })
  answer(workshop, ownWords, {
    reply: { kind: 'words', text: 'Because "two", and\nmore.' },
    occasion: { asker: 'lesson', lesson: 'my own lesson' },
  })
  answer(workshop, { ...ownWords })
  return workshop.records.store.getState().answered
}

test('statements of every kind of answer pass the independent validator and the rules of 2.0', () => {
  for (const marksOn of [true, false]) {
    for (const statement of statements(everyKind(), { ...OWNER, marksOn })) {
      expect(warnings(statement)).toEqual([])
      expect(broken(statement)).toEqual([])
    }
  }
})

test('statements of every family of the bank at every level pass both', () => {
  const workshop = workshopWith()
  for (const { name } of FAMILIES)
    for (const level of [1, 2, 3] as const)
      answer(workshop, bankQuestion(name, 3, level), { sureness: level })
  const all = statements(workshop.records.store.getState().answered, OWNER)
  expect(all).toHaveLength(3 * FAMILIES.length)
  for (const statement of all) {
    expect(warnings(statement)).toEqual([])
    expect(broken(statement)).toEqual([])
  }
  // a batch with the same id twice is refused whole: section 4.1.6.1, s37
  expect(new Set(all.map(({ id }) => id)).size).toBe(all.length)
})

test('a number has its range of right answers, its response, its unit, its confidence and its mark', () => {
  const answered = answer(workshopWith(), bankQuestion('turns-worm'), { sureness: 3 })
  const statement = statementOf(answered)
  expect(statement).toMatchObject({
    id: answered.id,
    actor: { objectType: 'Agent', account: { homePage: 'https://school.example/drive', name: 'a1b2c3' } },
    verb: { id: 'http://adlnet.gov/expapi/verbs/answered' },
    object: {
      id: 'https://school.example/drive/bank/1/turns-worm?seed=demo&i=0&level=1',
      definition: { type: 'http://adlnet.gov/expapi/activities/cmi.interaction', interactionType: 'numeric' },
    },
    result: { success: true, response: String(answered.value), duration: 'PT20S' },
    timestamp: answered.time,
    version: '2.0.0',
  })
  expect(statement.result.score).toEqual({ scaled: 0.5, raw: 3, min: -6, max: 3 })
  expect(statement.context.registration).toBe(RUN)
  expect(statement.context.extensions).toEqual({
    'https://school.example/drive/extensions/confidence': 3,
    'https://school.example/drive/extensions/parameters': answered.given,
    'https://school.example/drive/extensions/unit': 'turn',
  })
  const [low, high] = statement.object.definition.correctResponsesPattern![0]!.split('[:]').map(Number)
  expect(high! - low!).toBeCloseTo(2 * answered.allowed, 12)
  expect(low).toBeLessThanOrEqual(Number(answered.answer))
})

test('sure and wrong is the lowest mark, with the cause; no mark is told where marks are off', () => {
  const { ask } = bankQuestion('turns-worm')
  const [slip] = ask.kind === 'number' ? ask.slips : []
  const answered = answer(workshopWith(), bankQuestion('turns-worm'), {
    sureness: 3,
    reply: { kind: 'number', value: slip!.value },
  })
  const statement = statementOf(answered)
  expect(statement.result.success).toBe(false)
  expect(statement.result.score).toEqual({ scaled: -1, raw: -6, min: -6, max: 3 })
  expect(statement.context.extensions).toHaveProperty(
    ['https://school.example/drive/extensions/cause'],
    slip!.cause,
  )
  expect(statementOf(answered, { marksOn: false }).result).not.toHaveProperty('score')
})

test('no prediction is an attempt without response, success or mark', () => {
  const { verb, result } = statementOf(answer(workshopWith(), bankQuestion('turns-worm'), { reply: null }))
  expect(verb.id).toBe('http://adlnet.gov/expapi/verbs/attempted')
  expect(Object.keys(result)).toEqual(['duration'])
})

test('choices and orders name what is laid out, and the right answer is among it', () => {
  const workshop = workshopWith()
  const choice = statementOf(answer(workshop, bankQuestion(familyOfKind('choice')))).object.definition
  expect(choice.interactionType).toBe('choice')
  expect(choice.choices!.map(({ id }) => id)).toContain(choice.correctResponsesPattern![0])
  const order = statementOf(answer(workshop, bankQuestion(familyOfKind('order'))))
  const { interactionType, choices, correctResponsesPattern } = order.object.definition
  expect(interactionType).toBe('sequencing')
  const ids = choices!.map(({ id }) => id)
  expect(correctResponsesPattern![0]!.split('[,]').toSorted()).toEqual(ids.toSorted())
  expect(order.result.response).toBe(correctResponsesPattern![0])
})

test('topics were experienced and lessons completed, in the run of their answers', () => {
  const passage = {
    id: '11111111-1111-4111-8111-111111111111',
    time: '2026-05-04T09:30:00.000Z',
    run: RUN,
    lesson: 'boot-cleaner',
    beat: 'turns',
    title: 'How many turns',
  }
  const whole = {
    ...passage,
    id: '22222222-2222-4222-8222-222222222222',
    beat: '',
    title: 'The boot cleaner',
  }
  const [topic, lesson] = passageStatements([passage, whole], OWNER)
  for (const statement of [topic!, lesson!]) {
    expect(warnings(statement)).toEqual([])
    expect(broken(statement)).toEqual([])
    expect(statement.context.registration).toBe(RUN)
  }
  expect(topic).toMatchObject({
    verb: { id: 'http://adlnet.gov/expapi/verbs/experienced' },
    object: { id: 'https://school.example/drive/lesson/boot-cleaner/topic/turns' },
  })
  expect(topic!.context.contextActivities?.parent[0]?.id).toBe(lesson!.object.id)
  expect(lesson).toMatchObject({
    verb: { id: 'http://adlnet.gov/expapi/verbs/completed' },
    object: { id: 'https://school.example/drive/lesson/boot-cleaner' },
    result: { completion: true },
  })
})

test('a question of a lesson names the lesson, and the same words always the same question', () => {
  const occasion = { asker: 'lesson', lesson: 'my lesson' } as const
  const reply = { kind: 'words', text: 'Because.' } as const
  const twice = [1, 2].map(() => statementOf(answer(workshopWith(), ownWords, { reply, occasion })))
  expect(twice[0]!.object.id).toMatch(
    /^https:\/\/school\.example\/drive\/lesson\/my%20lesson\/question\/[0-9a-f]{8}$/,
  )
  expect(twice[1]!.object.id).toBe(twice[0]!.object.id)
  expect(twice[0]!.object.definition.interactionType).toBe('other')
  expect(twice[0]!.context.contextActivities?.parent[0]?.id).toBe(
    'https://school.example/drive/lesson/my%20lesson',
  )
})

test.each([
  ['', 'https://counterturn.example'],
  ['no address', 'https://counterturn.example'],
  ['javascript:alert(1)', 'https://counterturn.example'],
  ['https://school.example/?a=1', 'https://counterturn.example'],
  [' https://school.example/ ', 'https://school.example'],
])('the home page %j stands in statements as %s', (homePage, expected) => {
  const answered = answer(workshopWith(), bankQuestion('turns-worm'))
  const { actor, object } = statementOf(answered, { homePage })
  expect(actor.account.homePage).toBe(expected)
  expect(object.id.startsWith(`${expected}/bank/`)).toBe(true)
})

const good = () => statementOf(answer(workshopWith(), bankQuestion('turns-worm'), { sureness: 2 }))

/** Broken for both versions. */
test.each<[string, (statement: Statement) => object]>([
  ['an id that is no UUID', (statement) => ({ ...statement, id: '12' })],
  ['a property that the standard does not have', (statement) => ({ ...statement, mood: 'fine' })],
  ['a null', (statement) => ({ ...statement, result: { ...statement.result, response: null } })],
  ['a timestamp in words', (statement) => ({ ...statement, timestamp: 'yesterday' })],
  ['a duration in seconds alone', (statement) => ({ ...statement, result: { duration: '20' } })],
  ['a verb without a scheme', (statement) => ({ ...statement, verb: { ...statement.verb, id: 'answered' } })],
  [
    'an extension whose key is no IRI',
    (statement) => ({ ...statement, context: { ...statement.context, extensions: { confidence: 2 } } }),
  ],
  [
    'an unknown part of the definition',
    (statement) => ({
      ...statement,
      object: { ...statement.object, definition: { ...statement.object.definition, answer: '20' } },
    }),
  ],
])('%s fails in the validator and in the rules', (_, change) => {
  const statement = change(good())
  expect(warnings(statement)).not.toEqual([])
  expect(broken(statement)).not.toEqual([])
})

/** Broken for one of the two. */
test('a missing actor and a scaled mark beyond 1 fail in the validator', () => {
  const { actor, ...rest } = good()
  expect(actor.account.name).toBe('a1b2c3')
  expect(warnings(rest)).not.toEqual([])
  const score = { scaled: 1.5, raw: 2, min: -6, max: 3 }
  expect(warnings({ ...good(), result: { duration: 'PT1S', score } })).not.toEqual([])
})

test.each<[string, (statement: Statement) => object]>([
  ['version 1.0.3', (statement) => ({ ...statement, version: '1.0.3' })],
  ['a time that is not UTC', (statement) => ({ ...statement, timestamp: '2026-05-04T11:30:00.000+02:00' })],
  ['a time without its zone', (statement) => ({ ...statement, timestamp: '2026-05-04T11:30:00.000' })],
  ['a duration finer than 0.01 s', (statement) => ({ ...statement, result: { duration: 'PT1.234S' } })],
  [
    'a range that is upside down',
    (statement) => ({
      ...statement,
      object: {
        ...statement.object,
        definition: { ...statement.object.definition, correctResponsesPattern: ['21[:]19'] },
      },
    }),
  ],
])('%s fails in the rules of 2.0', (_, change) => {
  expect(broken(change(good()))).not.toEqual([])
})
