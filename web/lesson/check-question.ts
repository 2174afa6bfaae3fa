/** A question of a beat as a file gives it: of a family of the bank, or in the lesson's own words. */
import { checkValue } from '../../sim/machine/check.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { told } from '../../sim/machine/told.ts'
import { familyNamed } from '../../sim/question/bank.ts'
import type { AnswerUnit, Family, Given, Level, Tolerance } from '../../sim/question/family.ts'
import { isClose, toleranceOf } from '../../sim/question/marking.ts'
import { withGearing } from '../question/stage-question.ts'
import type { AskedQuestion, BeatQuestion } from '../store/lesson.ts'
import { checkStage } from './check-stage.ts'
import { questionOf } from './question-of.ts'
import {
  type Group,
  type Reading,
  has,
  inside,
  listIn,
  numberIn,
  oneIn,
  readGroup,
  refuse,
  textIn,
  valueIn,
} from './read-parts.ts'

const UNITS = Object.keys({
  turn: 0,
  deg: 0,
  '1': 0,
  'r/min': 0,
  A: 0,
  'N m': 0,
  W: 0,
  N: 0,
  V: 0,
  degC: 0,
  '%': 0,
  d: 0,
  s: 0,
  mm: 0,
} satisfies Record<AnswerUnit, 0>) as AnswerUnit[]
const TOLERANCES: readonly Tolerance[] = ['exact', 'r0.5', 'r1', 'r2', 'a0.5', 'a1']
const LEVELS: readonly Level[] = [1, 2, 3]

const LONGEST_TEXT = 400
const LONGEST_SENTENCE = 200
const LARGEST = 1e9
/** How far outside of what the bank draws a parameter of a lesson's own may be, as a factor */
const BEYOND = 10

/** All that the bank may draw for a parameter, given what stands before it. */
function drawable(family: Family, name: string, given: Given): readonly (number | string)[] {
  const parameter = family.parameters.find((each) => each.name === name)
  return parameter ? LEVELS.flatMap((level) => parameter.values(level, given)) : []
}

function checkParameter(group: Group, family: Family, name: string, before: Given): number | string {
  const { reading, path } = group
  const value = valueIn(group, name)
  const values = drawable(family, name, before)
  const numbers = values.filter((each) => typeof each === 'number')
  if (typeof family.example[name] === 'string') {
    const words = [...new Set(values)].filter((each) => typeof each === 'string')
    if (typeof value === 'string' && words.includes(value)) return value
    refuse(reading, inside(path, name), `must be one of ${words.join(', ')}, got ${told(value)}`)
    return family.example[name]
  }
  if (typeof value === 'number' && Number.isFinite(value)) {
    const most = BEYOND * Math.max(...numbers.map(Math.abs))
    const least = Math.min(...numbers)
    if (numbers.length === 0 || (value <= most && value >= (least < 0 ? -most : least / BEYOND))) return value
    const range = `${told(least < 0 ? -most : least / BEYOND)} to ${told(most)}`
    refuse(reading, inside(path, name), `must be a number from ${range}, got ${told(value)}`)
    return family.example[name] ?? 0
  }
  refuse(reading, inside(path, name), `must be a number, got ${told(value)}`)
  return family.example[name] ?? 0
}

function givenIn(group: Group, family: Family): Given {
  const names = family.parameters.map(({ name }) => name)
  const inner = readGroup(group.reading, inside(group.path, 'given'), valueIn(group, 'given'), names)
  const given: Record<string, number | string> = {}
  for (const name of names) given[name] = checkParameter(inner, family, name, given)
  return given
}

/** Whether the question can stand: an answer that is one, on a machine that can be built. */
function checkWhole(group: Group, question: AskedQuestion, seed: string, machine: Machine): void {
  const { reading, path } = group
  const asked = questionOf(question, seed)
  if (!asked) return
  const at = inside(path, 'given' in question ? 'given' : 'index')
  if (asked.ask.kind === 'number' && !Number.isFinite(asked.ask.answer))
    refuse(reading, at, 'must lead to an answer that is a number, and these do not')
  if (!asked.gearing) return
  const { problems } = checkValue(withGearing(machine, asked.gearing))
  const error = problems.find(({ severity }) => severity === 'error')
  if (error) refuse(reading, at, `must fit the machine of the stage: ${error.path} ${error.message}`)
}

function fromFamily(group: Group, seed: string, machine: Machine | null): AskedQuestion {
  const { reading, path } = group
  const name = valueIn(group, 'family')
  const family = typeof name === 'string' ? familyNamed(name) : undefined
  if (!family) {
    refuse(reading, inside(path, 'family'), `must be a family of questions, got ${told(name)}`)
    return { text: '' }
  }
  const before = reading.problems.length
  const question: AskedQuestion = has(group, 'given')
    ? { family: family.name, given: givenIn(group, family) }
    : {
        family: family.name,
        index: numberIn(group, 'index', { least: 0, most: 1_000_000, whole: true }),
        level: oneIn(group, 'level', LEVELS),
      }
  if (reading.problems.length > before) return question
  if (
    'given' in question &&
    family.accepts &&
    !LEVELS.some((level) => family.accepts?.(question.given, level))
  )
    refuse(reading, inside(path, 'given'), 'must be parameters that can be asked together, and these cannot')
  else if (machine) checkWhole(group, question, seed, machine)
  return question
}

function ownNumber(group: Group): AskedQuestion {
  const number = (inner: Group, key: string) => numberIn(inner, key, { least: -LARGEST, most: LARGEST })
  const answer = number(group, 'answer')
  const tolerance = oneIn(group, 'tolerance', TOLERANCES)
  const slip = (reading: Reading, path: string, value: unknown) => {
    const inner = readGroup(reading, path, value, ['value', 'sentence'])
    const wrong = number(inner, 'value')
    if (isClose(answer, wrong, toleranceOf(tolerance, answer), 1))
      refuse(
        reading,
        inside(path, 'value'),
        `must be a wrong answer, got ${told(wrong)} where ${told(answer)} is right`,
      )
    return { value: wrong, sentence: textIn(inner, 'sentence', { most: LONGEST_SENTENCE }) }
  }
  return {
    text: textIn(group, 'text', { most: LONGEST_TEXT }),
    unit: oneIn(group, 'unit', UNITS),
    answer,
    tolerance,
    working: textIn(group, 'working', { least: 0, most: LONGEST_SENTENCE, plain: '' }),
    slips: listIn(group, 'slips', { most: 8, items: 'slips' }, slip),
  }
}

function ownChoice(group: Group): AskedQuestion {
  const option = (reading: Reading, path: string, value: unknown) => {
    const inner = readGroup(reading, path, value, ['text', 'sentence'])
    const sentence = textIn(inner, 'sentence', { least: 0, most: LONGEST_SENTENCE, plain: '' })
    return { text: textIn(inner, 'text', { most: LONGEST_SENTENCE }), sentence }
  }
  const options = listIn(group, 'options', { least: 2, most: 6, items: 'options' }, option)
  return {
    text: textIn(group, 'text', { most: LONGEST_TEXT }),
    options,
    right: numberIn(group, 'right', { least: 0, most: Math.max(0, options.length - 1), whole: true }),
    working: textIn(group, 'working', { least: 0, most: LONGEST_SENTENCE, plain: '' }),
  }
}

const KNOWN = {
  family: ['family', 'given', 'index', 'level', 'stage'],
  number: ['text', 'unit', 'answer', 'tolerance', 'working', 'slips', 'stage'],
  choice: ['text', 'options', 'right', 'working', 'stage'],
  words: ['text', 'stage'],
}

interface Around {
  readonly seed: string
  /** On the stage of the topic */
  readonly machine: Machine | null
}

function checkAsked(reading: Reading, path: string, any: Group, { seed, machine }: Around): AskedQuestion {
  const kind = has(any, 'family')
    ? 'family'
    : has(any, 'answer')
      ? 'number'
      : has(any, 'options')
        ? 'choice'
        : 'words'
  const group = readGroup(reading, path, any.value, KNOWN[kind])
  if (kind === 'family') return fromFamily(group, seed, machine)
  if (kind === 'number') return ownNumber(group)
  return kind === 'choice' ? ownChoice(group) : { text: textIn(group, 'text', { most: LONGEST_TEXT }) }
}

export function checkQuestion(reading: Reading, path: string, value: unknown, around: Around): BeatQuestion {
  const any = readGroup(reading, path, value, null)
  if (!has(any, 'stage')) return checkAsked(reading, path, any, around)
  const { stage, machine } = checkStage(reading, inside(path, 'stage'), valueIn(any, 'stage'))
  return { ...checkAsked(reading, path, any, { ...around, machine }), stage }
}
