import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import type { DriveInput } from '../../../sim/drive/input.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { operatingPoint } from '../../../sim/drive/operating-point.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { RPM } from '../../support/direct-current.ts'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../../support/machines.ts'
import { near } from '../../support/near.ts'

const settled = (machine: Machine, input: Partial<DriveInput>) =>
  operatingPoint(compileDrive(machine), { ...firstInput(), ...input })!

/**
 * Steady running of the demonstration machines as a second, separately written solution gave it (adaptive
 * integration of the same circuits to their periodic state). Tolerance: 0.1 %, or half the last printed
 * figure where that is coarser. Columns: worm and wheel speed [r/min], mean and r.m.s. motor current [A],
 * motor torque [N m], power from the secondary or the battery [W], outputs [W], efficiency from there [%].
 */
type Row = readonly [string, Machine, Partial<DriveInput>, readonly number[]]
const both = { leftLoad: 1, rightLoad: 1 }
const rows: readonly Row[] = [
  [
    'boot cleaner, free, step 1',
    bootCleaner,
    {},
    [2231, 111.6, 0.543, 0.862, 0.0234, 8.38, 0.76, 0.76, 18.1],
  ],
  [
    'boot cleaner, free, step 2',
    bootCleaner,
    { setting: 1 },
    [2968, 148.4, 0.628, 1, 0.0271, 12.16, 1.19, 1.19, 19.6],
  ],
  [
    'boot cleaner, free, step 3',
    bootCleaner,
    { setting: 2 },
    [3685, 184.2, 0.716, 1.14, 0.0309, 16.68, 1.7, 1.7, 20.3],
  ],
  [
    'boot cleaner, free, step 4',
    bootCleaner,
    { setting: 3 },
    [4379, 219, 0.807, 1.281, 0.0349, 21.97, 2.27, 2.27, 20.6],
  ],
  [
    'boot cleaner, free, step 5',
    bootCleaner,
    { setting: 4 },
    [5051, 252.5, 0.901, 1.421, 0.0389, 28.01, 2.89, 2.89, 20.6],
  ],
  [
    'boot cleaner, both pressed, step 1',
    bootCleaner,
    both,
    [1292, 64.6, 1.907, 2.515, 0.0824, 27.2, 2.5, 2.5, 18.4],
  ],
  [
    'boot cleaner, both pressed, step 5',
    bootCleaner,
    { ...both, setting: 4 },
    [3763, 188.1, 2.19, 3.023, 0.0946, 64.85, 8.06, 8.06, 24.9],
  ],
  [
    'boot cleaner, left pressed, step 1',
    bootCleaner,
    { leftLoad: 1 },
    [1714, 85.7, 1.219, 1.719, 0.0526, 18, 3.38, 0.51, 21.6],
  ],
  [
    'boot cleaner, left pressed, step 5',
    bootCleaner,
    { leftLoad: 1, setting: 4 },
    [4364, 218.2, 1.538, 2.24, 0.0664, 46.56, 9.56, 2.25, 25.4],
  ],
  ['vent opener, opening, step 1', ventOpener, {}, [185, 5.1, 2.07, 2.071, 0.0724, 10.27, 0.21, 0.21, 4]],
  [
    'vent opener, opening, step 2',
    ventOpener,
    { setting: 1 },
    [857, 23.8, 2.103, 2.105, 0.0736, 15.66, 0.96, 0.96, 12.3],
  ],
  [
    'vent opener, opening, step 3',
    ventOpener,
    { setting: 2 },
    [1526, 42.4, 2.145, 2.146, 0.0751, 21.29, 1.73, 1.73, 16.2],
  ],
  [
    'vent opener, opening, step 4',
    ventOpener,
    { setting: 3 },
    [2223, 61.7, 2.198, 2.198, 0.0769, 27.26, 2.54, 2.54, 18.6],
  ],
  ['vent opener, stiff, step 1', ventOpener, both, [0, 0, 2.543, 2.544, 0.089, 12.62, 0, 0, 0]],
  [
    'vent opener, stiff, step 4',
    ventOpener,
    { ...both, setting: 3 },
    [1746, 48.5, 3.378, 3.378, 0.1182, 41.89, 3.25, 3.25, 15.5],
  ],
  [
    'vent opener, closing, step 1',
    ventOpener,
    { sense: -1 },
    [754, 20.9, 0.614, 0.618, 0.0215, 3.05, -0.69, -0.69, 0],
  ],
  [
    'vent opener, closing, step 4',
    ventOpener,
    { sense: -1, setting: 3 },
    [2832, 78.7, 0.689, 0.689, 0.0241, 8.55, -2.5, -2.5, 0],
  ],
  [
    'cord winder, thin cords, step 1',
    cordWinder,
    {},
    [4907, 474.9, 0.701, 1.138, 0.0939, 73.29, 13.61, 13.61, 37.1],
  ],
  [
    'cord winder, thin cords, step 2',
    cordWinder,
    { setting: 1 },
    [7272, 703.7, 0.931, 1.422, 0.1371, 142.93, 31.06, 31.06, 43.5],
  ],
  [
    'cord winder, thin cords, step 3',
    cordWinder,
    { setting: 2 },
    [9049, 875.7, 1.157, 1.669, 0.1804, 223.57, 52.32, 52.32, 46.8],
  ],
  [
    'cord winder, thin cords, step 4',
    cordWinder,
    { setting: 3 },
    [10386, 1005.1, 1.364, 1.862, 0.219, 303.46, 74.09, 74.09, 48.8],
  ],
  [
    'cord winder, thin cords, step 5',
    cordWinder,
    { setting: 4 },
    [11343, 1097.7, 1.543, 1.997, 0.2499, 371.78, 93.19, 93.19, 50.1],
  ],
  [
    'cord winder, tight cords, step 1',
    cordWinder,
    both,
    [1631, 157.8, 1.069, 1.654, 0.1723, 80.87, 10.14, 10.14, 25.1],
  ],
  [
    'cord winder, tight cords, step 5',
    cordWinder,
    { ...both, setting: 4 },
    [9839, 952.1, 1.802, 2.316, 0.3138, 423.11, 109.38, 109.38, 51.7],
  ],
  [
    'cord winder, left cord tight, step 5',
    cordWinder,
    { leftLoad: 1, setting: 4 },
    [10571, 1023, 1.668, 2.152, 0.2804, 396.94, 125.75, 77.54, 51.2],
  ],
  ['classroom model', classroomModel, {}, [60, 4.44, 0, 0, 0.0239, 0.15, 0.023, 0.023, 31.3]],
]
/** Half the last printed figure of each column. */
const halves = [0.5, 0.05, 0.0005, 0.0005, 0.00005, 0.005, 0.005, 0.005, 0.05]

test.each(rows)('%s settles where a second solution does', (name, machine, input, expected) => {
  const { reading } = settled(machine, input)
  const outputs = reading.outputLeft + reading.outputRight
  const values = [
    Math.abs(reading.wormSpeed) / RPM,
    Math.abs(reading.rightSpeed) / RPM,
    reading.currentMean,
    reading.currentRms,
    reading.motorTorque,
    reading.inputPower,
    reading.outputLeft,
    reading.outputRight,
    outputs > 0 ? (100 * outputs) / reading.inputPower : 0,
  ]
  values.forEach((value, i) => near(value, expected[i]!, Math.max(halves[i]!, 1e-3 * Math.abs(expected[i]!))))
  expect(Math.abs(reading.residual), name).toBeLessThan(1e-11 * reading.inputPower)
})
