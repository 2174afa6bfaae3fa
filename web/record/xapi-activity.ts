/** Questions and lessons as activities of xAPI (IEEE 9274.1.1): what they are named and what kind of answer they take. */
import { familyNamed } from '../../sim/question/bank.ts'
import { hash32 } from '../../sim/question/draw.ts'
import type { Option } from '../../sim/question/family.ts'
import type { Answered } from '../store/records.ts'
import { recordedQuestion } from './recorded-question.ts'

const TYPES = 'http://adlnet.gov/expapi/activities'

/** Used where the person has named no address of their own. */
export const PLAIN_HOME_PAGE = 'https://counterturn.example'

type LanguageMap = Readonly<Record<'en', string>>

export interface InteractionComponent {
  readonly id: string
  readonly description: LanguageMap
}

export interface Definition {
  readonly type: string
  readonly name?: LanguageMap
  readonly description?: LanguageMap
  readonly interactionType?: 'numeric' | 'choice' | 'sequencing' | 'other'
  readonly correctResponsesPattern?: readonly string[]
  readonly choices?: readonly InteractionComponent[]
}

export interface Activity {
  readonly objectType: 'Activity'
  readonly id: string
  readonly definition: Definition
}

/** The address without its last slash, or the plain one where it is no web address. */
export function homePageOf(text: string): string {
  const url = URL.canParse(text.trim()) ? new URL(text.trim()) : null
  const usable = url && (url.protocol === 'https:' || url.protocol === 'http:') && !url.search && !url.hash
  return usable ? url.href.replace(/\/+$/, '') : PLAIN_HOME_PAGE
}

const query = (parameters: Readonly<Record<string, string | number>>): string =>
  Object.entries(parameters)
    .map(([name, value]) => `${encodeURIComponent(name)}=${encodeURIComponent(value)}`)
    .join('&')

/** The same question has the same id, whoever answered it. */
function questionId(homePage: string, { bank, seed, family, index, level, given, lesson, text }: Answered) {
  if (family === '') {
    const of = lesson === '' ? 'own' : encodeURIComponent(lesson)
    return `${homePage}/lesson/${of}/question/${hash32(text).toString(16).padStart(8, '0')}`
  }
  const which = seed === '' ? given : { seed, i: index, level }
  return `${homePage}/bank/${bank}/${encodeURIComponent(family)}?${query(which)}`
}

const choicesOf = (options: readonly Option[]): readonly InteractionComponent[] =>
  options.map(({ id, text }) => ({ id, description: { en: text } }))

/** What is laid out to choose from or to put in order, where it can be told. */
function choices(answered: Answered): Pick<Definition, 'choices'> {
  const ask = recordedQuestion(answered)?.ask
  if (ask?.kind === 'choice') return { choices: choicesOf(ask.options) }
  return ask?.kind === 'order' ? { choices: choicesOf(ask.cards) } : {}
}

/** Delimiters of the standard: low[:]high of a number, a[,]b[,]c of an order. */
function interaction(answered: Answered): Omit<Definition, 'type'> {
  const { kind, answer, allowed } = answered
  if (kind === 'number') {
    const right = Number(answer)
    return {
      interactionType: 'numeric',
      correctResponsesPattern: [`${right - allowed}[:]${right + allowed}`],
    }
  }
  if (kind === 'words') return { interactionType: 'other' }
  const correctResponsesPattern = [inOrder(String(answer))]
  const interactionType = kind === 'choice' ? 'choice' : 'sequencing'
  return { interactionType, correctResponsesPattern, ...choices(answered) }
}

/** ids as the records join them, as xAPI joins them */
export const inOrder = (ids: string): string => ids.split(' ').join('[,]')

export function questionActivity(homePage: string, answered: Answered): Activity {
  const title = familyNamed(answered.family)?.title
  return {
    objectType: 'Activity',
    id: questionId(homePage, answered),
    definition: {
      type: `${TYPES}/cmi.interaction`,
      ...(title === undefined ? {} : { name: { en: title } }),
      description: { en: answered.text },
      ...interaction(answered),
    },
  }
}

const lessonId = (homePage: string, lesson: string): string =>
  `${homePage}/lesson/${encodeURIComponent(lesson)}`

const named = (type: string, title: string): Definition => ({
  type: `${TYPES}/${type}`,
  ...(title === '' ? {} : { name: { en: title } }),
})

export const lessonActivity = (homePage: string, lesson: string, title = ''): Activity => ({
  objectType: 'Activity',
  id: lessonId(homePage, lesson),
  definition: named('lesson', title),
})

export const beatActivity = (homePage: string, lesson: string, beat: string, title: string): Activity => ({
  objectType: 'Activity',
  id: `${lessonId(homePage, lesson)}/topic/${encodeURIComponent(beat)}`,
  definition: named('module', title),
})
