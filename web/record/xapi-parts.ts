/** What statements of answers and of lessons have in common (IEEE 9274.1.1). */
import { type Activity, lessonActivity } from './xapi-activity.ts'

export const XAPI_VERSION = '2.0.0'
const VERBS = 'http://adlnet.gov/expapi/verbs'

export interface Owner {
  /** As typed; a plain one stands for what is no web address. */
  readonly homePage: string
  /** Random name of the learner there */
  readonly account: string
  /** Whether marks for how sure one was are told */
  readonly marksOn: boolean
}

export interface Verb {
  readonly id: string
  readonly display: { readonly en: string }
}

export const verb = (word: 'answered' | 'attempted' | 'experienced' | 'completed'): Verb => ({
  id: `${VERBS}/${word}`,
  display: { en: word },
})

export interface Actor {
  readonly objectType: 'Agent'
  readonly account: { readonly homePage: string; readonly name: string }
}

export const actor = (homePage: string, name: string): Actor => ({
  objectType: 'Agent',
  account: { homePage, name },
})

export interface RunContext {
  /** One for each run of a lesson, a set, a practice */
  readonly registration: string
  readonly platform: string
  readonly language: string
  readonly contextActivities?: { readonly parent: readonly Activity[] }
}

interface Run {
  readonly run: string
  readonly lesson: string
}

export const runContext = (homePage: string, { run, lesson }: Run): RunContext => ({
  registration: run,
  platform: 'Counterturn',
  language: 'en',
  ...(lesson === '' ? {} : { contextActivities: { parent: [lessonActivity(homePage, lesson)] } }),
})
