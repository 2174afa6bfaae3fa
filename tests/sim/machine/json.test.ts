import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readJson } from '../../../sim/machine/json.ts'

const faultOf = (text: string): string => {
  const read = readJson(text)
  return 'fault' in read ? `${read.fault.line}:${read.fault.column} ${read.fault.message}` : 'read'
}

describe('faults of JSON are told by line, column and plain words', () => {
  test.each([
    ['{\n  "a": 1,\n}', /^3:1 there must be no comma before }/],
    ['[1, 2,]', /^1:7 there must be no comma before ]/],
    ['{"a": 1 "b": 2}', /^1:9 a comma or } is needed here, got '"'/],
    ["{'a': 1}", /^1:2 the name of a field in " is needed here/],
    ['{a: 1}', /^1:2 the name of a field in " is needed here, got 'a'/],
    ['{"a" 1}', /^1:6 a : is needed after the name/],
    ['{"a": NaN}', /^1:7 a value is needed.*got NaN/],
    ['{"a": -Infinity}', /^1:7 a number is written as/],
    ['{"a": undefined}', /got undefined/],
    ['{"a": True}', /got True/],
    ['[01]', /^1:2 a number is written as/],
    ['[.5]', /^1:2 a number is written as/],
    ['[5.]', /^1:2 a number is written as/],
    ['[+5]', /^1:2 a number is written as/],
    ['[0x10]', /^1:2 a number is written as/],
    ['["a\nb"]', /^1:4 a text must end with " on its own line/],
    ['["a', /^1:2 a text starts here and has no " at its end/],
    ['["a\\', /^1:2 a text starts here/],
    ['["\\x41"]', /^1:2 a text has a \\/],
    ['["\\u12"]', /^1:2 a text has a \\/],
    ['{"a": 1} // note', /^1:10 the text must end after the last bracket, got '\/'/],
    ['{"a": [1, 2}', /^1:12 a comma or ] is needed here, got '}'/],
    ['', /^1:1 a value is needed.*got the end of the text/],
    ['{"a": 1', /^1:8 a comma or } is needed here, got the end of the text/],
    ['😀', /^1:1 a value is needed.*got '😀'/],
    ['{"teeth": 20, "teeth": 30}', /^1:15 the field "teeth" is written twice/],
    ['{"__proto__": 1, "__proto__": 2}', /"__proto__" is written twice/],
    ['['.repeat(33), /^1:33 groups and lists must be at most 32 deep/],
  ])('%j', (text, fault) => {
    expect(faultOf(text)).toMatch(fault)
  })
})

test('a byte order mark, spaces and line ends around the value are passed over', () => {
  expect(readJson('\ufeff \r\n\t{"a":\n[ ]\n,"b" : { } }\n')).toEqual({ value: { a: [], b: {} } })
})

test('a field named __proto__ is an own field and changes no prototype', () => {
  const read = readJson('{"__proto__": {"polluted": true}}')
  const value = 'value' in read ? read.value : undefined
  expect(Object.getPrototypeOf(value)).toBe(Object.prototype)
  expect(Object.keys(value ?? {})).toEqual(['__proto__'])
  expect('polluted' in {}).toBe(false)
})

test('text nested a hundred thousand deep is refused without running out of stack', () => {
  expect(faultOf('['.repeat(100_000))).toMatch(/at most 32 deep/)
  expect(faultOf('{"a":'.repeat(30_000))).toMatch(/at most 32 deep/)
})

const SEED = 20_262

test(`2000 random values are read as JSON.parse reads them (seed ${SEED})`, () => {
  const law = fc.property(fc.json({ maxDepth: 8 }), fc.constantFrom(undefined, 1, '\t'), (json, indent) => {
    const text = JSON.stringify(JSON.parse(json), null, indent)
    expect(readJson(text)).toEqual({ value: JSON.parse(text) as unknown })
  })
  fc.assert(law, { seed: SEED, numRuns: 2000 })
})

/** Whether JSON.parse takes the text, and no field stands twice (what it takes and readJson does not). */
function takenByParse(text: string): boolean {
  try {
    return JSON.stringify(JSON.parse(text)).length > 0
  } catch {
    return false
  }
}

test(`5000 broken texts are refused exactly where JSON.parse refuses them (seed ${SEED})`, () => {
  const base = '{"a":[1,-2.5e+3,"x\\u0041\\n"],"b":{"c":null,"d":true},"e":""}'
  const characters = fc.constantFrom(...'{}[]",:\\0123456789.eE+-tfn \n\u0000é'.split(''))
  const place = fc.nat({ max: base.length })
  const law = fc.property(place, fc.nat({ max: 2 }), characters, (at, removed, inserted) => {
    const text = base.slice(0, at) + inserted + base.slice(at + removed)
    const read = readJson(text)
    const twice = 'fault' in read && read.fault.message.includes('twice')
    expect('value' in read || twice).toBe(takenByParse(text))
  })
  fc.assert(law, { seed: SEED, numRuns: 5000 })
})
