import { describe, expect, test } from 'vitest'
import { wayApart } from '../../../sim/pose/apart.ts'
import { machineLayout } from '../../../sim/pose/layout.ts'
import { PART_NAMES, partsOf } from '../../../sim/pose/parts.ts'
import { bootCleaner, classroomModel, demoMachines } from '../../support/machines.ts'

describe('drawing apart', () => {
  test('begins with everything together', () => {
    for (const machine of demoMachines) {
      const layout = machineLayout(machine)
      for (const part of PART_NAMES) expect(Math.abs(wayApart(part, layout, 0))).toBe(0)
    }
  })

  test('takes every part that comes off one way only, further and further', () => {
    const layout = machineLayout(bootCleaner)
    for (const part of PART_NAMES) {
      let before = 0
      for (let apart = 0; apart <= 1.0001; apart += 0.02) {
        const way = Math.abs(wayApart(part, layout, Math.min(1, apart)))
        expect(way).toBeGreaterThanOrEqual(before)
        before = way
      }
    }
  })

  test('moves every part of a machine but rotor and tray', () => {
    for (const machine of demoMachines) {
      const layout = machineLayout(machine)
      for (const { part, apart } of partsOf(machine)) {
        const moves = wayApart(part, layout, 1) !== 0
        expect([part, moves]).toEqual([part, apart !== 'stays'])
      }
    }
  })

  test('takes the case off before the fan and the fan before the bearings', () => {
    const layout = machineLayout(bootCleaner)
    const begins = (part: (typeof PART_NAMES)[number]) => {
      for (let apart = 0; apart <= 1; apart += 0.01) if (wayApart(part, layout, apart) !== 0) return apart
      return Infinity
    }
    const order = (
      ['case', 'leftWheel', 'leftBrush', 'fan', 'motor', 'brushGear', 'frontBearing'] as const
    ).map(begins)
    expect([...order].sort((a, b) => a - b)).toEqual(order)
    expect(order.every(Number.isFinite)).toBe(true)
  })
})

describe('parts', () => {
  test('are named and explained once each', () => {
    for (const machine of demoMachines) {
      const parts = partsOf(machine)
      expect(new Set(parts.map(({ name }) => name)).size).toBe(parts.length)
      for (const { purpose } of parts) expect(purpose).toMatch(/^[A-Z].*[a-z]\.$/)
    }
  })

  test('a cranked machine has no motor, fan or carbon brushes', () => {
    const names = partsOf(classroomModel).map(({ part }) => part)
    expect(names).toContain('crank')
    for (const part of ['motor', 'fan', 'brushGear'] as const) expect(names).not.toContain(part)
  })
})
