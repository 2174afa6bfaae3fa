import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkShape, checkValue } from '../../sim/machine/check.ts'
import { parseMachine, printMachine } from '../../sim/machine/file.ts'
import { ownValue } from '../../sim/machine/path.ts'
import { hasErrors } from '../../sim/machine/problem.ts'
import { demo, expectHonest, SEED } from './honest.ts'

/** Every place in a value down to the depth of a machine, as a list of keys; the whole value is the first. */
function places(value: unknown, depth = 0): string[][] {
  if (typeof value !== 'object' || value === null || depth === 5) return [[]]
  const inside = Object.entries(value)
    .slice(0, 40)
    .flatMap(([key, part]) => places(part, depth + 1).map((keys) => [key, ...keys]))
  return [[], ...inside]
}

const put = (holder: object, key: string, value: unknown): void => {
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true })
}

/** The value with `change` done at one place: it gets a copy of the holder, and the key in it. */
function changedAt(
  value: unknown,
  keys: readonly string[],
  change: (holder: object, key: string) => void,
): unknown {
  const [key, ...rest] = keys
  if (key === undefined || typeof value !== 'object' || value === null) return value
  const copy: object = Array.isArray(value) ? [...(value as unknown[])] : { ...value }
  if (rest.length === 0) change(copy, key)
  else put(copy, key, changedAt(ownValue(value, key), rest, change))
  return copy
}

function nested(depth: number): unknown {
  let value: unknown = 1
  for (let i = 0; i < depth; i++) value = i % 2 === 0 ? [value] : { inner: value }
  return value
}

const junk = fc.oneof(
  fc.constantFrom<unknown>(
    Number.NaN,
    Infinity,
    -Infinity,
    -0,
    0,
    -1,
    0.5,
    1e308,
    5e-324,
    2 ** 53,
    null,
    undefined,
  ),
  fc.constantFrom<unknown>('', '20', 'NaN', '🦷', true, false, [], {}, [[]], 10n, Symbol('s'), () => 1),
  fc.constantFrom<unknown>({ kind: 'mains' }, { kind: 'crank' }, { kind: 7 }, { kind: '__proto__' }),
  fc.nat({ max: 5000 }).map(nested),
  fc.nat({ max: 5000 }).map((length) => 'x'.repeat(length)),
  fc.nat({ max: 500 }).map((length) => Array.from({ length }, () => ({ duty: 50 }))),
  fc.double(),
  fc.anything({
    withBigInt: true,
    withDate: true,
    withMap: true,
    withNullPrototype: true,
    withSparseArray: true,
  }),
)

const strangeName = fc.oneof(
  fc.constantFrom('__proto__', 'constructor', 'toString', 'kind', 'steps', 'a.b', '[0]', '', 'wormstarts'),
  fc.string({ maxLength: 20 }),
)

/** A demo machine with one to four places replaced, taken out, or given a field that is not known. */
const brokenMachine = fc
  .tuple(
    demo,
    fc.array(fc.tuple(fc.nat(), fc.constantFrom('replace', 'remove', 'add'), junk, strangeName), {
      minLength: 1,
      maxLength: 4,
    }),
  )
  .map(([machine, changes]) =>
    changes.reduce<unknown>((value, [pick, act, part, name]) => {
      const all = places(value)
      const keys = all[pick % all.length] ?? []
      if (act === 'replace')
        return keys.length === 0 ? part : changedAt(value, keys, (h, k) => put(h, k, part))
      if (act === 'remove') return changedAt(value, keys, (h, k) => Reflect.deleteProperty(h, k))
      return changedAt(value, [...keys, name], (h, k) => put(h, k, part))
    }, machine),
  )

describe('10 000 broken descriptions give a list of problems, never an exception', () => {
  test(`4000 demo machines with parts replaced, removed and added (seed ${SEED})`, () => {
    let accepted = 0
    const law = fc.property(brokenMachine, (value) => {
      const { machine, problems } = checkValue(value)
      expectHonest(value, machine, problems)
      if (machine) accepted++
    })
    fc.assert(law, { seed: SEED, numRuns: 4000 })
    // the mutations must really break most of them, and leave some
    expect(accepted).toBeGreaterThan(100)
    expect(accepted).toBeLessThan(2000)
  })

  test(`2000 values that have nothing of a machine (seed ${SEED})`, () => {
    const law = fc.property(junk, (value) => {
      const { machine, problems } = checkShape(value)
      expect(machine).toBeNull()
      expect(hasErrors(problems)).toBe(true)
      expectHonest(value, machine, problems)
    })
    fc.assert(law, { seed: SEED, numRuns: 2000 })
  })

  test(`3000 texts of demo machines with letters changed, cut and repeated (seed ${SEED})`, () => {
    const edit = fc.record({
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      removed: fc.oneof(fc.nat({ max: 3 }), fc.nat({ max: 400 })),
      inserted: fc.oneof(
        fc.constantFrom(
          '',
          '{',
          '}',
          '[',
          ']',
          '"',
          ',',
          ':',
          '-',
          '.',
          'e',
          '9',
          'NaN',
          '1e999',
          '\n',
          '\u0000',
          '\ud800',
        ),
        fc.string({ maxLength: 8 }),
      ),
    })
    const law = fc.property(demo, fc.array(edit, { minLength: 1, maxLength: 3 }), (machine, edits) => {
      const text = edits.reduce((old, { at, removed, inserted }) => {
        const start = Math.floor(at * old.length)
        return old.slice(0, start) + inserted + old.slice(start + removed)
      }, printMachine(machine))
      const read = parseMachine(text)
      expect(read.machine === null).toBe(hasErrors(read.problems))
      for (const { message } of read.problems) expect(message).toMatch(/\S/)
      if (read.machine) expect(parseMachine(printMachine(read.machine)).machine).toEqual(read.machine)
    })
    fc.assert(law, { seed: SEED, numRuns: 3000 })
  })

  test(`1000 texts of junk, huge and nested (seed ${SEED})`, () => {
    const text = fc.oneof(
      fc.string({ maxLength: 300, unit: 'binary' }),
      fc.json({ maxDepth: 5 }),
      fc.nat({ max: 210_000 }).map((length) => '['.repeat(length)),
      fc.nat({ max: 40_000 }).map((length) => '{"a":'.repeat(length)),
      fc.nat({ max: 210_000 }).map((length) => `"${'\\'.repeat(length)}`),
      fc.nat({ max: 210_000 }).map((length) => '9'.repeat(length)),
      fc.nat({ max: 20_000 }).map((length) => `{${Array.from({ length }, (_, i) => `"k${i}":0`).join(',')}}`),
    )
    const law = fc.property(text, (junkText) => {
      const { machine, problems } = parseMachine(junkText)
      expect(machine).toBeNull()
      expect(hasErrors(problems)).toBe(true)
      expect(problems.length).toBeLessThan(100)
    })
    fc.assert(law, { seed: SEED, numRuns: 1000 })
  })
})
