import { expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { type Reading, newReading } from '../../sim/drive/reading.ts'
import { SPARK_GRADES } from '../../sim/heat/commutation.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { settingColumns } from '../../web/drive/BrushesSettings.tsx'
import { settingPoints } from '../../web/drive/brushes-settings.ts'
import { type BrushedMachine, brushFigures, isBrushed } from '../../web/drive/brushes-state.ts'
import {
  decidesText,
  gradeText,
  lifeText,
  lifeVerdict,
  placeText,
  signedCurrent,
  timeText,
} from '../../web/drive/brushes-words.ts'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../support/machines.ts'
import { near } from '../support/near.ts'

const radPerSecond = (rpm: number) => (2 * Math.PI * rpm) / 60

function brushed(machine: Machine): BrushedMachine {
  if (!isBrushed(machine)) throw new Error('the machine has brushes')
  return machine
}

const reading = (rpm: number, currentMean: number, currentRms: number): Reading => ({
  ...newReading(),
  wormSpeed: radPerSecond(rpm),
  currentMean,
  currentRms,
})

test('a machine with a crank has no brushes', () => {
  expect(isBrushed(classroomModel)).toBe(false)
  expect([bootCleaner, ventOpener, cordWinder].every(isBrushed)).toBe(true)
})

test('figures of the boot cleaner are those of a pocket calculator', () => {
  const figures = brushFigures(brushed(bootCleaner), reading(5051, 0.901, 1.421))
  near(figures.barsPerSecond, (5051 / 60) * 12, 1e-9)
  // v = pi 14 mm 84.18/s = 3.703 m/s, tc = 4 mm/v
  near(figures.commutationTime, 1.0803e-3, 1e-7)
  near(figures.armatureCurrent, 0.901, 1e-12)
  near(figures.densityPerCm2, 1.421 / 0.24, 1e-9)
  near(figures.worse, 1.421 / 0.24 / 10, 1e-9)
  expect(figures.decides).toBe('density')
})

test('at full speed the cord winder is decided by turning its coils over', () => {
  const figures = brushFigures(brushed(cordWinder), reading(11_343, 1.543, 1.997))
  expect(figures.decides).toBe('turning over')
  near(figures.armatureCurrent, 1.997, 1e-12)
  expect(figures.grade.grade).toBe('1 1/2')
  expect(decidesText(figures)).toMatch(/^The coils decide/)
})

test('standing still under power is told as such', () => {
  const figures = brushFigures(brushed(bootCleaner), reading(0, 8.184, 8.981))
  expect(figures.barsPerSecond).toBe(0)
  expect(figures.grade.grade).toBe('3')
  expect(decidesText(figures)).toMatch(/stands still under power/)
  expect(decidesText(brushFigures(brushed(bootCleaner), reading(0, 0, 0)))).toMatch(/No current/)
})

test('life is told with what is usual', () => {
  const figures = brushFigures(brushed(bootCleaner), reading(5051, 0.901, 1.421))
  expect(lifeVerdict(figures)).toBe('Within what is usual.')
  // 1.2 (3.703/4) (1 + 0.5 (1.421/1.5)^2) = 1.609 mm in 1000 h, of 7 mm
  expect(lifeText(figures.life)).toBe('4300 h')
  const still = brushFigures(brushed(bootCleaner), reading(0, 0, 0))
  expect(lifeText(still.life)).toBe('no wear at rest')
  expect(lifeVerdict(still)).toMatch(/Nothing slides/)
})

test('over the settings every load has a point for each, and the file says the same as the drive', () => {
  const machine = brushed(bootCleaner)
  const drive = compileDrive(machine)
  const points = [...settingPoints(machine, drive, 1)]
  const { loads } = machine.outputs
  expect(points).toHaveLength(drive.steps * loads.length)
  const columns = settingColumns(machine, points)
  expect(columns.every(({ values }) => values.length === drive.steps)).toBe(true)
  const direct = operatingPoint(drive, { ...firstInput(), setting: 3, leftLoad: 1, rightLoad: 1 })!
  const found = columns.find(
    ({ heading }) => heading === `current density over its limit, ${loads[1]!.name}`,
  )!
  near(found.values[3]!, brushFigures(machine, direct.reading).densityRatio, 1e-12)
  const densities = points.filter(({ load }) => load === 0).map(({ figures }) => figures!.densityRatio)
  expect(densities).toEqual([...densities].sort((a, b) => a - b))
})

test('a place is told from the nearer brush, before or past it by the sense of turning', () => {
  expect(placeText(-30, 1)).toBe('30° before the right brush')
  expect(placeText(-30, -1)).toBe('30° past the right brush')
  expect(placeText(12.4, 1)).toBe('12° past the right brush')
  expect(placeText(0.2, 1)).toBe('under the middle of the right brush')
  expect(placeText(170, 1)).toBe('10° before the left brush')
  expect(placeText(-170, 1)).toBe('10° past the left brush')
  expect(placeText(-180, 1)).toBe('under the middle of the left brush')
})

test('numbers are written as they are read', () => {
  expect(SPARK_GRADES.map(({ grade }) => gradeText(grade))).toEqual(['1', '1¼', '1½', '2', '3'])
  expect(timeText(1.08e-3)).toBe('1.08 ms')
  expect(timeText(3.83e-4)).toBe('383 µs')
  expect(timeText(Infinity)).toBe('none')
  expect(signedCurrent(0.45)).toBe('+0.450 A')
  expect(signedCurrent(-0.45)).toBe('−0.450 A')
})

test('the cord winder sparks most at its highest setting under load, and there its coils decide', () => {
  const machine = brushed(cordWinder)
  const points = [...settingPoints(machine, compileDrive(machine), 1)]
  const worst = points.reduce((a, b) => (b.figures!.worse > a.figures!.worse ? b : a))
  expect(worst.setting).toBe(machine.control.steps.length - 1)
  expect(worst.figures!.decides).toBe('turning over')
  expect(points[0]!.figures!.worse).toBeLessThan(worst.figures!.worse / 2)
})

test('under load a brush wears faster than without, although it slides more slowly', () => {
  const machine = brushed(bootCleaner)
  const points = [...settingPoints(machine, compileDrive(machine), 1)]
  for (const free of points.filter(({ load }) => load === 0)) {
    const loaded = points.find(({ load, setting }) => load === 1 && setting === free.setting)!
    expect(loaded.figures!.slidingSpeed).toBeLessThan(free.figures!.slidingSpeed)
    expect(loaded.figures!.life).toBeLessThan(free.figures!.life)
  }
})
