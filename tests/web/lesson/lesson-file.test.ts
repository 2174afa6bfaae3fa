import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkLessonFile, LONGEST_LESSON, parseLesson, printLesson } from '../../../web/lesson/lesson-file.ts'
import { readLessonFile } from '../../../web/lesson/open-lesson-file.ts'
import { READY_LESSONS } from '../../../web/lesson/ready-lessons.ts'

type Data = Record<string, unknown>

const ready = (id = 'boot-cleaner'): Data =>
  structuredClone(READY_LESSONS.find((each) => each.id === id)!) as unknown as Data

/** Sets a place in plain data by its path. */
function set(data: Data, path: string, value: unknown): Data {
  const keys = path.split('.')
  const last = keys.pop()!
  let at: Data = data
  for (const key of keys) at = at[key] as Data
  if (value === undefined) delete at[last]
  else at[last] = value
  return data
}

const found = (data: unknown) =>
  parseLesson(JSON.stringify(data)).problems.map(({ path, message }) => `${path} ${message}`)

const OWN_NUMBER = { text: 'How long?', unit: 'mm', answer: 60, tolerance: 'r1', working: '', slips: [] }

const BAD: readonly (readonly [string, unknown, string])[] = [
  ['name', '', 'name must be a text of 1 to 80 characters, got one of 0'],
  ['id', 'Boot Cleaner', "id must be small letters, digits and single hyphens, got the text 'Boot Cleaner'"],
  ['beats', [], 'beats must be a list of 1 to 60 beats, got a list of 0'],
  ['beats.3.minutes', -1, 'beats.3.minutes must be a number from 0.5 to 240, got −1'],
  ['beats.3.words', 7, 'beats.3.words must be a text of at most 160 characters, got 7'],
  ['beats.3.extra', 'no', "beats.3.extra must be true or false, got the text 'no'"],
  ['beats.3.notes.0', null, 'beats.3.notes.0 must be a text of 1 to 600 characters, got null'],
  ['beats.3.id', 'one-motor', "beats.3.id must be another than that of beat 0, got the text 'one-motor'"],
  [
    'beats.4.questions.0.given.z1',
    9000,
    'beats.4.questions.0.given.z1 must be a number from 0.1 to 40, got 9000',
  ],
  ['beats.4.questions.0.given.z1', '1', "beats.4.questions.0.given.z1 must be a number, got the text '1'"],
  ['beats.4.questions.0.given.z1', 1.5, 'beats.4.questions.0.given must fit the machine of the stage'],
  [
    'beats.3.questions.0.given.hand',
    'both',
    "beats.3.questions.0.given.hand must be one of right, left, got the text 'both'",
  ],
  [
    'beats.4.questions.0.family',
    'turns',
    "beats.4.questions.0.family must be a family of questions, got the text 'turns'",
  ],
  [
    'beats.4.questions.0',
    { family: 'turns-worm', index: 0.5, level: 1 },
    'beats.4.questions.0.index must be a whole number from 0 to 1000000, got 0.5',
  ],
  [
    'beats.4.questions.0',
    { family: 'turns-worm', index: 0, level: 4 },
    'beats.4.questions.0.level must be one of 1, 2, 3, got 4',
  ],
  ['beats.0.questions.0.right', 3, 'beats.0.questions.0.right must be a whole number from 0 to 2, got 3'],
  [
    'beats.0.questions.0.options',
    [],
    'beats.0.questions.0.options must be a list of 2 to 6 options, got a list of 0',
  ],
  [
    'beats.4.questions.0',
    { ...OWN_NUMBER, unit: 'inch' },
    'beats.4.questions.0.unit must be one of 1, turn, deg',
  ],
  [
    'beats.4.questions.0',
    { ...OWN_NUMBER, slips: [{ value: 60.3, sentence: 'x' }] },
    'beats.4.questions.0.slips.0.value must be a wrong answer, got 60.3 where 60 is right',
  ],
  ['beats.4.stage', undefined, 'beats.4.stage must be a group of fields, got nothing'],
  [
    'beats.4.stage.machine',
    'mine',
    "beats.4.stage.machine must be one of boot-cleaner, vent-opener, cord-winder, classroom-model, got the text 'mine'",
  ],
  ['beats.4.stage.panel', 'gauge', 'beats.4.stage.panel must be one of figures, waves'],
  ['beats.4.stage.lit', 'capacitor', 'beats.4.stage.lit must be one of socket, transformer'],
  [
    'beats.4.stage.signs',
    ['glow'],
    "beats.4.stage.signs.0 must be one of contact, compound, forces, timing, heat, got the text 'glow'",
  ],
  [
    'beats.4.stage.set',
    { 'bench.setting': 7 },
    'beats.4.stage.set.bench.setting must be a whole number from 0 to 4 with this machine, got 7',
  ],
  [
    'beats.4.stage.set',
    { 'picture.large': true },
    'beats.4.stage.set.picture.large must be false in a lesson, got true',
  ],
  ['beats.4.stage.set', { way: 'design' }, 'beats.4.stage.set.way is no setting of the stage'],
  [
    'beats.4.stage.set',
    { 'machine.gearing.wheelTeeth': 4 },
    'beats.4.stage.set.machine.gearing.wheelTeeth must be',
  ],
  [
    'beats.4.stage.set',
    { 'picture.__proto__.x': 1 },
    'beats.4.stage.set.picture.__proto__.x is no setting of the stage',
  ],
]

test.each(BAD)('%s as %j is told by its path', (path, value, told) => {
  const { lesson, problems } = parseLesson(JSON.stringify(set(ready(), path, value)))
  expect(lesson).toBeNull()
  expect(problems.map((problem) => `${problem.path} ${problem.message}`).join('\n')).toContain(told)
})

test('what is not known is named and left out', () => {
  const data = set(set(ready(), 'beats.0.music', 'loud'), 'beats.4.questions.0.given.z3', 2)
  const { lesson, problems } = parseLesson(JSON.stringify(data))
  expect(problems.map(({ path, severity }) => [path, severity])).toEqual([
    ['beats.0.music', 'warning'],
    ['beats.4.questions.0.given.z3', 'warning'],
  ])
  expect(lesson).toEqual(READY_LESSONS[0])
})

test('a short file is enough', () => {
  const short = {
    counterturnLesson: 1,
    id: 'mine',
    name: 'Mine',
    summary: '',
    seed: 's',
    beats: [{ id: 'a', title: 'A', words: '', minutes: 2, stage: { machine: 'vent-opener' } }],
  }
  const { lesson, problems } = parseLesson(JSON.stringify(short))
  expect(problems).toEqual([])
  expect(lesson && parseLesson(printLesson(lesson)).lesson).toEqual(lesson)
})

describe('a text that is no lesson', () => {
  test.each([
    ['', 'must be JSON; line 1, column 1'],
    ['[]', 'must be a lesson, a group of fields between { and }, got a list of 0'],
    ['{"counterturnLesson": 2}', 'must be at most 1, got 2; open it with a newer copy of this program'],
    ['{"counterturnLesson": 0}', 'must be one that can still be read, up to 1, got 0'],
    [
      '{"format": "counterturn-machine"}',
      'must be the version of a lesson, a whole number up to 1, got nothing',
    ],
  ])('%s', (given, told) => {
    const { lesson, problems } = parseLesson(given)
    expect(lesson).toBeNull()
    expect(problems[0]?.message).toContain(told)
  })

  test('too long a text is not read at all', async () => {
    const long = ' '.repeat(LONGEST_LESSON + 1)
    expect(parseLesson(long).problems[0]?.message).toBe(
      `must be at most ${LONGEST_LESSON} characters, got ${LONGEST_LESSON + 1}`,
    )
    const file = { name: 'x', size: 5e6, text: () => Promise.reject(new Error('it was read')) }
    expect((await readLessonFile(file)).problems[0]?.message).toBe(
      'must be a file of at most 1200 kB, got 5000 kB',
    )
  })

  test('a file that cannot be read is told', async () => {
    const file = { name: 'x', size: 10, text: () => Promise.reject(new Error('gone')) }
    expect((await readLessonFile(file)).problems[0]?.message).toContain('did not let itself be read')
  })
})

test('older files are brought up step by step, and it is said', () => {
  const renamed = {
    from: 0,
    name: 'topics became beats',
    apply: (file: object) => ({ ...file, beats: (file as Data)['topics'] }),
  }
  const { beats, ...rest } = ready()
  const { lesson, problems } = checkLessonFile({ ...rest, topics: beats, counterturnLesson: 0 }, [renamed])
  expect(lesson).toEqual(READY_LESSONS[0])
  expect(problems[0]).toEqual({
    path: 'counterturnLesson',
    severity: 'note',
    message: 'was brought from 0 to 1: topics became beats',
  })
})

/** All paths of plain data. */
function paths(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return path === '' ? [] : [path]
  const inner = Object.entries(value).flatMap(([key, part]) =>
    paths(part, path === '' ? key : `${path}.${key}`),
  )
  return path === '' ? inner : [path, ...inner]
}

describe('whatever is written into a lesson', () => {
  const places = READY_LESSONS.map(({ id }) => ({
    id,
    all: paths(ready(id)).filter((path) => !/\.stage\.set\./.test(path)),
  }))
  const anything = fc.oneof(
    fc.jsonValue({ maxDepth: 2 }),
    fc.constantFrom(-1, 0, 0.5, 1e9, 1e308, -0, '', '__proto__', null, [], {}),
    fc.double(),
  )

  test('it becomes problems or a lesson whose questions have answers, never an exception', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...places).chain(({ id, all }) => fc.tuple(fc.constant(id), fc.constantFrom(...all))),
        anything,
        ([id, path], value) => {
          const { lesson, problems } = parseLesson(JSON.stringify(set(ready(id), path, value)) ?? '')
          expect(lesson !== null || problems.length > 0).toBe(true)
          for (const { message } of problems) expect(message).not.toMatch(/undefined|NaN|\[object/)
          if (lesson) expect(found(lesson)).toEqual([])
        },
      ),
      { numRuns: 200, seed: 5 },
    )
  })

  test('a torn file is told, wherever it is torn', () => {
    const text = printLesson(READY_LESSONS[1]!)
    fc.assert(
      fc.property(fc.integer({ min: 0, max: text.length - 3 }), (at) => {
        expect(parseLesson(text.slice(0, at)).lesson).toBeNull()
      }),
      { numRuns: 200, seed: 6 },
    )
  })
})
