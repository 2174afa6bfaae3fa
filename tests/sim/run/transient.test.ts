import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { operatingPoint } from '../../../sim/drive/operating-point.ts'
import { wormTurnsValue } from '../../../sim/drive/turns.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { fuseTime } from '../../../sim/heat/fuse.ts'
import { record, transient } from '../../../sim/run/transient.ts'
import type { Wave } from '../../../sim/run/waveform-record.ts'
import {
  advanceRun,
  advanceTo,
  changeInput,
  createRun,
  speedOf,
  storedEnergy,
} from '../../../sim/run/waveform.ts'
import { CAPACITOR, MOTOR, SPEED } from '../../../sim/electric/wave-network.ts'
import { ARC, INPUT, SPENT, STORED } from '../../../sim/run/waveform-state.ts'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../../support/machines.ts'
import { smoothed } from '../../support/other-machines.ts'
import { between, near, relativelyNear } from '../../support/near.ts'

const at = (setting: number) => ({ ...firstInput(), setting })

/** The boot cleaner as the design's prototype started it: the leakage of the transformer left out. */
const withoutLeakage: Machine = {
  ...bootCleaner,
  control: {
    kind: 'taps',
    steps:
      bootCleaner.control.kind === 'taps'
        ? bootCleaner.control.steps.map((tap) => ({ ...tap, inductance: 0 }))
        : [],
  },
}

const peakOf = (wave: Wave): number => wave.motorCurrent.reduce((most, i) => Math.max(most, Math.abs(i)), 0)

/** First time at which the speed of a wave reaches a part of what is given [s] */
function reached(wave: Wave, speed: number): number {
  const n = wave.speed.findIndex((each) => each >= speed)
  return n < 0 ? Infinity : wave.time[n]!
}

test('the start of the boot cleaner has the peak and the speeds of its design, leakage left out', () => {
  const { wave } = transient(compileDrive(withoutLeakage), at(4), { duration: 0.1, samples: 10_001 })!
  near(peakOf(wave), 12.4, 0.05)
  near(wave.speed[2000]!, 162.2, 0.05)
  near(wave.speed[10_000]!, 424, 0.05)
})

test('leakage takes the edge off the start', () => {
  const { wave } = transient(compileDrive(bootCleaner), at(4), { duration: 0.1, samples: 10_001 })!
  between(peakOf(wave), 12, 12.3)
  between(wave.speed[10_000]!, 420, 424)
})

test('the cord winder starts with the peak and in the time of its design', () => {
  const drive = compileDrive(cordWinder)
  const { wave } = transient(drive, at(4), { duration: 0.5, samples: 5001 })!
  near(peakOf(wave), 10.7, 0.05)
  const steady = operatingPoint(drive, at(4))!.speed
  near(reached(wave, 0.9 * steady), 0.23, 0.01)
})

test('the run-up to nine tenths takes as long as cycle means say, within a half cycle of the mains', () => {
  const motor = { ...bootCleaner.motor!, emfConstant: 0.042 }
  const drive = compileDrive({ ...bootCleaner, motor })
  const steady = operatingPoint(drive, at(4))!.speed
  const { wave } = transient(drive, at(4), { duration: 0.3, samples: 30_001 })!
  const time = reached(wave, 0.9 * steady)
  near(time, 0.1564, 1e-3)
  near(time, 0.1626, 0.01)
})

test('one jam torque explains both how long the boot cleaner takes to stand and how far it turns', () => {
  const run = createRun(compileDrive(bootCleaner), at(4), { speed: 529.75 })
  advanceRun(run, 0.2)
  const from = wormTurnsValue(run.turns)
  changeInput(run, { jammed: 'left' })
  let time = 0
  while (run.y[SPEED] !== 0 && time < 0.2) {
    advanceRun(run, 1e-4)
    time += 1e-4
  }
  near(time, 0.041, 5e-4)
  near(wormTurnsValue(run.turns) - from, 1.5, 0.05)
  advanceRun(run, 0.5)
  expect(run.y[SPEED]).toBe(0)
  expect(run.events.chatter).toBe(0)
})

test('pulled out with a charged capacitor, all energy ends in losses but what the brushes hold back', () => {
  const drive = compileDrive({
    ...withoutLeakage,
    rectifier: { ...bootCleaner.rectifier!, capacitance: 2200, bleedResistance: 1e9 },
  })
  const run = createRun(drive, at(4), { speed: 562, capacitorVoltage: 26 })
  advanceRun(run, 1)
  near(run.y[SPEED]!, 562, 0.5)
  near(run.y[CAPACITOR]!, 26, 0.05)
  const stored = storedEnergy(run)
  near(stored, 5.912, 0.02)
  const before = SPENT.reduce((sum, n) => sum + run.y[n]!, 0)
  const drawn = run.y[INPUT]!
  changeInput(run, { connected: false })
  advanceRun(run, 0.3)
  near(run.y[CAPACITOR]!, 14.6, 0.05)
  advanceRun(run, 0.3)
  near(run.y[CAPACITOR]!, 6.9, 0.05)
  advanceRun(run, 0.3)
  expect(run.y[SPEED]).toBe(0)
  advanceRun(run, 0.1)
  near(run.y[CAPACITOR]!, 1.59, 5e-3)
  const spent = SPENT.reduce((sum, n) => sum + run.y[n]!, 0) - before
  near(spent + storedEnergy(run), stored + run.y[INPUT]! - drawn, 1e-8 * stored)
  near(storedEnergy(run), 0.003, 5e-4)
})

test('a bleed resistor empties the capacitor of a machine at rest with its own time constant', () => {
  const drive = compileDrive({
    ...bootCleaner,
    rectifier: { ...bootCleaner.rectifier!, capacitance: 1000, bleedResistance: 1 },
  })
  const run = createRun(drive, { ...at(4), connected: false }, { capacitorVoltage: 1.5 })
  advanceRun(run, 2)
  relativelyNear(run.y[CAPACITOR]!, 1.5 * Math.exp(-2), 1e-7)
})

test.each([
  ['boot cleaner', bootCleaner],
  ['vent opener', ventOpener],
  ['cord winder', cordWinder],
])('the jam of the %s holds even the crests of its torque, at every setting', (_, machine) => {
  const drive = compileDrive(machine)
  for (const setting of machine.control.steps.keys()) {
    const run = createRun(drive, { ...at(setting), jammed: 'right' })
    advanceRun(run, 0.1)
    expect(wormTurnsValue(run.turns)).toBe(0)
    expect(operatingPoint(drive, run.input)!.locked).toBe(true)
  }
})

test('a jammed cord winder blows its fuse when the law of its current says so', () => {
  const drive = compileDrive(cordWinder)
  const { melting } = drive
  const run = createRun(drive, { ...at(4), jammed: 'left' })
  advanceRun(run, 0.2)
  const { currentRms } = operatingPoint(drive, { ...at(4), jammed: 'left' })!.reading
  const expected = fuseTime(currentRms, Math.sqrt(melting!.square), melting!.time)
  while (!run.isOpen && run.y[0]! < 2 * expected) advanceRun(run, 0.1)
  near(run.y[0]!, expected, 0.15)
  advanceRun(run, 0.1)
  expect(run.y[MOTOR]).toBe(0)
})

test('the limit of the vent opener holds its start', () => {
  const { wave, run } = transient(compileDrive(ventOpener), at(3), { duration: 0.05, samples: 50_001 })!
  between(peakOf(wave), 5.9, 6 + 1e-9)
  expect(run.events.chatter).toBe(0)
})

test.each([
  ['boot cleaner', bootCleaner],
  ['smoothed boot cleaner', smoothed],
])('taps changed at any moment, every joule of the %s is told, the arcs among them', (_, machine) => {
  const run = createRun(compileDrive(machine), at(4), { tolerance: 1e-9 })
  for (let n = 0; n < 20; n++) {
    advanceRun(run, 0.0113)
    const arc = run.y[ARC]!
    changeInput(run, { setting: n % 2 === 0 ? 0 : 4 })
    expect(run.y[ARC]).toBeGreaterThanOrEqual(arc)
  }
  const spent = SPENT.reduce((sum, n) => sum + run.y[n]!, 0)
  near(spent + run.y[STORED]!, run.y[INPUT]!, 1e-11 * run.y[INPUT]!)
  near(storedEnergy(run), run.y[STORED]!, 1e-6 * run.y[INPUT]!)
  expect(run.y[ARC]).toBeGreaterThan(0)
  expect(run.events.chatter).toBe(0)
})

test.each([0, 1, 3])(
  'poles changed on the run: no current jumps, every joule is told, setting %d',
  (setting) => {
    const drive = compileDrive(ventOpener)
    const run = createRun(drive, at(setting), { tolerance: 1e-9 })
    advanceRun(run, 0.3)
    const speed = speedOf(run)
    expect(run.y[MOTOR]).toBeGreaterThan(0.5)
    changeInput(run, { sense: -1 })
    expect(run.y[MOTOR]).toBe(0)
    expect(speedOf(run)).toBe(speed)
    // The motor brakes itself through the diode, whatever the limit says, and then runs up the other way.
    advanceRun(run, 1e-3)
    expect(run.y[MOTOR]).toBeGreaterThan(0)
    advanceRun(run, 1)
    const back = { ...at(setting), sense: -1 as const }
    relativelyNear(speedOf(run), operatingPoint(drive, back)!.speed, 1e-3)
    const spent = SPENT.reduce((sum, n) => sum + run.y[n]!, 0)
    near(spent + run.y[STORED]!, run.y[INPUT]!, 1e-11 * run.y[INPUT]!)
    near(storedEnergy(run), run.y[STORED]!, 1e-6 * run.y[INPUT]!)
    expect(run.events.chatter).toBe(0)
  },
)

test('changes come at their times: a load put on, another step, the plug pulled', () => {
  const drive = compileDrive(bootCleaner)
  const changes = [
    { time: 0.6, change: { leftLoad: 1 } },
    { time: 1.2, change: { setting: 2 } },
    { time: 1.8, change: { connected: false } },
  ]
  const { wave, run } = transient(drive, at(4), { duration: 4, samples: 4001, changes })!
  const alone = record(createRun(drive, at(4)), { duration: 0.6, samples: 601 })
  for (let n = 0; n <= 600; n++) near(wave.speed[n]!, alone.speed[n]!, 1e-6)
  near(wave.speed[1190]!, operatingPoint(drive, { ...at(4), leftLoad: 1 })!.speed, 8)
  near(wave.speed[1790]!, operatingPoint(drive, { ...at(2), leftLoad: 1 })!.speed, 8)
  expect(wave.speed[4000]).toBe(0)
  expect(wave.motorCurrent[4000]).toBe(0)
  expect(run.events.chatter).toBe(0)
  for (let n = 1; n < wave.samples; n++) expect(wave.turned[n]).toBeGreaterThanOrEqual(wave.turned[n - 1]!)
})

test('a drive without a motor has no transient, and asking for a run of it is a mistake', () => {
  const drive = compileDrive(classroomModel)
  expect(transient(drive, firstInput(), { duration: 1, samples: 2 })).toBeNull()
  expect(() => createRun(drive, firstInput())).toThrow('no waveforms')
})

test('a run can be led to a moment as well as by a stretch', () => {
  const run = createRun(compileDrive(bootCleaner), at(4))
  advanceTo(run, 0.01)
  advanceRun(run, 0.01)
  near(run.y[0]!, 0.02, 1e-15)
})
