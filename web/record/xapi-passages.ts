/** Topics that somebody experienced and lessons that were completed, as xAPI statements (IEEE 9274.1.1). */
import type { Passage } from '../store/records.ts'
import { type Activity, beatActivity, homePageOf, lessonActivity } from './xapi-activity.ts'
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

interface PassageStatement {
  readonly id: string
  readonly actor: Actor
  readonly verb: Verb
  readonly object: Activity
  readonly result?: { readonly completion: true }
  readonly context: RunContext
  readonly timestamp: string
  readonly version: typeof XAPI_VERSION
}

function passageStatement(passage: Passage, homePage: string, account: string): PassageStatement {
  const { id, time, run, lesson, beat, title } = passage
  const common = { id, actor: actor(homePage, account), timestamp: time, version: XAPI_VERSION } as const
  if (beat !== '')
    return {
      ...common,
      verb: verb('experienced'),
      object: beatActivity(homePage, lesson, beat, title),
      context: runContext(homePage, { run, lesson }),
    }
  return {
    ...common,
    verb: verb('completed'),
    object: lessonActivity(homePage, lesson, title),
    result: { completion: true },
    context: runContext(homePage, { run, lesson: '' }),
  }
}

export function passageStatements(
  passed: readonly Passage[],
  { homePage, account }: Owner,
): readonly PassageStatement[] {
  const used = homePageOf(homePage)
  return passed.map((each) => passageStatement(each, used, account))
}
