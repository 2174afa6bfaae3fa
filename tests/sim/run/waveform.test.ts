import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import type { Machine } from '../../../sim/machine/machine.ts'
import { advanceRun, createRun, storedEnergy, speedOf } from '../../../sim/run/waveform.ts'
import type { WaveOptions } from '../../../sim/run/waveform.ts'
import { ANGLE, INPUT, SPENT, STORED } from '../../../sim/run/waveform-state.ts'
import { bootCleaner, cordWinder, ventOpener } from '../../support/machines.ts'
import { between, near, relativelyNear } from '../../support/near.ts'
import { seriesStartByOdex, startByOdex } from '../../support/start-by-odex.ts'
import { advance } from '../../../sim/numeric/event-steps.ts'

const START = 0.1

function started(machine: Machine, setting: number, seconds: number, options: WaveOptions = {}) {
  const run = createRun(compileDrive(machine), { ...firstInput(), setting }, options)
  advance(run.events, seconds)
  return run
}

/** The boot cleaner's fifth step, light, from its description by hand. */
const byOdex = (sourceInductance: number, until: number) => {
  const drive = compileDrive(bootCleaner)
  const circuit = drive.circuits[4]!
  const { winding, source } = circuit
  const u = drive.ratio
  const load = drive.loads[0]!
  const wheel = (w: number) => load.passive + drive.bearingTorque + (load.linear * w) / u
  const share = 1 / drive.forwardEfficiency / u
  return startByOdex(
    {
      emfPeak: source.emf,
      angularFrequency: source.angularFrequency,
      sourceResistance: source.resistance,
      sourceInductance,
      motorResistance: winding.resistance,
      motorInductance: winding.inductance,
      diodeDrops: circuit.diodeDrops,
      brushDrop: winding.brushDrop,
      emfConstant: winding.emfConstant,
      inertia: drive.rotorInertia + (2 * share * drive.wheelInertia) / u,
      drag: (w) =>
        drive.frictionTorque + drive.viscousTorque * w + drive.fanTorque * w * w + 2 * share * wheel(w),
    },
    until,
  )
}

test('the start of the boot cleaner is that of an independent integrator', () => {
  const oracle = byOdex(compileDrive(bootCleaner).circuits[4]!.source.inductance, START)
  const errors = [1e-6, 1e-8, 1e-10].map((tolerance) => {
    const { y } = started(bootCleaner, 4, START, { tolerance })
    return Math.max(Math.abs(y[4]! / oracle.speed - 1), Math.abs(y[ANGLE]! / oracle.angle - 1))
  })
  expect(errors[0]).toBeLessThan(5e-7)
  expect(errors[1]).toBeLessThan(1e-8)
  expect(errors[2]).toBeLessThan(1e-10)
})

test('the start of the cord winder is that of an independent integrator, saturation and gaps in its current included', () => {
  const drive = compileDrive(cordWinder)
  const { winding, source, triac } = drive.circuits[4]!
  if (winding.kind !== 'universal') throw new Error('the cord winder has a series motor')
  const load = drive.loads[0]!
  const u = drive.ratio
  const share = 1 / drive.forwardEfficiency / u
  const wheel = (w: number) => load.passive + drive.bearingTorque + load.quadratic * (w / u) ** 2
  const oracle = seriesStartByOdex(
    {
      emfPeak: source.emf,
      angularFrequency: source.angularFrequency,
      resistance: source.resistance + winding.resistance,
      constantInductance: winding.inductance,
      fieldInductance: winding.fieldInductance,
      emfConstant: winding.emfConstant,
      saturationCurrent: winding.saturationCurrent,
      drops: triac!.drop + winding.brushDrop,
      firingAngle: triac!.firingAngle,
      inertia: drive.rotorInertia + (2 * share * drive.wheelInertia) / u,
      drag: (w) =>
        drive.frictionTorque + drive.viscousTorque * w + drive.fanTorque * w * w + 2 * share * wheel(w),
    },
    10,
  )
  const { y } = started(cordWinder, 4, 0.1 + triac!.firingAngle / source.angularFrequency, {
    tolerance: 1e-10,
  })
  relativelyNear(y[4]!, oracle.speed, 1e-8)
  relativelyNear(y[ANGLE]!, oracle.angle, 1e-8)
})

test('with events on the way the error falls at least with the power 4.5 of the longest step', () => {
  const ends = [36, 72, 144, 288].map((parts) => {
    const { y } = started(bootCleaner, 4, 0.05, { tolerance: 1e3, longest: 0.02 / parts })
    return y[4]!
  })
  const exact = started(bootCleaner, 4, 0.05, { tolerance: 1e-13 }).y[4]!
  const errors = ends.map((end) => Math.abs(end / exact - 1))
  expect(Math.log2(errors[0]! / errors[2]!) / 2).toBeGreaterThan(4.5)
})

const cases: readonly (readonly [string, Machine, number, number])[] = [
  ['boot cleaner', bootCleaner, 4, 0.5],
  ['vent opener', ventOpener, 1, 0.05],
  ['vent opener at its limit', ventOpener, 3, 0.05],
  ['cord winder', cordWinder, 4, 0.5],
  ['cord winder without a gap in its current', cordWinder, 0, 0.5],
]

test.each(cases)('every joule of a start is in the ledger: %s', (_name, machine, setting, seconds) => {
  for (const [tolerance, allowed] of [
    [1e-6, 5e-5],
    [1e-8, 5e-7],
  ] as const) {
    const run = started(machine, setting, seconds, { tolerance })
    const { y } = run
    const spent = SPENT.reduce((sum, n) => sum + y[n]!, 0)
    near(spent + y[STORED]!, y[INPUT]!, 1e-11 * y[INPUT]!)
    near(storedEnergy(run) - run.storedAtStart, y[STORED]!, allowed * y[INPUT]!)
    expect(run.events.chatter).toBe(0)
  }
})

test('a part of the way and the rest lead where the whole way leads, and turns are counted whole', () => {
  const whole = createRun(compileDrive(bootCleaner), { ...firstInput(), setting: 4 }, { tolerance: 1e-10 })
  const parts = createRun(compileDrive(bootCleaner), { ...firstInput(), setting: 4 }, { tolerance: 1e-10 })
  advanceRun(whole, 0.3)
  for (let n = 0; n < 90; n++) advanceRun(parts, 0.3 / 90)
  relativelyNear(speedOf(parts), speedOf(whole), 1e-8)
  expect(parts.turns.turns).toBe(whole.turns.turns)
  between(whole.turns.turns, 10, 30)
})

/** The vent opener at standstill on direct current, with just this part of the torque that makes it start. */
function pushed(part: number, sense: 1 | -1, breakaway: number) {
  const machine = { ...ventOpener, rotor: { ...ventOpener.rotor, breakaway } }
  const drive = compileDrive(machine)
  const load = drive.loads[0]!
  const active = sense * load.active
  const dry = breakaway * (load.passive + drive.bearingTorque)
  const wheel = active + dry
  const share = wheel > 0 ? 1 / drive.forwardEfficiency : drive.backwardEfficiency
  const torque = part * ((2 * wheel * share) / drive.ratio + breakaway * drive.frictionTorque)
  const circuit = drive.circuits[3]!
  const { winding, source } = circuit
  const current = torque / winding.emfConstant
  const emf = current * (winding.resistance + source.resistance) + winding.brushDrop
  const pushedDrive = { ...drive, circuits: [{ ...circuit, chopper: null, source: { ...source, emf } }] }
  const run = createRun(pushedDrive, { ...firstInput(), sense })
  advanceRun(run, 0.2)
  return Math.abs(speedOf(run))
}

test.each([1, 1.5])(
  'just below the torque to start it stays, just above it goes, friction held %d-fold',
  (hold) => {
    for (const sense of [1, -1] as const) {
      expect(pushed(0.999, sense, hold)).toBe(0)
      expect(pushed(1.001, sense, hold)).toBeGreaterThan(0)
    }
  },
)
