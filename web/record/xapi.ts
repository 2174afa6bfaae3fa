/**
 * Answers as xAPI statements, for a learning record store of one's own: IEEE 9274.1.1-2023 (xAPI 2.0). Nothing is
 * sent; the file is taken there by whoever owns the records. Read from the working group's public text.
 */
import { confidenceMark } from '../../sim/question/marking.ts'
import type { Answered } from '../store/records.ts'
import { type Activity, homePageOf, inOrder, questionActivity } from './xapi-activity.ts'
import {
  type Actor,
  type Owner,
  type RunContext,
  type Verb,
  XAPI_VERSION,
  actor,
  runContext,
  verb,
} from './xapi-parts.ts'

/** Best and worst mark for how sure one was, and what scales it into −1 to 1 */
const MOST = 3
const LEAST = -6
const SCALE = 6

interface Score {
  readonly scaled: number
  readonly raw: number
  readonly min: number
  readonly max: number
}

interface Result {
  readonly success?: boolean
  readonly response?: string
  readonly duration: string
  readonly score?: Score
}

type Extensions = Readonly<Record<string, unknown>>

interface Context extends RunContext {
  readonly extensions?: Extensions
}

export interface Statement {
  readonly id: string
  readonly actor: Actor
  readonly verb: Verb
  readonly object: Activity
  readonly result: Result
  readonly context: Context
  readonly timestamp: string
  readonly version: typeof XAPI_VERSION
}

/** Somebody who went on without a prediction attempted the question and did not answer it. */
const verbOf = ({ value }: Answered): Verb => verb(value === null ? 'attempted' : 'answered')

/** Hundredths of a second are the finest that statements are compared by. */
const durationText = (seconds: number): string => `PT${Number(seconds.toFixed(2))}S`

function scoreOf({ right, sureness }: Answered, marksOn: boolean): { readonly score?: Score } {
  if (!marksOn || right === null || sureness === null) return {}
  const raw = confidenceMark(right, sureness)
  return { score: { scaled: Math.min(1, Math.max(-1, raw / SCALE)), raw, min: LEAST, max: MOST } }
}

/** A plain number in the base unit, ids with the delimiters of the standard, or the words as typed. */
function responseOf({ kind, value }: Answered): { readonly response?: string } {
  if (value === null) return {}
  return { response: kind === 'order' ? inOrder(String(value)) : String(value) }
}

const resultOf = (answered: Answered, marksOn: boolean): Result => ({
  ...(answered.right === null ? {} : { success: answered.right }),
  ...responseOf(answered),
  duration: durationText(answered.seconds),
  ...scoreOf(answered, marksOn),
})

/** By IRIs of one's own, and only what there is. */
function extensionsOf(homePage: string, { sureness, cause, given, unit }: Answered): Extensions {
  const all = {
    confidence: sureness,
    cause: cause === '' ? null : cause,
    parameters: Object.keys(given).length === 0 ? null : given,
    unit: unit === '' ? null : unit,
  }
  const there = Object.entries(all).filter(([, value]) => value !== null)
  return Object.fromEntries(there.map(([name, value]) => [`${homePage}/extensions/${name}`, value]))
}

function contextOf(homePage: string, answered: Answered): Context {
  const extensions = extensionsOf(homePage, answered)
  return {
    ...runContext(homePage, answered),
    ...(Object.keys(extensions).length === 0 ? {} : { extensions }),
  }
}

function statementOf(answered: Answered, homePage: string, { account, marksOn }: Owner): Statement {
  return {
    id: answered.id,
    actor: actor(homePage, account),
    verb: verbOf(answered),
    object: questionActivity(homePage, answered),
    result: resultOf(answered, marksOn),
    context: contextOf(homePage, answered),
    timestamp: answered.time,
    version: XAPI_VERSION,
  }
}

export function statements(answered: readonly Answered[], owner: Owner): readonly Statement[] {
  const homePage = homePageOf(owner.homePage)
  return answered.map((each) => statementOf(each, homePage, owner))
}
