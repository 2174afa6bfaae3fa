import { expect, test } from 'vitest'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { conjugateError } from '../../../sim/gear/conjugate-error.ts'
import { contactRatio } from '../../../sim/gear/contact-ratio.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { gearProblems } from '../../../sim/gear/gear-problems.ts'
import { wheelBody } from '../../../sim/shape/body.ts'
import { demoMachines } from '../../support/machines.ts'
import { IN_PLACE } from '../../../sim/gear/misplaced.ts'
import { blindTurns } from './contact-turns.ts'
import { oneToTwenty, pairs } from './pairs.ts'

const found = (change: Partial<GearNumbers>): string[] =>
  gearProblems({ ...oneToTwenty, ...change }).map(({ severity, path }) => `${severity} ${path}`)

const messages = (change: Partial<GearNumbers>): string =>
  gearProblems({ ...oneToTwenty, ...change })
    .map(({ message }) => message)
    .join('\n')

test('no demo machine has an error in its gearing', () => {
  for (const { gearing } of demoMachines) {
    expect(gearProblems(gearing).filter(({ severity }) => severity === 'error')).toEqual([])
  }
})

test('twenty teeth at 20 degrees get advice only: their flank in use is whole', () => {
  expect(found({})).toEqual(['note gearing.wheelTeeth', 'note gearing.wheelTeeth'])
  expect(messages({})).toMatch(/foot of the tooth is undercut below the flank in use.*at 20 teeth/)
  expect(found({ wheelTeeth: 24 })).toEqual([])
})

test('twelve teeth lose part of the flank in use, in the middle already', () => {
  expect(found({ wheelTeeth: 12 })).toContain('warning gearing.wheelTeeth')
  expect(gearProblems({ ...oneToTwenty, wheelTeeth: 12 })[0]?.message).toContain(
    'undercut on both sides over the whole face at 12 teeth',
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

test('undercut that begins beside the middle names the plane and the flank, which is the other one at the other side', () => {
  // at right hand the +z flank suffers at y < 0 and the -z flank at y > 0
  const wide = { wormStarts: 3, wheelTeeth: 19, wheelWidth: 14 }
  const told = messages(wide)
  const [, y] =
    /undercut from ([\d.]+) mm beside the middle on, at \+y on the flank cut by the −z side/.exec(told) ?? []
  expect(Number(y)).toBeGreaterThan(0)
  expect(messages({ ...wide, hand: 'left' })).toMatch(/at \+y on the flank cut by the \+z side/)
})

test('a full thread without clearance interferes, and a larger clearance cures it', () => {
  for (const clearance of [0, -0.1]) {
    expect(found({ wheelTeeth: 30, clearance })).toEqual([
      'error gearing.clearance',
      'error gearing.clearance',
    ])
  }
  expect(messages({ wheelTeeth: 30, clearance: -0.1 })).toMatch(/got −0.2 mm.*take a larger clearance/)
  expect(found({ wheelTeeth: 30, clearance: 0.01 })).toEqual([])
})

test('profile shift is limited whichever way it is given', () => {
  const shift = (profileShift: number) => found({ wheelTeeth: 40, centres: { kind: 'shift', profileShift } })
  const distance = (centreDistance: number) =>
    found({ wheelTeeth: 40, centres: { kind: 'distance', centreDistance } })
  expect(shift(1.01)).toEqual(['error gearing.centres.profileShift'])
  expect(shift(0.99)).not.toContain('error gearing.centres.profileShift')
  // standard distance 50 mm, module 2
  expect(distance(52.01)).toEqual(['error gearing.centres.centreDistance'])
  expect(distance(47.9)).toEqual(['error gearing.centres.centreDistance'])
  expect(distance(51.01)).toContain('warning gearing.centres.centreDistance')
  expect(distance(50.9)).toEqual([])
  const told = messages({ wheelTeeth: 40, centres: { kind: 'distance', centreDistance: 60 } })
  expect(told).toMatch(/from 48 to 52 mm .*got 60 mm, a shift of 5/)
})

test('backlash is from nothing to a quarter of the pitch, and a thread thinned to a point is told', () => {
  const quarter = (Math.PI * 2) / 4
  expect(found({ wheelTeeth: 30, backlash: -0.01 })).toEqual(['error gearing.backlash'])
  expect(found({ wheelTeeth: 30, backlash: quarter + 0.01 })).toEqual(['error gearing.backlash'])
  expect(found({ wheelTeeth: 30, backlash: 0.1 })).toEqual([])
  const thin = { wheelTeeth: 30, backlash: 1.55, addendum: 1.2 }
  expect(found(thin)).toContain('warning gearing.backlash')
  expect(found({ ...thin, backlash: 0.3 })).not.toContain('warning gearing.backlash')
  expect(messages({ ...thin, thinned: 'wheel' })).toMatch(/tips of the teeth.*less backlash/)
})

test('a bore beyond the root leaves no wheel, one beyond the rim is warned of at the size that is drawn', () => {
  expect(found({ wheelTeeth: 30, boreDiameter: 55 })).toEqual(['error gearing.boreDiameter'])
  expect(found({ wheelTeeth: 30, boreDiameter: 54 })).toEqual(['warning gearing.boreDiameter'])
  const pair = { ...oneToTwenty, wheelTeeth: 30, boreDiameter: 54 }
  const most = Number(/at most ([\d.]+) mm/.exec(gearProblems(pair)[0]!.message)![1])
  expect(Math.abs(2 * wheelBody(pair).boreRadius - most)).toBeLessThan(0.05)
  expect(found({ wheelTeeth: 30, boreDiameter: most - 0.1 })).toEqual([])
})

test('wheels of tall teeth on a very thin worm would touch each other', () => {
  const touching = { diameterQuotient: 4, addendum: 1.5, clearance: 0.2, wheelTeeth: 40 }
  expect(found(touching)).toEqual(['error gearing.diameterQuotient'])
  expect(messages(touching)).toMatch(/must keep the two wheels of 88 mm .*got axes 88 mm/)
  expect(found({ ...touching, diameterQuotient: 4.5 })).not.toContain('error gearing.diameterQuotient')
})

test('a disc too small for the thread is an error of ZK only', () => {
  const small = { wheelTeeth: 30, discDiameter: 13 }
  expect(found({ ...small, profile: 'ZK' })).toEqual(['error gearing.discDiameter'])
  expect(found({ ...small, profile: 'ZN' })).toEqual([])
  expect(found({ ...small, profile: 'ZK', discDiameter: 14 })).toEqual([])
})

test('too few teeth in mesh are told, with the exact contact ratio', () => {
  const stub = { addendum: 0.4, wheelTeeth: 30, wheelWidth: 6 }
  const ratio = contactRatio({ ...oneToTwenty, ...stub }).total
  expect(ratio).toBeLessThan(1.2)
  expect(messages(stub)).toContain(`got ${Number(ratio.toPrecision(3))}`)
  expect(messages({ ...stub, addendum: 0.3 })).toContain('the wheel turns in jerks')
  expect(messages({ ...stub, addendum: 1 })).not.toContain('teeth in mesh')
})

test('contact never leaves the thread, since the thread is as long as the wheel reaches', () => {
  for (const pair of pairs) {
    for (const wheelForm of ['throated', 'helical'] as const) {
      const { reach } = contactRatio({ ...pair, wheelForm })
      expect(reach).toBeLessThanOrEqual(pairProportions(pair).threadLength / 2)
    }
  }
})

test('a plain helical wheel wants a ZI worm; on others the unevenness is told', () => {
  const plain = { wheelForm: 'helical', wheelTeeth: 24 } as const
  expect(found({ ...plain, profile: 'ZI' })).toEqual([])
  for (const profile of ['ZA', 'ZN', 'ZK'] as const) {
    expect(found({ ...plain, profile })).toEqual(['warning gearing.profile'])
  }
})

test('unevenness of a plain wheel on another worm is that of a dense set of points, turned in blindly', () => {
  const plain = { ...oneToTwenty, wheelForm: 'helical' } as const
  for (const pair of [
    plain,
    { ...plain, wormStarts: 2, wheelTeeth: 70, diameterQuotient: 7.7 },
    { ...plain, profile: 'ZN', wormStarts: 4, wheelTeeth: 59, diameterQuotient: 10 },
  ] as const) {
    const { range } = blindTurns(pair, IN_PLACE, 1, 48, 32)
    // one figure is told
    expect(Math.abs((1000 * conjugateError(pair)) / range - 1)).toBeLessThan(0.3)
  }
  expect(conjugateError({ ...plain, profile: 'ZI' })).toBeLessThan(1e-5)
})

test('a plain helical wheel is told where the worm digs into its foot, and where its face is too narrow', () => {
  const few = { wheelForm: 'helical', profile: 'ZI', wheelTeeth: 12 } as const
  expect(messages(few)).toMatch(/digs into the foot at 12 teeth: take more teeth/)
  const steep = { wheelForm: 'helical', profile: 'ZI', wormStarts: 4, wheelTeeth: 41, wheelWidth: 2 } as const
  const needed = Number(/at least ([\d.]+) mm for the point/.exec(messages(steep))![1])
  expect(messages({ ...steep, wheelWidth: needed + 0.1 })).not.toContain('for the point of contact')
})

test('nothing throws and nothing is NaN over the corners of all fields, with every choice', () => {
  const ends: readonly (readonly [keyof GearNumbers, readonly number[]])[] = [
    ['wormStarts', [1, 8]],
    ['wheelTeeth', [8, 120]],
    ['axialModule', [0.3, 20]],
    ['diameterQuotient', [5, 25]],
    ['pressureAngle', [10, 30]],
    ['wheelWidth', [1, 200]],
    ['addendum', [0.3, 1.5]],
    ['clearance', [0.05, 0.5]],
    ['backlash', [0, 5]],
  ]
  const forms = ['throated', 'helical'] as const
  const profiles = ['ZA', 'ZN', 'ZI', 'ZK'] as const
  for (let corner = 0; corner < 2 ** ends.length; corner++) {
    const numbers = Object.fromEntries(ends.map(([name, pair], i) => [name, pair[(corner >> i) & 1]]))
    const choices = { wheelForm: forms[corner & 1]!, profile: profiles[(corner >> 2) & 3]! }
    for (const { message } of gearProblems({ ...oneToTwenty, ...numbers, ...choices })) {
      expect(message).not.toMatch(/NaN|Infinity|undefined/)
    }
  }
})
