import { expect, test } from 'vitest'
import { leastClearance } from '../../../sim/gear/row-clearance.ts'
import { rowOffset } from '../../../sim/gear/timing.ts'
import { checkMachine } from '../../../sim/machine/check.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { outputTiming } from '../../../sim/machine/output-timing.ts'
import { outputClash } from '../../../sim/machine/timing-problems.ts'
import { bootCleaner, demoMachines } from '../../support/machines.ts'

const atTooth = (machine: Machine, toothOffset: number): Machine => ({
  ...machine,
  outputs: { ...machine.outputs, toothOffset },
})

test('the rows of every demonstration machine pass clear of each other', () => {
  for (const machine of demoMachines) expect(outputClash(machine)).toEqual([])
})

test('a tooth that clashes is a warning with the distance, the need and the nearest clear tooth', () => {
  const machine = atTooth(bootCleaner, 3)
  const [problem, ...others] = outputClash(machine)
  expect(others).toEqual([])
  expect([problem!.path, problem!.severity]).toEqual(['outputs.toothOffset', 'warning'])
  const pair = outputTiming(machine)
  const distance = leastClearance(pair.rows, rowOffset(pair, 3)).distance
  expect(problem!.message).toContain(`more than ${pair.need.toFixed(2)} mm`)
  expect(problem!.message).toContain(`got ${distance.toFixed(2)} mm at tooth 3`)
  const cure = Number(/at tooth (\d+) they keep/.exec(problem!.message)![1])
  expect(outputClash(atTooth(bootCleaner, cure))).toEqual([])
  expect(Math.abs(cure - 3)).toBe(1)
  expect(checkMachine(machine)).toContainEqual(problem)
})

test('the need is the thickness and what the play of both wheels brings the tips nearer', () => {
  // 0.08 mm of backlash at 20 mm, tips at 34 mm
  expect(outputTiming(bootCleaner).need).toBeCloseTo(3 + (34 * 0.08) / 20, 12)
})

test('rows that no tooth clears are told so', () => {
  const thick = { ...bootCleaner, outputs: { ...bootCleaner.outputs, tuftThickness: 14 } }
  expect(outputClash(thick)[0]!.message).toContain('no tooth clears them')
})

test('tips that strike the other hub are a warning, rows shorter than nothing an error', () => {
  const sweep = (sweepDiameter: number) =>
    outputClash({ ...bootCleaner, outputs: { ...bootCleaner.outputs, sweepDiameter } }).map(
      ({ path, severity, message }) => [path, severity, message],
    )
  // axes 60 mm apart, hub 12 mm
  expect(sweep(108)).toEqual([
    [
      'outputs.sweepDiameter',
      'warning',
      'must be less than 108.00 mm for the tips to pass the hub of the other output, got 108 mm',
    ],
  ])
  expect(sweep(107.9).every(([path]) => path !== 'outputs.sweepDiameter')).toBe(true)
  expect(sweep(12)).toEqual([
    ['outputs.sweepDiameter', 'error', "must be more than the hub's 12 mm, got 12 mm"],
  ])
})

test('a tooth beyond the last one is the same as the one that many less', () => {
  expect(outputClash(atTooth(bootCleaner, 21))).toEqual([])
  expect(outputClash(atTooth(bootCleaner, 23))).toHaveLength(1)
})

/** The middle of many runs [ms] */
function usualTime(run: () => void): number {
  const times = Array.from({ length: 41 }, () => {
    const before = performance.now()
    run()
    return performance.now() - before
  })
  return times.sort((one, other) => one - other)[20]!
}

test('a keystroke waits less than 3 ms for it, clear or not', () => {
  for (const machine of demoMachines)
    for (const tooth of [0, 1, 3])
      expect(usualTime(() => outputClash(atTooth(machine, tooth)))).toBeLessThan(3)
})

test('many teeth of which none clears do not make it wait longer', () => {
  const { gearing, outputs } = bootCleaner
  const crowded = {
    gearing: { ...gearing, wheelTeeth: 113 },
    outputs: { ...outputs, tufts: 7, hubDiameter: 40, sweepDiameter: 300, tuftThickness: 60 },
  }
  expect(outputClash(crowded)[0]!.message).toContain('no tooth clears them')
  expect(usualTime(() => outputClash(crowded))).toBeLessThan(3)
})
