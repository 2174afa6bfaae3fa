import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { TICKS_PER_TURN } from '../../sim/drive/turns.ts'
import { checkValue } from '../../sim/machine/check.ts'
import { fieldsOf, withValue } from '../../sim/machine/fields.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { type LinkState, plainState } from '../../web/file/link-state.ts'
import { readLink } from '../../web/file/read-link.ts'
import { packText } from '../../web/file/pack-text.ts'
import { writeLink } from '../../web/file/write-link.ts'
import { PACES, benchFor } from '../../web/store/bench.ts'
import { WAYS } from '../../web/store/view.ts'
import { demoMachines } from '../support/machines.ts'

const SEED = 20_261
const isMachine = (machine: Machine) => checkValue(machine).machine !== null
const ifMachine = (changed: Machine, otherwise: Machine) => (isMachine(changed) ? changed : otherwise)

const part = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true })
const edit = fc.tuple(part, part)

const record = <T extends object>(parts: { [K in keyof T]: fc.Arbitrary<T[K]> }) =>
  fc.record(parts, { noNullPrototype: true })

/** A demo machine with any of its numbers set anywhere in its range, and another name. */
const machines: fc.Arbitrary<Machine> = fc
  .tuple(
    fc.constantFrom(...demoMachines),
    fc.array(edit, { maxLength: 24 }),
    fc.string({ unit: 'binary', minLength: 1, maxLength: 40 }),
    fc.constantFrom('left', 'right'),
    fc.integer({ min: 1, max: 12 }),
  )
  .map(([demo, edits, name, hand, loads]) => {
    const [load] = demo.outputs.loads
    const outputs = { ...demo.outputs, loads: Array.from({ length: loads }, () => load!) }
    const first = [
      (machine: Machine) => withValue(machine, 'name', name),
      (machine: Machine) => withValue(machine, 'gearing.hand', hand),
      (machine: Machine) => (loads > 6 ? machine : { ...machine, outputs }),
    ].reduce((machine, change) => ifMachine(change(machine), machine), demo)
    return edits.reduce((machine, [which, where]) => {
      const fields = fieldsOf(machine)
      const { path, min, max, whole } = fields[Math.floor(which * fields.length)]!
      const value = min + where * (max - min)
      return ifMachine(withValue(machine, path, whole ? Math.round(value) : value), machine)
    }, first)
  })

const coordinate = fc.double({ min: -2000, max: 2000, noNaN: true })
const point = fc.tuple(coordinate, coordinate, coordinate)

const name = fc.string({ minLength: 1, maxLength: 20 })
const item = record({
  family: name,
  index: fc.nat(99),
  level: fc.constantFrom(1 as const, 2 as const, 3 as const),
})
const sets = fc
  .record({
    bank: fc.integer({ min: 1, max: 9 }),
    seed: name,
    items: fc.array(item, { minLength: 1, maxLength: 12 }),
  })
  .chain(({ items, ...rest }) => fc.nat(items.length - 1).map((at) => ({ ...rest, items, at })))

const states: fc.Arbitrary<LinkState> = record<LinkState>({
  machine: machines,
  way: fc.constantFrom(...WAYS.map((each) => each.way)),
  bench: record({
    setting: fc.nat(11),
    pluggedIn: fc.boolean(),
    sense: fc.constantFrom(1 as const, -1 as const),
    leftLoad: fc.nat(11),
    rightLoad: fc.nat(11),
    jammed: fc.constantFrom('none' as const, 'left' as const, 'right' as const),
    winding: fc.double({ min: -40, max: 300, noNaN: true }),
    magnet: fc.double({ min: -40, max: 300, noNaN: true }),
    pace: fc.constantFrom(...PACES),
  }),
  picture: record({
    caseState: fc.constantFrom('closed' as const, 'clear' as const, 'off' as const),
    motorCut: fc.boolean(),
    apart: fc.double({ min: 0, max: 1, noNaN: true }),
    view: fc.constantFrom('gears' as const, 'top' as const, 'worm' as const, 'whole' as const),
    camera: fc.option(
      record({ position: point, target: point, field: fc.double({ min: 1, max: 170, noNaN: true }) }),
    ),
    withoutLosses: fc.boolean(),
    large: fc.boolean(),
  }),
  moment: record({
    turns: fc.maxSafeInteger(),
    ticks: fc.nat(TICKS_PER_TURN - 1),
    rest: part,
  }),
  asked: fc.option(sets),
  lesson: fc.option(record({ id: name, beat: name })),
}).map((state) => ({ ...state, bench: benchFor(state.machine, state.bench) }))

/** Long names and every number set can be more than a link may hold; the autosave holds them all the same. */
const MOST = 100_000

describe('a link over random states', () => {
  test(`is read back to the last bit, in 500 states with seed ${SEED}`, () => {
    fc.assert(
      fc.property(states, (state) => {
        const read = readLink(writeLink(state), MOST)
        expect(read.problems).toEqual([])
        expect(read.state).toStrictEqual(state)
      }),
      { seed: SEED, numRuns: 500 },
    )
  })

  test(`is the same text when it is written again, in 200 states with seed ${SEED}`, () => {
    fc.assert(
      fc.property(states, (state) => {
        const link = writeLink(state)
        expect(writeLink(readLink(link, MOST).state!)).toBe(link)
      }),
      { seed: SEED, numRuns: 200 },
    )
  })
})

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'
const samples = [
  ...demoMachines.map((machine) => plainState(machine)),
  ...fc.sample(states, { seed: SEED, numRuns: 40 }),
]
const goodLinks = samples.map(writeLink)
const goodLink = fc.constantFrom(...goodLinks)
const place = fc.tuple(goodLink, part).map(([link, at]) => ({ link, at: Math.floor(at * link.length) }))

const brokenLinks = fc.oneof(
  fc.uint8Array({ maxLength: 3000 }).map((bytes) => Buffer.from(bytes).toString('base64url')),
  fc.string({ unit: 'binary', maxLength: 300 }),
  place.map(({ link, at }) => link.slice(0, at)),
  place.map(({ link, at }) => link.slice(at + 1)),
  fc.tuple(place, fc.integer({ min: 1, max: 63 })).map(([{ link, at }, by]) => {
    const changed = ALPHABET[(ALPHABET.indexOf(link[at]!) + by) % 64]!
    return link.slice(0, at) + changed + link.slice(at + 1)
  }),
  fc
    .tuple(place, fc.string({ unit: 'binary', minLength: 1, maxLength: 1 }))
    .map(([{ link, at }, more]) => link.slice(0, at) + more + link.slice(at)),
)

test(`10,000 broken links with seed ${SEED} all give problems and never an exception`, () => {
  fc.assert(
    fc.property(brokenLinks, (link) => {
      const { state, problems } = readLink(link, MOST)
      expect(state).toBeNull()
      expect(problems.length).toBeGreaterThan(0)
      for (const { message } of problems) expect(message).not.toMatch(/NaN|undefined/)
    }),
    { seed: SEED, numRuns: 10_000 },
  )
})

const paths = fc.oneof(
  fc.constantFrom('machine', 'machine.gearing', 'machine.control', 'machine.control.steps', 'machine.motor'),
  fc.constantFrom('machine.gearing.wheelTeeth', 'machine.outputs.loads.0', 'machine.outputs.loads.length'),
  fc.constantFrom('bench', 'bench.setting', 'bench.pace', 'picture', 'picture.camera', 'picture.view', 'way'),
  fc.constantFrom('moment', 'moment.turns', 'moment.ticks', 'moment.rest', 'moment.hours', ''),
  fc.constantFrom(
    '__proto__',
    '__proto__.polluted',
    'machine.__proto__.polluted',
    'constructor.prototype.polluted',
  ),
  fc.string({ unit: 'binary', maxLength: 20 }),
)
const junk = record({
  v: fc.constantFrom(2, 2, 2, 1, 1, 0, 3, '2'),
  base: fc.constantFrom('boot-cleaner', 'vent-opener', 'classroom-model', '__proto__', 7),
  of: fc.integer(),
  set: fc.dictionary(paths, fc.jsonValue(), { maxKeys: 4 }),
})

test(`5000 links with junk inside and seed ${SEED} never give an exception, and what comes out is a machine`, () => {
  fc.assert(
    fc.property(
      fc.oneof(
        junk.map((value) => JSON.stringify(value)),
        fc.json(),
      ),
      (text) => {
        const { state, problems } = readLink(packText(text), MOST)
        expect(problems.length).toBeGreaterThan(0)
        if (state) {
          expect(isMachine(state.machine)).toBe(true)
          expect(state.bench).toEqual(benchFor(state.machine, state.bench))
          expect(readLink(writeLink(state), MOST)).toStrictEqual({ state, problems: [] })
        }
        expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
      },
    ),
    { seed: SEED, numRuns: 5000 },
  )
})
