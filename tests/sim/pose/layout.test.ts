import { describe, expect, test } from 'vitest'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import type { Gearing, Machine } from '../../../sim/machine/machine.ts'
import { advanceTurns, noTurns } from '../../../sim/drive/turns.ts'
import { rowAngle, rowOffset } from '../../../sim/gear/timing.ts'
import { outputTiming } from '../../../sim/machine/output-timing.ts'
import { machineLayout } from '../../../sim/pose/layout.ts'
import { leftWheelAngle, rightWheelAngle } from '../../../sim/pose/pose.ts'
import { bootCleaner, classroomModel, cordWinder, demoMachines } from '../../support/machines.ts'
import { near } from '../../support/near.ts'

/** Outputs grow with the distance of their axes, as they must to fit. */
function withGearing(machine: Machine, change: Partial<Gearing>): Machine {
  const gearing = { ...machine.gearing, ...change }
  const scale = pairProportions(gearing).centreDistance / pairProportions(machine.gearing).centreDistance
  const { hubDiameter, sweepDiameter } = machine.outputs
  const sizes = { hubDiameter: scale * hubDiameter, sweepDiameter: scale * sweepDiameter }
  return { ...machine, gearing, outputs: { ...machine.outputs, ...sizes } }
}

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

describe('rows of the outputs', () => {
  /** Difference of two angles that mean the same after each `whole`, nearest to 0 */
  const between = (one: number, other: number, whole: number): number =>
    one - other - whole * Math.round((one - other) / whole)

  test('begin at the key angle on the right, and half a pitch and the teeth further on the left', () => {
    const machine = { ...bootCleaner, outputs: { ...bootCleaner.outputs, keyAngle: 1.5, toothOffset: 3 } }
    const { output } = machineLayout(machine)
    near(output.rightFirstRow, (1.5 * Math.PI) / 180, 1e-12)
    // 1 start and 20 teeth: half a pitch of 18 degrees on the far side
    near(output.leftFirstRow, ((1.5 + 9 + 3 * 18) * Math.PI) / 180, 1e-12)
  })

  test.each(demoMachines.map((machine) => [machine.name, machine] as const))(
    'of the %s stand to each other as the timing says, at any turn',
    (_, machine) => {
      const { output, ...layout } = machineLayout(machine)
      const pair = outputTiming(machine)
      const offset = rowOffset(pair, machine.outputs.toothOffset)
      for (const turns of [0, 0.37, 5.5, -8.125]) {
        const place = noTurns()
        advanceTurns(place, turns)
        const right = output.rightFirstRow + rightWheelAngle({ output, ...layout }, place)
        const left = output.leftFirstRow + leftWheelAngle({ output, ...layout }, place)
        near(between(right - (Math.PI - left), offset, (2 * Math.PI) / output.tufts), 0, 1e-9)
        near(
          between(right, rowAngle(pair, rightWheelAngle({ output, ...layout }, place)), 2 * Math.PI),
          0,
          1e-12,
        )
      }
    },
  )
})
