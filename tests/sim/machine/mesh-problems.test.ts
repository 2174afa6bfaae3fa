import { describe, expect, test } from 'vitest'
import { checkMachine } from '../../../sim/machine/check.ts'
import { withValue } from '../../../sim/machine/fields.ts'
import { bootCleaner, cordWinder, ventOpener } from '../../support/machines.ts'
import { at } from './told-at.ts'

describe('the physics of the mesh', () => {
  const locking = (friction: number): (string | undefined)[] =>
    at(checkMachine(withValue(cordWinder, 'gearing.friction', friction)), 'gearing.friction')
      .filter((told) => told.startsWith('note'))
      .map((told) => told.split(':')[1])

  test('self-locking is a note just from cos an tan g up', () => {
    // 3 starts, q = 10, an = 20 deg
    const limit = Math.cos(Math.PI / 9) * 0.3
    expect(locking(limit * 1.001)).toEqual([' makes the pair self-locking'])
    expect(locking(limit * 0.999)).toEqual([' makes the pair nearly self-locking'])
    expect(locking(limit * 0.5)).toEqual([])
  })

  test('a wheel as wide as the worm is thick cannot be cut', () => {
    // boot cleaner: da1 = m (q + 2) = 2 x 12 = 24 mm
    const width = (wheelWidth: number): string[] =>
      at(checkMachine(withValue(bootCleaner, 'gearing.wheelWidth', wheelWidth)), 'gearing.wheelWidth')
    expect(width(24)).toEqual(['error: must be below 24 mm, the outside diameter of the worm, got 24 mm'])
    expect(width(23.9).filter((told) => told.startsWith('error'))).toEqual([])
  })

  test('a plain helical wheel may be wider than the worm is thick', () => {
    const plain = withValue(withValue(bootCleaner, 'gearing.wheelForm', 'helical'), 'gearing.wheelWidth', 30)
    expect(at(checkMachine(plain), 'gearing.wheelWidth')).toEqual([])
  })

  test('a wheel put in by as many teeth as it has, or more, is back at a place that has a smaller number', () => {
    const offset = (toothOffset: number): string[] =>
      at(
        checkMachine(withValue(bootCleaner, 'outputs.toothOffset', toothOffset)),
        'outputs.toothOffset',
      ).filter((told) => told.includes('number of teeth'))
    expect(offset(19)).toEqual([])
    expect(offset(20)).toEqual([
      'warning: should be below 20, the number of teeth, got 20: take 0, which is the same place',
    ])
    expect(offset(43)[0]).toContain('take 3,')
  })

  test('warns of teeth with a reason, and then not once more that the number is unusual', () => {
    const thick = checkMachine(withValue(bootCleaner, 'gearing.diameterQuotient', 6.5))
    expect(at(thick, 'gearing.diameterQuotient')).toHaveLength(1)
    expect(at(thick, 'gearing.diameterQuotient')[0]).toMatch(/^warning: .*7 to 25, got 6.5: /)
  })

  test('leaves a warning of an unusual number beside a note', () => {
    const rough = checkMachine(withValue(bootCleaner, 'gearing.friction', 0.4))
    expect(at(rough, 'gearing.friction').map((told) => told.split(':')[0])).toEqual(['warning', 'note'])
  })

  test('is told also while another part is being put right', () => {
    const broken = withValue(ventOpener, 'motor.resistance', -1)
    expect(checkMachine(broken).map(({ path }) => path)).toEqual(['motor.resistance', 'gearing.friction'])
  })

  test('wheels too heavy for the rotor behind a self-locking pair have no definite motion', () => {
    // vent opener: etaB = -1.035 with 36 teeth and one start, so the limit is 1.035 x 2 Jw/36^2
    const limit = (1.035 * 2 * 6000) / 36 ** 2
    const heavy = (inertia: number) =>
      at(
        checkMachine(
          withValue(withValue(ventOpener, 'outputs.wheelInertia', 6000), 'rotor.inertia', inertia),
        ),
        'rotor.inertia',
      )
    expect(heavy(limit * 1.001)).toEqual([])
    expect(heavy(limit * 0.999)).toHaveLength(1)
    expect(heavy(limit * 0.999)[0]).toMatch(/^error: must be above 9.58 kg cm2 .*, got 9.57/)
  })
})
