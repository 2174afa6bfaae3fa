import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { steadyWave } from '../../sim/run/waveform-steady.ts'
import { csvText } from '../../web/chart/table.ts'
import { WavesPanel } from '../../web/drive/WavesPanel.tsx'
import { type LaneId, waveColumns } from '../../web/drive/waves-lanes.ts'
import type { Moment } from '../../web/drive/waves-moment.ts'
import { type Seen, seenOf, stretchOf } from '../../web/drive/waves-seen.ts'
import { SAMPLES, waveAt } from '../../web/drive/waves-work.ts'
import { WorkshopProvider, createWorkshop } from '../../web/frame/workshop.ts'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../support/machines.ts'
import { near, relativelyNear } from '../support/near.ts'

const smoothed: Machine = { ...bootCleaner, rectifier: { ...bootCleaner.rectifier!, capacitance: 2200 } }
const warmth = { winding: 20, magnet: 20 }

/** Steady running at a setting, with the speed held still in time as the panel shows it first. */
function held(machine: Machine, setting: number, part = 1): { readonly seen: Seen; readonly moment: Moment } {
  const drive = compileDrive(machine)
  const input = { ...firstInput(), setting }
  const speed = part * operatingPoint(drive, input)!.speed
  const moment: Moment = {
    machine,
    warmth,
    drive,
    input,
    kind: 'steady',
    speed,
    settled: part === 1,
    open: false,
  }
  const stretch = stretchOf(drive.circuits[setting]!, { periods: 2, of: 'mains' })
  return { seen: seenOf(moment, waveAt(drive, input, speed, stretch), null), moment }
}

const metersOf = ({ lanes, meters }: Seen, id: LaneId) => meters(lanes.find((lane) => lane.id === id)!)

const rendered = (machine: Machine): string =>
  renderToStaticMarkup(
    <WorkshopProvider value={createWorkshop(machine, 'light')}>
      <WavesPanel />
    </WorkshopProvider>,
  )

describe('meters on the lanes agree with the period means', () => {
  // Averaged and moment by moment; without ripple there is only the tolerance of the steps, of 1e-6 each.
  const SAMPLED = 1e-4
  // A step between two of 720 samples of a half period is taken as a slope: up to 2/3 of its square, twice.
  const steppedRms = (peak: number, rms: number) => (2 * (2 / 3) * peak ** 2) / 720 / (2 * rms)
  const steppedMean = (peak: number) => (2 * (1 / 2) * peak) / 720
  test.each([
    ['boot cleaner', bootCleaner, 4],
    ['boot cleaner, slow', bootCleaner, 0],
    ['boot cleaner with a capacitor', smoothed, 4],
    ['vent opener, chopped', ventOpener, 1],
    ['cord winder', cordWinder, 2],
  ] as const)('%s', (_, machine, setting) => {
    const { seen, moment } = held(machine, setting)
    const { reading } = operatingPoint(moment.drive, moment.input)!
    relativelyNear(metersOf(seen, 'motor-current').rms, reading.currentRms, SAMPLED)
    const { mean, rectified } = metersOf(seen, 'motor-current')
    relativelyNear(seen.circuit.rectifier === 'none' ? rectified : mean, reading.currentMean, SAMPLED)
    relativelyNear(metersOf(seen, 'supply-voltage').rms, reading.wallVoltage, SAMPLED)
    relativelyNear(metersOf(seen, 'torque').mean, reading.motorTorque, SAMPLED)
    const voltage = metersOf(seen, 'motor-voltage')
    if (machine === cordWinder) near(voltage.rms, reading.motorVoltage, steppedRms(voltage.peak, voltage.rms))
    else near(voltage.mean, reading.motorVoltage, steppedMean(voltage.peak))
  })

  test('current through the socket, with the core’s part', () => {
    const { seen, moment } = held(bootCleaner, 4)
    const { reading } = operatingPoint(moment.drive, moment.input)!
    relativelyNear(metersOf(seen, 'supply-current').rms, reading.wallCurrent, SAMPLED)
    near(metersOf(seen, 'supply-current').frequency, 50, 1e-9)
    near(metersOf(seen, 'motor-current').frequency, 100, 1e-9)
  })

  test('a chopper’s frequency', () => {
    near(metersOf(held(ventOpener, 1).seen, 'motor-voltage').frequency, 8000, 1e-6)
  })

  test('a speed on the way there is held still in time', () => {
    const { seen, moment } = held(bootCleaner, 4, 0.5)
    const speed = seen.wave.speed
    relativelyNear(speed.at(-1)!, moment.speed, 1e-6)
    expect(metersOf(seen, 'motor-current').mean).toBeGreaterThan(
      2 * metersOf(held(bootCleaner, 4).seen, 'motor-current').mean,
    )
  })
})

test('what is saved are the columns of the core, in full precision', () => {
  const drive = compileDrive(bootCleaner)
  const { wave } = steadyWave(drive, { ...firstInput(), setting: 2 }, 2, SAMPLES)!
  const rows = csvText(waveColumns(wave)).trim().split('\r\n')
  expect(rows).toHaveLength(SAMPLES + 1)
  const headings = rows[0]!.split(',')
  const column = (heading: string) =>
    rows.slice(1).map((row) => Number(row.split(',')[headings.indexOf(heading)]))
  expect(column('motor current [A]')).toEqual([...wave.motorCurrent])
  expect(column('line current [A]')).toEqual([...wave.lineCurrent])
  expect(column('time [s]')).toEqual([...wave.time])
})

describe('the panel', () => {
  test('shows socket and motor of a mains machine, with cursors and meters', () => {
    const page = rendered(bootCleaner)
    for (const words of ['Socket voltage, V', 'Socket current, A', 'Motor voltage, V', 'Motor current, A'])
      expect(page).toContain(words)
    expect(page).toContain('aria-label="Cursor A"')
    expect(page).toMatch(/rms 230 · mean 0 · 50\.0 Hz/)
    expect(page).toContain('1/t 100 Hz')
  })

  test('shows one current where socket and motor share it', () => {
    const page = rendered(cordWinder)
    expect(page).toContain('Motor and socket current, A')
    expect(page).not.toContain('Socket current, A')
  })

  test('shows a battery, and the capacitor where there is one', () => {
    expect(rendered(ventOpener)).toContain('Battery current, A')
    expect(rendered(smoothed)).toContain('Capacitor voltage, V')
  })

  test('says why a crank has no waves', () => {
    const page = rendered(classroomModel)
    expect(page).toContain('A hand turns this machine')
    expect(page).not.toContain('<svg')
  })
})
