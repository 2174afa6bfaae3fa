/** Whether data from outside is an entry of the records: each field has a requirement that is told when it is not met. */
import type { Problem } from '../../sim/machine/problem.ts'
import { told } from '../../sim/machine/told.ts'
import type { AnswerUnit } from '../../sim/question/family.ts'
import type { Answered, Asker, Passage } from '../store/records.ts'

/** Texts of questions are a few hundred characters; nothing that somebody types is longer than this. */
const LONGEST_TEXT = 4000
const MOST_GIVEN = 40

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/
const ISO_TIME = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/

const ASKERS: readonly Asker[] = ['practice', 'machine', 'set', 'lesson']
const KINDS: readonly Answered['kind'][] = ['number', 'choice', 'order', 'words']
const UNITS: Readonly<Record<AnswerUnit | '', true>> = {
  '': true,
  turn: true,
  deg: true,
  '1': true,
  'r/min': true,
  A: true,
  'N m': true,
  W: true,
  N: true,
  V: true,
  degC: true,
  '%': true,
  d: true,
  s: true,
  mm: true,
}

export const isUuid = (value: unknown): boolean => typeof value === 'string' && UUID.test(value)

const isText = (value: unknown): boolean => typeof value === 'string' && value.length <= LONGEST_TEXT
const isTime = (value: unknown): boolean =>
  typeof value === 'string' && ISO_TIME.test(value) && Number.isFinite(Date.parse(value))
const isWhole = (value: unknown): boolean => Number.isSafeInteger(value) && Number(value) >= 0
const isNumber = (value: unknown): boolean => Number.isFinite(value)
const oneOf =
  (all: readonly unknown[]) =>
  (value: unknown): boolean =>
    all.includes(value)

export const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const isGiven = (value: unknown): boolean =>
  isGroup(value) &&
  Object.keys(value).length <= MOST_GIVEN &&
  Object.values(value).every((each) => isNumber(each) || isText(each))

type Requirement = readonly [words: string, holds: (value: unknown) => boolean]

const TEXT: Requirement = [`a text of at most ${LONGEST_TEXT} characters`, isText]
const WHOLE: Requirement = ['a whole number from 0', isWhole]
const AMOUNT: Requirement = ['a number from 0', (value) => isNumber(value) && Number(value) >= 0]
const TIME: Requirement = ['a time such as 2026-05-04T09:30:00.000Z', isTime]
const ID: Requirement = ['a random UUID (version 4)', isUuid]

const ANSWERED: Readonly<Record<keyof Answered, Requirement>> = {
  id: ID,
  time: TIME,
  asker: [`one of ${ASKERS.join(', ')}`, oneOf(ASKERS)],
  run: ID,
  lesson: TEXT,
  bank: WHOLE,
  seed: TEXT,
  family: TEXT,
  index: WHOLE,
  level: ['1, 2 or 3', oneOf([1, 2, 3])],
  given: [`at most ${MOST_GIVEN} numbers or texts by name`, isGiven],
  text: TEXT,
  kind: [`one of ${KINDS.join(', ')}`, oneOf(KINDS)],
  unit: [
    'a unit of the bank, or nothing',
    (value) => typeof value === 'string' && Object.hasOwn(UNITS, value),
  ],
  raw: TEXT,
  value: ['a number, a text or null', (value) => value === null || isNumber(value) || isText(value)],
  answer: ['a number or a text', (value) => isNumber(value) || isText(value)],
  allowed: AMOUNT,
  right: ['true, false or null', oneOf([true, false, null])],
  cause: TEXT,
  sureness: ['1, 2, 3 or null', oneOf([1, 2, 3, null])],
  ownCount: TEXT,
  seconds: AMOUNT,
  why: TEXT,
}

const PASSAGE: Readonly<Record<keyof Passage, Requirement>> = {
  id: ID,
  time: TIME,
  run: ID,
  lesson: TEXT,
  beat: TEXT,
  title: TEXT,
}

const problem = (path: string, requirement: string, came: unknown): Problem => ({
  path,
  severity: 'error',
  message: `must be ${requirement}, got ${told(came)}`,
})

/** Numbers answer questions for numbers, and nothing else does. */
function kindProblems(path: string, { kind, value, answer }: Answered): Problem[] {
  const type = kind === 'number' ? 'number' : 'string'
  const words = kind === 'number' ? 'a number' : 'a text'
  const problems: Problem[] = []
  if (typeof answer !== type) problems.push(problem(`${path}.answer`, `${words} for ${kind}`, answer))
  if (value !== null && typeof value !== type)
    problems.push(problem(`${path}.value`, `${words} or null for ${kind}`, value))
  return problems
}

function fieldProblems(
  path: string,
  entry: unknown,
  requirements: Readonly<Record<string, Requirement>>,
): Problem[] {
  if (!isGroup(entry)) return [problem(path, 'a group of fields between { and }', entry)]
  const problems: Problem[] = []
  for (const [field, [words, holds]] of Object.entries(requirements)) {
    const came = Object.hasOwn(entry, field) ? entry[field] : undefined
    if (!holds(came)) problems.push(problem(`${path}.${field}`, words, came))
  }
  return problems
}

/** What an entry of the records falls short of, by path; nothing when it is an answer. */
export function answeredProblems(path: string, entry: unknown): Problem[] {
  const problems = fieldProblems(path, entry, ANSWERED)
  return problems.length > 0 ? problems : kindProblems(path, entry as Answered)
}

export const passageProblems = (path: string, entry: unknown): Problem[] =>
  fieldProblems(path, entry, PASSAGE)
