/**
 * A lesson that is being written, out of what was kept of it. It may be unfinished, so what does not fit is put back
 * to what it begins as, and only what has no form at all is left out: what is wrong with it is told by check-lesson.ts.
 */
import { readJson } from '../../sim/machine/json.ts'
import { ownValue } from '../../sim/machine/path.ts'
import { PANEL_GROUPS } from '../panel/panels.ts'
import type { AskedQuestion, Beat, BeatQuestion, BeatStage, Lesson } from '../store/lesson.ts'
import { emptyBeat, emptyLesson, newQuestion } from './edit-lesson.ts'

const isGroup = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const kindOf = (value: unknown): string =>
  Array.isArray(value) ? 'list' : value === null ? 'null' : typeof value

/** `plain` with every field of it that `value` has in the same kind. */
function merged<T extends object>(plain: T, value: object): T {
  const fields = Object.keys(plain).map((name) => {
    const was = ownValue(plain, name)
    const kept = ownValue(value, name)
    return [name, kindOf(kept) === kindOf(was) ? kept : was]
  })
  return Object.fromEntries(fields) as T
}

const texts = (value: readonly unknown[]): string[] => value.filter((each) => typeof each === 'string')

/** Groups with all their fields; whatever else is among them is left out. */
const groups = <T extends object>(value: readonly unknown[], plain: T): T[] =>
  value.filter(isGroup).map((each) => merged(plain, each))

const parameters = (given: object): Record<string, number | string> =>
  Object.fromEntries(
    Object.entries(given).flatMap(([name, value]: [string, unknown]) =>
      typeof value === 'number' || typeof value === 'string' ? [[name, value]] : [],
    ),
  )

/** [] where a question of this kind has no form any more. */
function asked(value: object): AskedQuestion[] {
  const family = ownValue(value, 'family')
  if (typeof family === 'string') {
    const given = ownValue(value, 'given')
    if (isGroup(given)) return [{ family, given: parameters(given) }]
    return [merged({ family, index: 0, level: 1 as const }, value)]
  }
  if (ownValue(value, 'answer') !== undefined) {
    const own = merged(newQuestion('number', ''), value)
    return 'slips' in own ? [{ ...own, slips: groups(own.slips, { value: 0, sentence: '' }) }] : []
  }
  if (ownValue(value, 'options') === undefined) return [merged({ text: '' }, value)]
  const own = merged(newQuestion('choice', ''), value)
  return 'options' in own ? [{ ...own, options: groups(own.options, { text: '', sentence: '' }) }] : []
}

function stageFrom(value: unknown, plain: BeatStage): BeatStage {
  if (!isGroup(value)) return plain
  const lit = ownValue(value, 'lit')
  const stage = merged(plain, value)
  const panel = PANEL_GROUPS.some(({ panels }) => panels.some((each) => each === stage.panel))
    ? stage.panel
    : 'none'
  return { ...stage, panel, lit: typeof lit === 'string' ? (lit as BeatStage['lit']) : null }
}

function question(value: unknown, plain: BeatStage): BeatQuestion[] {
  if (!isGroup(value)) return []
  const stage = ownValue(value, 'stage')
  return asked(value).map((each) => (isGroup(stage) ? { ...each, stage: stageFrom(stage, plain) } : each))
}

function beatFrom(value: object, place: number, stage: BeatStage): Beat {
  const beat = merged(emptyBeat(`topic-${place + 1}`, stage), value)
  return {
    ...beat,
    facts: groups(beat.facts, { name: '', value: '' }),
    notes: texts(beat.notes),
    stage: stageFrom(ownValue(value, 'stage'), stage),
    questions: beat.questions.flatMap((each) => question(each, stage)),
  }
}

/** Null where the text is no lesson at all. */
export function restored(text: string, stage: BeatStage): Lesson | null {
  const json = readJson(text)
  if ('fault' in json || !isGroup(json.value) || !Array.isArray(ownValue(json.value, 'beats'))) return null
  const lesson = merged(emptyLesson(stage, ''), json.value)
  const beats = (lesson.beats as readonly unknown[])
    .filter(isGroup)
    .map((beat, place) => beatFrom(beat, place, stage))
  return beats.length > 0 ? { ...lesson, beats } : null
}
