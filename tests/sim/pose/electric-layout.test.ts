import { describe, expect, test } from 'vitest'
import type { Machine } from '../../../sim/machine/machine.ts'
import { type Stand, standsIn } from '../../../sim/pose/electric-layout.ts'
import { type Layout, machineLayout } from '../../../sim/pose/layout.ts'
import { partsOf } from '../../../sim/pose/parts.ts'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../../support/machines.ts'

const smoothed: Machine = {
  ...bootCleaner,
  rectifier: { diodeDrop: 0.8, capacitance: 2200, bleedResistance: 10 },
}
const chopped: Machine = { ...smoothed, control: ventOpener.control }

/** With other gears; outputs are left as they are, since they do not stand on the tray. */
const geared = (machine: Machine, wormStarts: number, wheelTeeth: number): Machine => ({
  ...machine,
  gearing: { ...machine.gearing, wormStarts, wheelTeeth },
})

const machines = [bootCleaner, ventOpener, cordWinder, smoothed, chopped].flatMap((machine) =>
  [8, 20, 60, 120].flatMap((teeth) => [1, 4].map((starts) => geared(machine, starts, teeth))),
)

const overlap = (a: readonly [number, number], b: readonly [number, number]): number =>
  Math.min(a[1], b[1]) - Math.max(a[0], b[0])
const across = ({ x, width }: Stand) => [x - width / 2, x + width / 2] as const
const along = ({ z, length }: Stand) => [z - length / 2, z + length / 2] as const

function electricOf(machine: Machine): { layout: Layout; stands: readonly Stand[] } {
  const layout = machineLayout(machine)
  return { layout, stands: standsIn(layout.electric).map(({ stand }) => stand) }
}

describe('electrical parts', () => {
  test('stand inside the case, beside motor, fan and brush springs, and not in each other', () => {
    for (const machine of machines) {
      const { layout, stands } = electricOf(machine)
      const { tray, motor, fan } = layout
      const beside = Math.max(motor!.radius, fan?.radius ?? 0)
      stands.forEach((stand, at) => {
        const [left, right] = across(stand)
        expect(stand.width).toBeGreaterThan(0)
        expect(stand.height).toBeGreaterThan(0)
        expect(Math.min(Math.abs(left), Math.abs(right))).toBeGreaterThan(beside)
        expect(Math.max(Math.abs(left), Math.abs(right))).toBeLessThan(tray.halfWidth)
        expect(along(stand)[0]).toBeGreaterThan(tray.back)
        expect(layout.case.bottom + stand.height).toBeLessThan(layout.case.top)
        for (const other of stands.slice(at + 1)) {
          const both = [overlap(across(stand), across(other)), overlap(along(stand), along(other))]
          expect(Math.min(...both)).toBeLessThanOrEqual(0)
        }
      })
    }
  })

  test('stay under the wheels where these pass over them', () => {
    for (const machine of machines) {
      const { layout, stands } = electricOf(machine)
      const { gears, wheel } = layout
      for (const stand of stands) {
        const inner = across(stand).map((x) => Math.abs(x) - gears.centreDistance)
        const nearest = inner[0]! * inner[1]! <= 0 ? 0 : Math.min(...inner.map(Math.abs))
        const front = along(stand)[1]
        const clear = Math.hypot(nearest, Math.min(0, front)) > gears.outsideRadiusWheel
        const under = layout.case.bottom + stand.height < -wheel.faceWidth / 2
        expect(clear || under).toBe(true)
      }
    }
  })

  test('are wired one to the next, from the plug to both brushes', () => {
    const { electric } = machineLayout(chopped)
    expect(electric!.wires.map(({ to }) => to)).toEqual([
      'transformer',
      'rectifier',
      'capacitor',
      'setting',
      'brushes',
      'brushes',
    ])
    expect(machineLayout(smoothed).electric!.wires.map(({ to }) => to)).toEqual([
      'transformer',
      'setting',
      'rectifier',
      'capacitor',
      'brushes',
      'brushes',
    ])
    expect(machineLayout(ventOpener).electric!.plug).toBeNull()
    expect(machineLayout(classroomModel).electric).toBeNull()
  })

  test('have all the parts in the list that they have on the tray', () => {
    for (const machine of [bootCleaner, ventOpener, cordWinder, smoothed]) {
      const listed = partsOf(machine).map(({ part }) => part)
      for (const { part } of standsIn(machineLayout(machine).electric)) expect(listed).toContain(part)
    }
  })

  test('leave the leads outside the sweep of the outputs', () => {
    for (const machine of machines) {
      const { electric, gears, output } = machineLayout(machine)
      for (const { points } of electric!.wires)
        for (const [x, y, z] of points) {
          if (y > output.brush + output.brushHeight / 2) continue
          const fromAxis = Math.hypot(Math.abs(x) - gears.centreDistance, z)
          expect(fromAxis).toBeGreaterThan(output.brushRadius)
        }
    }
  })
})
