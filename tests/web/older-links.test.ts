/** Links and kept benches of earlier versions, written by the program of their time. */
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { fieldsOf, valueAt } from '../../sim/machine/fields.ts'
import { parseMachine } from '../../sim/machine/file.ts'
import { readAutosave } from '../../web/file/read-autosave.ts'
import { readLink } from '../../web/file/read-link.ts'
import { writeLink } from '../../web/file/write-link.ts'
import { bootCleaner as today, cordWinder } from '../support/machines.ts'

const PLAIN = 'R4jiICOs1sjA0sLc1NAMVIbAdAEA'
/** 31 teeth, ZI, 5 rows, 0.4 N m, the fourth setting, a quarter apart, after 20 turns and 17 ticks. */
const CHANGED = 'Er2ERyOs1sjA0sLc1NAMVIZAdOErMz2xlYjIRR7uQsAUV841RC4EQJUZRrJGSyUGekYgw1ACHlwEooa8eW0tAA'
/** The vent opener with a left hand worm. */
const VENT = 'UxwhHUNTi2mYoamFqYGhsZEJsBaBaMJbHtbWAgA'

/** From before capacitor, heat, brushes and protection: the boot cleaner as it opened. */
const PLAIN_2 = 'JlwSpgOrxdu4Mza2MDExsASGA0wPAA'
/** 31 teeth, 0.4 N m, diodes of 0.7 V, the fourth setting, the left wheel loaded, after 20 turns and 17 ticks. */
const CHANGED_2 = 'AEdvKwOrxdu4Mza2MDExsASGA0QPZtMEWCYhtV6wlKkoZR6WUgCW_5AyEKjOwpF6URIlauiCyznU4DWvrQUA'
/** The cord winder in Design, at its third setting. */
const WINDER_2 = '7iw4UQOrRTTuUI0GKTUyNzMwNDExAUUuRBN6EkVLZUa1tQA'

const file = new URL('../sim/machine/boot-cleaner-version-1.json', import.meta.url)
const bootCleaner = parseMachine(readFileSync(file, 'utf8')).machine!

test('a plain link shows the machine of that time, brought up as its file is', () => {
  const { state, problems } = readLink(PLAIN)
  expect(problems).toEqual([])
  expect(state!.machine).toStrictEqual(bootCleaner)
})

test('a link with changes keeps every one of them', () => {
  const { state, problems } = readLink(CHANGED)
  expect(problems).toEqual([])
  const { machine, bench, picture, moment } = state!
  expect(machine.gearing).toMatchObject({ profile: 'ZI', wheelTeeth: 31, wormStarts: 1 })
  expect(machine.outputs.tufts).toBe(5)
  expect(machine.outputs.loads[1]!.passive).toBe(0.4)
  expect(bench.setting).toBe(3)
  expect(picture.apart).toBe(0.25)
  expect(moment).toEqual({ turns: 20, ticks: 17, rest: 0 })
  expect(readLink(VENT).state!.machine.gearing.hand).toBe('left')
})

test('such a link is written anew in the version of today and reads back the same', () => {
  for (const link of [PLAIN, CHANGED, VENT, PLAIN_2, CHANGED_2, WINDER_2]) {
    const { state } = readLink(link)
    expect(readLink(writeLink(state!))).toStrictEqual({ state, problems: [] })
  }
})

test('a bench kept by this browser at that time opens without a word about damage', () => {
  const kept = new Map([['counterturn.bench', CHANGED]])
  const keeper = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  }
  expect(readAutosave(keeper)).toStrictEqual(readLink(CHANGED))
  expect(kept.size).toBe(1)
})

test('the machine of that time has a number in every field of today', () => {
  for (const { path, min, max } of fieldsOf(bootCleaner)) {
    const value = valueAt(bootCleaner, path)
    expect(value, path).toBeGreaterThanOrEqual(min)
    expect(value, path).toBeLessThanOrEqual(max)
  }
})

test('an unchanged demo machine of version 2 opens with all that is told of it today', () => {
  expect(readLink(PLAIN_2)).toMatchObject({ problems: [], state: { machine: today } })
  const { state, problems } = readLink(WINDER_2)
  expect(problems).toEqual([])
  expect(state).toMatchObject({ machine: cordWinder, way: 'design', bench: { setting: 2, winding: 20 } })
})

test('a changed machine of version 2 keeps its changes, and nothing is made up for what it did not tell', () => {
  const { state, problems } = readLink(CHANGED_2)
  expect(problems).toEqual([])
  expect(state!.machine).toMatchObject({
    gearing: { wheelTeeth: 31 },
    rectifier: { diodeDrop: 0.7, capacitance: 0 },
    thermal: null,
    brushes: null,
    protection: { kind: 'none' },
  })
  expect(state!.machine.outputs.loads[1]!.passive).toBe(0.4)
  expect(state!.bench).toMatchObject({ setting: 3, leftLoad: 1 })
})
