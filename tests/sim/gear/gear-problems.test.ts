import { expect, test } from 'vitest'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { gearProblems } from '../../../sim/gear/gear-problems.ts'
import { demoMachines } from '../../support/machines.ts'
import { oneToTwenty } from './pairs.ts'

const found = (change: Partial<GearNumbers>): string[] =>
  gearProblems({ ...oneToTwenty, ...change }).map(({ severity, path }) => `${severity} ${path}`)

test('no demo machine has an error in its gearing', () => {
  for (const { gearing } of demoMachines) {
    expect(gearProblems(gearing).filter(({ severity }) => severity === 'error')).toEqual([])
  }
})

test('twenty teeth at 20 degrees get advice only: their flank in use is whole', () => {
  expect(found({})).toEqual(['note gearing.wheelTeeth'])
  expect(found({ wheelTeeth: 24 })).toEqual([])
})

test('twelve teeth lose part of the flank in use, in the middle already', () => {
  expect(found({ wheelTeeth: 12 })).toContain('warning gearing.wheelTeeth')
  expect(gearProblems({ ...oneToTwenty, wheelTeeth: 12 })[0]?.message).toContain(
    'undercut over the whole face',
  )
})

test('lead angle beyond the handbook limit is a warning at the starts', () => {
  expect(found({ wormStarts: 4, wheelTeeth: 41, diameterQuotient: 8 })).toEqual([
    'warning gearing.wormStarts',
  ])
  expect(found({ wormStarts: 4, wheelTeeth: 41 })).toEqual([])
})

test('diameter quotients outside 7 to 25 are warned of, and one without a shaft is an error', () => {
  expect(found({ diameterQuotient: 6, wheelTeeth: 30 })).toEqual(['warning gearing.diameterQuotient'])
  expect(found({ diameterQuotient: 26, wheelTeeth: 30 })).toEqual(['warning gearing.diameterQuotient'])
  expect(found({ diameterQuotient: 2 })).toEqual(['error gearing.diameterQuotient'])
})

test('an involute flank that ends above the wheel tips is told at the profile', () => {
  expect(found({ profile: 'ZI', wormStarts: 6, wheelTeeth: 40, diameterQuotient: 8 })).toContain(
    'warning gearing.profile',
  )
})

test('thread that comes to a point and wheel tips that do are both told', () => {
  const list = found({ wormStarts: 8, diameterQuotient: 5, pressureAngle: 30 })
  expect(list).toContain('warning gearing.pressureAngle')
  expect(list).toContain('warning gearing.wheelTeeth')
})

test('a wheel wider than its teeth reach is told the width that works, and that width is then free of it', () => {
  expect(found({ wheelTeeth: 30, wheelWidth: 60 })).toEqual(['warning gearing.wheelWidth'])
  const [problem] = gearProblems({ ...oneToTwenty, wheelTeeth: 30, wheelWidth: 60 })
  const width = Number(/at most ([\d.]+) mm/.exec(problem!.message)![1])
  expect(found({ wheelTeeth: 30, wheelWidth: width * 0.99 })).not.toContain('warning gearing.wheelWidth')
})

test('a wheel far wider than the worm is told the same width as one a little too wide', () => {
  const told = (wheelWidth: number) =>
    /at most [\d.]+ mm/.exec(
      gearProblems({ ...oneToTwenty, wheelTeeth: 30, wheelWidth }).at(-1)?.message ?? '',
    )?.[0]
  expect(told(24)).toMatch(/mm/)
  for (const wheelWidth of [60, 200, 2000]) expect(told(wheelWidth)).toBe(told(24))
})

test('numbers that are none are errors at their fields, all at once', () => {
  expect(found({ wormStarts: 1.5, wheelTeeth: Number.NaN, axialModule: -2, pressureAngle: 90 })).toEqual([
    'error gearing.wormStarts',
    'error gearing.wheelTeeth',
    'error gearing.axialModule',
    'error gearing.pressureAngle',
  ])
})
