import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Message, readMessage } from '../../web/channel/message.ts'
import { momentOf, placeOf, snapshotOf } from '../../web/channel/snapshot.ts'
import { openStage } from '../support/channel-pages.ts'

const FROM = 'a'.repeat(32)
const TO = 'b'.repeat(32)

function oneOfEachKind(): readonly Message[] {
  const { workshop, end } = openStage()
  end.stop()
  const place = placeOf(workshop)
  const moment = momentOf(workshop.frame)
  const snapshot = snapshotOf(workshop, { from: FROM, stamp: 3, checks: false, sound: 'untried' })
  const bodies = {
    stage: { from: FROM, since: 1_777_887_000_000, leads: true, takes: false },
    lesson: { from: FROM, run: 'run', builtIn: true, text: '{}' },
    machine: { from: FROM, stamp: 3, text: '{}' },
    snapshot,
    away: { from: FROM, closed: true },
    presenter: { from: TO, asks: true },
    command: { from: TO, to: FROM, command: 'next', value: 0 },
    resume: { from: TO, to: FROM, place, moment },
  } as const
  return Object.entries(bodies).map(([kind, body], seq) => ({ v: 1, seq, kind, body }) as Message)
}

const MESSAGES = oneOfEachKind()

/** Every place in a message: ['body', 'moment', 'turns'] */
function placesIn(value: unknown, path: readonly string[] = []): readonly (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [path]
  const inner = Object.entries(value).flatMap(([key, part]) => placesIn(part, [...path, key]))
  return path.length === 0 ? inner : [path, ...inner]
}

function changed(message: Message, path: readonly string[], change: (holder: object, key: string) => void) {
  const copy = structuredClone(message)
  const holder = path.slice(0, -1).reduce<object>((at, key) => Reflect.get(at, key) as object, copy)
  change(holder, path.at(-1)!)
  return copy
}

test.each(MESSAGES)('a message of kind $kind reads back as it was sent', (message) => {
  expect(readMessage(message)).toEqual(message)
  expect(readMessage(JSON.parse(JSON.stringify(message)))).toEqual(message)
})

test.each(MESSAGES)(
  'a message of kind $kind is ignored where any of it is missing or of another kind',
  (message) => {
    // What somebody names freely may be left out one by one: seen topics and how far questions have come.
    const fixed = placesIn(message).filter((path) => !['seen', 'phases'].includes(path.at(-2) ?? ''))
    expect(fixed.length).toBeGreaterThan(4)
    for (const path of fixed) {
      expect([path, readMessage(changed(message, path, Reflect.deleteProperty))]).toEqual([path, null])
      for (const wrong of [
        undefined,
        {},
        [[]],
        () => 1,
        Number.NaN,
        Number.POSITIVE_INFINITY,
        -1e300,
        '\u0000'.repeat(1e6),
      ]) {
        const set = (holder: object, key: string) => Reflect.set(holder, key, wrong)
        const read = readMessage(changed(message, path, (holder, key) => void set(holder, key)))
        const told = path.join('.')
        // A speed may be any number.
        if (wrong === -1e300 && /speed|acceleration|Voltage|fuse/.test(told)) continue
        if (told.endsWith('phases') && typeof wrong === 'object' && !Array.isArray(wrong)) continue
        expect([told, typeof wrong, read]).toEqual([told, typeof wrong, null])
      }
    }
  },
)

test('what is not asked for is left out, and no prototype is reached', () => {
  const next = MESSAGES.find(({ kind }) => kind === 'command')!
  const more = JSON.parse(
    `{"__proto__":{"polluted":1},"extra":1,${JSON.stringify({ ...next, body: { ...next.body, more: 2 } }).slice(1)}`,
  ) as unknown
  expect(readMessage(more)).toEqual(next)
  expect(Reflect.get({}, 'polluted')).toBeUndefined()
  const inherited: unknown = Object.create(next)
  expect(readMessage(inherited)).toBeNull()
})

test('whatever comes is a message or nothing, and never an exception', () => {
  fc.assert(
    fc.property(fc.anything({ withDate: true, withMap: true, withNullPrototype: true }), (value) => {
      expect(readMessage(value)).toBeNull()
    }),
    { numRuns: 2000 },
  )
})

test('a message whose parts are replaced by anything is a clean message or nothing', () => {
  const places = MESSAGES.flatMap((message) => placesIn(message).map((path) => ({ message, path })))
  fc.assert(
    fc.property(fc.constantFrom(...places), fc.anything(), ({ message, path }, value) => {
      const read = readMessage(changed(message, path, (holder, key) => void Reflect.set(holder, key, value)))
      if (read) expect(readMessage(read)).toEqual(read)
    }),
    { numRuns: 3000 },
  )
})
