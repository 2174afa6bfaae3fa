/**
 * Printed ends of a chopped current, read off the waveform of a drive whose shaft is too heavy to change its speed. The
 * figures of Bimbhra come from an open companion data set of the book (inputs and computed result); the printed pages
 * were not seen.
 */
import { describe, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { transient } from '../../sim/run/transient.ts'
import { directCurrentMachine } from '../support/direct-current.ts'
import { near } from '../support/near.ts'

const HEAVY = 1e9 // [kg m2]

interface Chopped {
  readonly resistance: number
  /** [mH] */
  readonly inductance: number
  /** [ms] */
  readonly period: number
  readonly duty: number
  /** [V] */
  readonly emf: number
}

/** Least and largest current of the last period of sixty, told by samples at each twentieth of a period. */
function ends({ resistance, inductance, period, duty, emf }: Chopped): { low: number; high: number } {
  const machine = directCurrentMachine({ voltage: 220, resistance, constant: 1, inertia: HEAVY, duty })
  const { control, motor } = machine
  if (control.kind !== 'chopper' || !motor)
    throw new Error('a direct-current machine has a chopper and a motor')
  const drive = compileDrive({
    ...machine,
    protection: { kind: 'none' },
    control: { ...control, frequency: 1 / period },
    motor: { ...motor, inductance },
  })
  const [periods, parts] = [60, 20]
  const duration = (periods * period) / 1000
  const options = { duration, samples: periods * parts + 1, speed: emf, tolerance: 1e-10 }
  const current = transient(drive, firstInput(), options)!.wave.motorCurrent.subarray(-parts - 1)
  return { low: Math.min(...current), high: Math.max(...current) }
}

describe('ends of the current of a chopper', () => {
  test('feeding R, L and an emf: P. S. Bimbhra, Power Electronics, Example 7.11', () => {
    const { low, high } = ends({ resistance: 1, inductance: 5, period: 2, duty: 0.3, emf: 24 })
    near(high, 51.46, 0.005)
    near(low, 33.03, 0.005)
  })
  test('feeding R and L at half duty: P. S. Bimbhra, Power Electronics, Example 7.15', () => {
    const { low, high } = ends({ resistance: 10, inductance: 15, period: 0.8, duty: 0.5, emf: 0 })
    near(high, 12.458, 0.0006)
    near(low, 9.54, 0.005)
    near(high - low, 2.92, 0.005)
  })
})
