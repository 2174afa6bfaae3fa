import { crc32, deflateRawSync, inflateRawSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { TICKS_PER_TURN, advanceTurns, noTurns } from '../../sim/drive/turns.ts'
import { fieldsOf, valueAt, withValue } from '../../sim/machine/fields.ts'
import { parseMachine, printMachine } from '../../sim/machine/file.ts'
import { readAddress, writeAddress } from '../../web/file/address.ts'
import { DEMO_MACHINES } from '../../web/file/demo-machines.ts'
import { plainState } from '../../web/file/link-state.ts'
import { LINK_WORDS } from '../../web/file/link-words.ts'
import { checksum, packText } from '../../web/file/pack-text.ts'
import { readLink } from '../../web/file/read-link.ts'
import { MOST_UNPACKED, unpackText } from '../../web/file/unpack-text.ts'
import { MOST_LINK, writeLink } from '../../web/file/write-link.ts'
import { bootCleaner, cordWinder, demoMachines } from '../support/machines.ts'

const opening = plainState(bootCleaner)
const QUESTION = { family: 'turns-worm', index: 3, level: 1 }
const QUESTIONS = { bank: 1, seed: 'room', items: [QUESTION, QUESTION], at: 1 }
const set = (changes: object) => packText(JSON.stringify({ v: 2, base: 'boot-cleaner', of: 0, set: changes }))
/** A link says that its demo machine has changed when `of` is not its fingerprint; that is not what is tested here. */
const problemsOf = (link: string) => readLink(link).problems.filter(({ path }) => path !== 'base')

test('the demo machines are those of the files, each under its own id', () => {
  expect(DEMO_MACHINES.map(({ machine }) => machine)).toStrictEqual(demoMachines)
  expect(new Set(DEMO_MACHINES.map(({ id }) => id)).size).toBe(demoMachines.length)
})

test.each(DEMO_MACHINES)(
  '$id passes every check, and stands in its file just as it is printed',
  ({ machine }) => {
    const read = parseMachine(JSON.stringify(machine))
    expect(read.problems.filter(({ severity }) => severity === 'error')).toEqual([])
    expect(printMachine(read.machine!)).toBe(`${JSON.stringify(machine, null, 2)}\n`)
  },
)

test('the checksum is the one that zlib computes', () => {
  for (const text of ['', '123456789', 'Counterturn', '\0\0\0', 'é→😀']) {
    const bytes = new TextEncoder().encode(text)
    expect(checksum(bytes)).toBe(crc32(bytes))
  }
})

test('any text is unpacked as it was packed, with lone halves of characters written as JSON writes them', () => {
  for (const text of ['{}', 'é→😀', '\uFEFF{', JSON.stringify('\uD800'), 'x'.repeat(MOST_UNPACKED)])
    expect(unpackText(packText(text))).toEqual({ text })
})

test('after a million worm turns and a part of one, the moment comes back to the last bit', () => {
  const moment = { ...noTurns(), turns: -1_000_000 }
  advanceTurns(moment, 1 / 13)
  expect(moment.rest).toBeGreaterThan(0)
  expect(readLink(writeLink({ ...opening, moment })).state!.moment).toStrictEqual(moment)
})

test('a link of machine A as it first opens has at most 40 characters', () => {
  expect(writeLink(opening).length).toBeLessThanOrEqual(40)
})

test('a link to a machine with another number in every field has at most 900 characters', () => {
  const custom = fieldsOf(bootCleaner).reduce(
    (machine, { path, whole, min }) => {
      const value = valueAt(machine, path)
      const other = Number((value * (value > min ? 0.987 : 1.013)).toPrecision(4))
      return withValue(machine, path, whole ? value + 1 : other)
    },
    withValue(withValue(bootCleaner, 'name', 'Shoe brush'), 'about', 'Two brushes at the door of a stable.'),
  )
  const link = writeLink({ ...opening, machine: custom })
  expect(link.length).toBeLessThanOrEqual(900)
  expect(readLink(link).state!.machine).toStrictEqual(custom)
})

test('a set of questions and a topic of a lesson come back as they were', () => {
  const asked = {
    bank: 7,
    seed: 'Prüfung 3',
    items: [{ family: 'no-such', index: 0, level: 3 as const }],
    at: 0,
  }
  const state = { ...opening, way: 'predict' as const, asked, lesson: { id: 'any', beat: 'open' } }
  expect(readLink(writeLink(state))).toStrictEqual({ state, problems: [] })
})

test('before a prediction is committed a link says the machine and the way and nothing else', () => {
  const turned = { turns: 20, ticks: 0, rest: 0 }
  const link = writeLink(plainState(withValue(bootCleaner, 'gearing.wheelTeeth', 30), 'predict'))
  const unpacked = unpackText(link) as { text: string }
  const { set: changes } = JSON.parse(unpacked.text) as { set: object }
  expect(changes).toEqual({ 'machine.gearing.wheelTeeth': 30, way: 'predict' })
  expect(writeLink({ ...opening, way: 'predict', moment: turned })).not.toBe(link)
})

test('what is packed is deflated text by the standard, after four bytes of checksum', () => {
  const bytes = Buffer.from(writeLink(opening), 'base64url')
  const text = inflateRawSync(bytes.subarray(4), { dictionary: LINK_WORDS }).toString('utf8')
  expect(JSON.parse(text)).toMatchObject({ v: 3, base: 'boot-cleaner', set: {} })
  expect(bytes.readUInt32BE(0)).toBe(crc32(bytes.subarray(4)))
})

test('a link longer than what is read says both lengths', () => {
  expect(readLink('A'.repeat(MOST_LINK + 1)).problems[0]!.message).toBe(
    `must be at most ${MOST_LINK} characters, got ${MOST_LINK + 1}`,
  )
})

test('a short link that would swell to more than a link can hold is refused', () => {
  const bomb = packText(' '.repeat(2_000_000))
  expect(bomb.length).toBeLessThan(MOST_LINK)
  expect(readLink(bomb)).toEqual({
    state: null,
    problems: [
      { path: '', severity: 'error', message: `must unpack to at most ${MOST_UNPACKED} bytes, got more` },
    ],
  })
})

test('lists within lists within lists are refused, however deep', () => {
  expect(readLink(packText('['.repeat(60_000))).state).toBeNull()
  expect(readLink(packText(`${'{"a":'.repeat(10_000)}1${'}'.repeat(10_000)}`)).state).toBeNull()
})

test('deflated text without a checksum is refused', () => {
  const bare = deflateRawSync(JSON.stringify({ v: 1 })).toString('base64url')
  expect(readLink(bare).problems[0]!.message).toMatch(/checksum/)
})

test('another version is named', () => {
  const { problems } = readLink(packText(JSON.stringify({ v: 4, base: 'boot-cleaner', set: {} })))
  expect(problems).toEqual([{ path: 'v', severity: 'error', message: 'must be of version 1, 2, 3, got 4' }])
})

test('a demo machine that has changed since is named, and the link still opens', () => {
  const { state, problems } = readLink(set({ 'machine.gearing.wheelTeeth': 30 }))
  expect(state!.machine.gearing.wheelTeeth).toBe(30)
  expect(problems.map(({ path, severity }) => ({ path, severity }))).toEqual([
    { path: 'base', severity: 'warning' },
  ])
})

test.each([
  [
    { 'machine.gearing.colour': 'red' },
    'machine.gearing.colour',
    /is not known here and is left out; it was "red"/,
  ],
  [{ 'bench.setting': 5 }, 'bench.setting', /must be a whole number from 0 to 4 with this machine, got 5/],
  [{ 'bench.sense': -1 }, 'bench.sense', /must be one of 1, got −1/],
  [{ 'bench.pace': 3 }, 'bench.pace', /must be one of 1, 2, 4/],
  [{ 'picture.apart': 1.5 }, 'picture.apart', /must be a number from 0 to 1, got 1.5/],
  [{ 'moment.ticks': TICKS_PER_TURN }, 'moment.ticks', /must be a whole number from 0/],
  [{ 'moment.rest': 1 }, 'moment.rest', /must be a number from 0 to below 1, got 1/],
  [{ way: 'sideways' }, 'way', /must be one of demonstrate, predict, measure, design/],
  [{ asked: 'all' }, 'asked', /must be null, or bank, seed, at most 100 items/],
  [{ asked: { ...QUESTIONS, at: 2 } }, 'asked', /must be null, or bank/],
  [{ asked: { ...QUESTIONS, seed: '' } }, 'asked', /must be null, or bank/],
  [{ asked: { ...QUESTIONS, items: [] } }, 'asked', /must be null, or bank/],
  [{ asked: { ...QUESTIONS, answers: [20] } }, 'asked', /must be null, or bank/],
  [
    { asked: { ...QUESTIONS, items: Array.from({ length: 101 }, () => QUESTION) } },
    'asked',
    /must be null, or bank/,
  ],
  [
    { asked: { ...QUESTIONS, items: [{ ...QUESTION, level: 4 }, QUESTION] } },
    'asked',
    /must be null, or bank/,
  ],
  [{ lesson: { id: 'boot-cleaner' } }, 'lesson', /must be null, or the id of a lesson/],
  [{ lesson: { id: 'x'.repeat(81), beat: 'a' } }, 'lesson', /must be null, or the id of a lesson/],
  [{ bench: [] }, 'bench', /must be a group of settings, got a list of 0/],
  [{ bench: { setting: 2, speed: 4 } }, 'bench.speed', /is not known here/],
])('a setting that is not in order is named and keeps its plain value: %j', (changes, path, message) => {
  const { state, problems } = { ...readLink(set(changes)), problems: problemsOf(set(changes)) }
  expect(problems).toHaveLength(1)
  expect(problems[0]!.path).toBe(path)
  expect(problems[0]!.message).toMatch(message)
  expect(state!.machine).toStrictEqual(bootCleaner)
})

test('a machine that cannot be used is refused with the path of its field', () => {
  const link = set({ 'machine.gearing.wheelTeeth': -3 })
  expect(readLink(link).state).toBeNull()
  expect(problemsOf(link).map(({ path }) => path)).toContain('gearing.wheelTeeth')
})

test('an unknown field inside a part that was replaced is named', () => {
  const link = set({ 'machine.rectifier': { ...bootCleaner.rectifier, diodeDrop: 0.7, colour: 'red' } })
  expect(problemsOf(link).map(({ path }) => path)).toEqual(['rectifier.colour'])
  expect(readLink(link).state!.machine.rectifier).toEqual({ ...bootCleaner.rectifier, diodeDrop: 0.7 })
})

test('a link cannot reach what every object inherits', () => {
  const changes = JSON.parse(
    '{"__proto__":{"a":1},"__proto__.polluted":1,"machine.constructor.prototype.polluted":1,"bench":{"__proto__":{"pace":1}}}',
  ) as object
  expect(
    problemsOf(set(changes))
      .map(({ path }) => path)
      .sort(),
  ).toEqual(['__proto__', '__proto__.polluted', 'bench.__proto__', 'machine.constructor.prototype.polluted'])
  expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
})

test('a list cannot be made longer than it is by setting its length', () => {
  const { state } = readLink(set({ 'machine.control.steps.length': 4_000_000_000 }))
  expect(state!.machine.control.steps).toHaveLength(5)
})

test('a machine near to another demo machine is told by its differences from that one', () => {
  const near = { ...opening, machine: withValue(cordWinder, 'gearing.wheelTeeth', 30) }
  expect(writeLink(near).length).toBeLessThan(60)
  expect(readLink(writeLink(near)).state).toStrictEqual(near)
})

test.each([
  ['', { way: null, link: null }],
  ['#', { way: null, link: null }],
  ['#/predict', { way: 'predict', link: null }],
  ['#/demonstrate?s=abc-_9', { way: 'demonstrate', link: 'abc-_9' }],
  ['#/demonstrate?s=', { way: 'demonstrate', link: null }],
  ['#/somewhere?s=abc', { way: null, link: 'abc' }],
  ['#/measure?other=1', { way: 'measure', link: null }],
  ['#%E0%A4%A', { way: null, link: null }],
  ['#/toString', { way: null, link: null }],
])('the address %j says where to go', (hash, address) => {
  expect(readAddress(hash)).toEqual(address)
})

test('an address that was written is read back', () => {
  const link = writeLink(opening)
  expect(readAddress(writeAddress('design', link))).toEqual({ way: 'design', link })
  expect(writeAddress('predict')).toBe('#/predict')
})
