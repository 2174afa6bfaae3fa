import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Change,
  copyOf,
  emptyLesson,
  idFrom,
  newQuestion,
  notesFrom,
  ownId,
  plainBeatStage,
  questionKind,
  totalMinutes,
  withBeat,
  withBeatMoved,
  withCopiedBeat,
  withNewBeat,
  withStage,
  withStageOf,
  withoutBeat,
} from '../../../web/lesson/edit-lesson.ts'
import { DRAFT_KEY, createDraft } from '../../../web/lesson/editor-draft.ts'
import { restored } from '../../../web/lesson/editor-restored.ts'
import { beatOfPath, beatSummary, placeOf, stageWords } from '../../../web/lesson/editor-words.ts'
import { parseLesson, printLesson } from '../../../web/lesson/lesson-file.ts'
import { READY_LESSONS } from '../../../web/lesson/ready-lessons.ts'
import type { Lesson } from '../../../web/store/lesson.ts'

const PLAIN = plainBeatStage('boot-cleaner')
const START = emptyLesson(PLAIN, 'seed')
const SEED = 20_264

/** A lesson of so many topics, each with its own title. */
function lessonOf(count: number): Lesson {
  let lesson = withBeat(0, { title: 'T0' })(START)
  for (let i = 1; i < count; i++) {
    const [next] = withNewBeat(lesson, i - 1, PLAIN)
    lesson = withBeat(i, { title: `T${i}` })(next)
  }
  return lesson
}
const titles = ({ beats }: Lesson) => beats.map(({ title }) => title)
const ids = ({ beats }: Lesson) => beats.map(({ id }) => id)

describe('changes of a lesson', () => {
  test('fourteen topics are made without a word of JSON, and their file reads back equal', () => {
    const lesson = lessonOf(14)
    const { lesson: read, problems } = parseLesson(printLesson(lesson))
    expect(problems).toEqual([])
    expect(read).toEqual(lesson)
  })
  test('a topic is moved, copied and taken out, and the others stay as they were', () => {
    const lesson = lessonOf(4)
    expect(titles(withBeatMoved(0, 3)(lesson))).toEqual(['T1', 'T2', 'T3', 'T0'])
    expect(withBeatMoved(0, -1)(lesson)).toBe(lesson)
    const [copied, id] = withCopiedBeat(lesson, 1)
    expect(titles(copied)).toEqual(['T0', 'T1', 'T1', 'T2', 'T3'])
    expect(copied.beats[2]).toEqual({ ...lesson.beats[1], id })
    expect(titles(withoutBeat(1)(lesson))).toEqual(['T0', 'T2', 'T3'])
  })
  test('a question may have a stage of its own, kept by the file and by the draft, and goes back to its topic’s', () => {
    const asked = withBeat(1, { questions: [{ text: 'Why?' }, { text: 'How?' }] })(lessonOf(3))
    const pressed = { ...PLAIN, set: { 'bench.leftLoad': 1 } }
    const lesson = withStageOf(1, 1, pressed)(asked)
    const [first, second] = lesson.beats[1]!.questions
    expect([first, second]).toEqual([{ text: 'Why?' }, { text: 'How?', stage: pressed }])
    expect(lesson.beats[1]!.stage).toEqual(PLAIN)
    expect(parseLesson(printLesson(lesson))).toEqual({ lesson, problems: [] })
    expect(restored(printLesson(lesson), PLAIN)).toEqual(lesson)
    expect(withStage(second!, null)).toEqual({ text: 'How?' })
    expect(withStageOf(1, null, pressed)(asked).beats[1]!.stage).toEqual(pressed)
    const torn = JSON.parse(printLesson(lesson)) as { beats: { questions: { stage: object }[] }[] }
    torn.beats[1]!.questions[1]!.stage = { ...pressed, panel: 'gauge' }
    expect(parseLesson(JSON.stringify(torn)).problems.map(({ path }) => path)).toEqual([
      'beats.1.questions.1.stage.panel',
    ])
  })
  test('the last topic cannot be taken out', () => {
    expect(withoutBeat(0)(START)).toBe(START)
  })
  test(`no order of changes loses a topic or gives two the same id, seed ${SEED}`, () => {
    const place = fc.nat(20)
    const step = fc.oneof(
      fc.tuple(place, place).map(([from, to]): Change => withBeatMoved(from, to)),
      place.map(
        (at): Change =>
          (lesson) =>
            withCopiedBeat(lesson, at % lesson.beats.length)[0],
      ),
      place.map(
        (at): Change =>
          (lesson) =>
            withNewBeat(lesson, at % lesson.beats.length, PLAIN)[0],
      ),
      place.map((at): Change => withoutBeat(at)),
    )
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
        let lesson = lessonOf(5)
        for (const change of steps) {
          const next = change(lesson)
          const gone = ids(lesson).filter((id) => !ids(next).includes(id))
          expect(gone.length).toBe(Math.max(0, lesson.beats.length - next.beats.length))
          expect(gone.length).toBeLessThanOrEqual(1)
          expect(new Set(ids(next)).size).toBe(next.beats.length)
          lesson = next
        }
      }),
      { seed: SEED, numRuns: 300 },
    )
  })
  test('ids are made of names, and a lesson of one’s own takes none of a ready one', () => {
    expect(idFrom('  Zähne & 2 Räder! ')).toBe('z-hne-2-r-der')
    expect(idFrom('!!!')).toBe('my-lesson')
    for (const ready of READY_LESSONS) {
      const id = ownId(ready.id.replaceAll('-', ' '), READY_LESSONS)
      expect(READY_LESSONS.map((each) => each.id)).not.toContain(id)
      expect(
        parseLesson(printLesson(copyOf(ready, 'other'))).problems.filter((p) => p.severity === 'error'),
      ).toEqual([])
    }
  })
  test('every kind of question begins as one of its kind', () => {
    for (const kind of ['bank', 'number', 'choice', 'words'] as const) {
      const question = newQuestion(kind, 'How many?')
      expect(questionKind(question)).toBe(kind)
      const { problems } = parseLesson(printLesson(withBeat(0, { questions: [question] })(START)))
      expect(problems).toEqual([])
    }
  })
  test('notes are a line each, and minutes add up', () => {
    expect(notesFrom(' one \n\n two\n')).toEqual(['one', 'two'])
    expect(totalMinutes(lessonOf(14).beats)).toBe(42)
  })
})

const memory = (text: string | null = null, full = false) => {
  const kept = new Map(text === null ? [] : [[DRAFT_KEY, text]])
  return {
    kept,
    keeper: {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => {
        if (full) throw new Error('no room')
        kept.set(key, value)
      },
    },
  }
}

describe('the draft', () => {
  const begun = (keeper = memory().keeper) => {
    const draft = createDraft(keeper, PLAIN)
    draft.replace(lessonOf(3))
    return draft
  }
  test('what is typed into one field is taken back at once, and comes again', () => {
    const draft = begun()
    for (const title of ['W', 'Wo', 'Worm']) draft.edit(withBeat(0, { title }), 'title')
    draft.edit(withBeat(0, { minutes: 7 }), 'minutes')
    draft.undo()
    expect(draft.store.getState().lesson?.beats[0]).toMatchObject({ title: 'Worm', minutes: 3 })
    draft.undo()
    expect(draft.store.getState().lesson?.beats[0]?.title).toBe('T0')
    draft.redo()
    expect(draft.store.getState().lesson?.beats[0]?.title).toBe('Worm')
  })
  test('a topic that was taken out comes back and is looked at', () => {
    const draft = begun()
    const before = draft.store.getState().lesson
    const id = before!.beats[1]!.id
    draft.select(id)
    draft.edit(withoutBeat(1))
    expect(draft.store.getState().selected).not.toBe(id)
    draft.undo()
    expect(draft.store.getState().lesson).toEqual(before)
    expect(draft.store.getState().selected).toBe(id)
  })
  test('another lesson in its place can be taken back', () => {
    const draft = begun()
    draft.replace(START)
    draft.undo()
    expect(titles(draft.store.getState().lesson!)).toEqual(['T0', 'T1', 'T2'])
  })
  test('it is kept at every change, and comes back in the next visit, unfinished or not', () => {
    const { keeper } = memory()
    const draft = begun(keeper)
    draft.edit(withBeat(1, { title: '', notes: ['a note'], questions: [newQuestion('choice', '')] }))
    expect(parseLesson(printLesson(draft.store.getState().lesson!)).lesson).toBeNull()
    expect(createDraft(keeper, PLAIN).store.getState().lesson).toEqual(draft.store.getState().lesson)
  })
  test('where the browser does not keep it, that is known', () => {
    const draft = begun(memory(null, true).keeper)
    draft.edit(withBeat(0, { title: 'X' }))
    expect(draft.store.getState().isKept).toBe(false)
  })
})

describe('restoring', () => {
  test('the ready lessons come back whole', () => {
    for (const lesson of READY_LESSONS) expect(restored(printLesson(lesson), PLAIN)).toEqual(lesson)
  })
  test(`whatever was kept, what comes back can be printed, seed ${SEED}`, () => {
    const mangled = fc
      .tuple(fc.constantFrom(...READY_LESSONS), fc.nat(), fc.jsonValue())
      .map(([lesson, at, value]) => {
        const paths: [object, string][] = []
        const copy: unknown = JSON.parse(JSON.stringify(lesson))
        const walk = (node: unknown) => {
          if (typeof node !== 'object' || node === null) return
          for (const key of Object.keys(node)) {
            paths.push([node, key])
            walk((node as Record<string, unknown>)[key])
          }
        }
        walk(copy)
        const [node, key] = paths[at % paths.length]!
        Object.assign(node, { [key]: value })
        return JSON.stringify(copy)
      })
    let came = 0
    fc.assert(
      fc.property(fc.oneof(mangled, fc.string(), fc.json()), (text) => {
        const lesson = restored(text, PLAIN)
        if (!lesson) return
        came += 1
        expect(lesson.beats.length).toBeGreaterThan(0)
        expect(restored(printLesson(lesson), PLAIN)).toEqual(lesson)
        for (const beat of lesson.beats)
          expect(beatSummary(beat) + stageWords(beat.stage)).not.toMatch(/undefined/)
      }),
      { seed: SEED, numRuns: 400 },
    )
    expect(came).toBeGreaterThan(50)
  })
})

test('places of problems are told as the editor counts', () => {
  expect(placeOf('beats.3.questions.0.given.z1')).toBe('Topic 4, question 1, given z1')
  expect(placeOf('beats.0.title')).toBe('Topic 1, title')
  expect(placeOf('name')).toBe('name')
  expect(placeOf('')).toBe('The file')
  expect(beatOfPath('beats.12.words')).toBe(12)
  expect(beatOfPath('seed')).toBeNull()
})
