import { describe, expect, test } from 'vitest'
import type { Gearing, Machine } from '../../../sim/machine/machine.ts'
import { machineLayout } from '../../../sim/pose/layout.ts'
import { bootCleaner, classroomModel, cordWinder, demoMachines } from '../../support/machines.ts'

const withGearing = (machine: Machine, gearing: Partial<Gearing>): Machine => ({
  ...machine,
  gearing: { ...machine.gearing, ...gearing },
})

const extremes: readonly Machine[] = [bootCleaner, cordWinder, classroomModel].flatMap((machine) =>
  [8, 31, 60, 120].flatMap((wheelTeeth) =>
    [1, 3, 6].map((wormStarts) => withGearing(machine, { wheelTeeth, wormStarts })),
  ),
)

const all = [...demoMachines, ...extremes]
const named = all.map((machine) => {
  const { wormStarts, wheelTeeth } = machine.gearing
  return [`${machine.name}, ${wormStarts} starts, ${wheelTeeth} teeth`, machine] as const
})

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : []
}

describe.each(named)('layout of %s', (_, machine) => {
  const layout = machineLayout(machine)
  const { gears, shaft, output, tray, motor, fan } = layout

  test('is finite, with sizes above zero', () => {
    expect(numbersIn(layout).every(Number.isFinite)).toBe(true)
    for (const size of [
      shaft.radius,
      shaft.bearingRadius,
      output.shaftRadius,
      output.hubRadius,
      tray.thickness,
    ]) {
      expect(size).toBeGreaterThan(0)
    }
  })

  test('keeps the parts on the shaft in order and apart', () => {
    const half = shaft.bearingWidth / 2
    const ends = [
      shaft.front,
      shaft.collar + shaft.collarWidth / 2,
      shaft.collar - shaft.collarWidth / 2,
      shaft.frontBearing + half,
      shaft.frontBearing - half,
      gears.threadLength / 2,
      -gears.threadLength / 2,
      shaft.rearBearing + half,
      shaft.rearBearing - half,
    ]
    if (motor !== null) {
      ends.push(
        motor.commutatorFront,
        motor.commutatorBack,
        motor.armatureFront,
        motor.armatureBack,
        motor.back,
      )
    }
    if (fan !== null) ends.push(fan.z)
    for (let i = 1; i < ends.length; i++) expect(ends[i]).toBeLessThan(ends[i - 1]!)
  })

  test('lets the brushes pass each other and the wheels pass blocks, posts and tray', () => {
    const a = gears.centreDistance
    expect(output.brushRadius + output.hubRadius).toBeLessThan(2 * a)
    const toPost = Math.hypot(tray.postX - a, tray.postFront)
    expect(output.brushRadius).toBeLessThan(toPost)
    expect(tray.top).toBeLessThan(-gears.wheelWidth / 2)
    const besideCollar = Math.hypot(a - shaft.collarRadius, shaft.collar - shaft.collarWidth / 2)
    expect(besideCollar).toBeGreaterThan(gears.outsideRadiusWheel)
  })

  test('stands above the floor, inside its own case', () => {
    expect(output.shaftBottom).toBeGreaterThan(layout.floor)
    expect(layout.case.top).toBeGreaterThan(output.shaftTop)
    expect(tray.halfWidth).toBeGreaterThan(gears.centreDistance + gears.outsideRadiusWheel)
    if (motor !== null) expect(tray.top).toBeLessThan(-motor.radius)
  })
})

test('a machine without a motor has a crank, one with a motor has none', () => {
  for (const machine of demoMachines) {
    const layout = machineLayout(machine)
    expect(layout.crank === null).toBe(machine.motor !== null)
    expect(layout.motor === null).toBe(machine.motor === null)
  }
})
