import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Drive } from '../../sim/drive/drive.ts'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import type { Circuit } from '../../sim/electric/circuit.ts'
import type { CurrentCycle } from '../../sim/electric/cycle.ts'
import { newCycle } from '../../sim/electric/cycle.ts'
import { newSteadyWork, solveCycle } from '../../sim/electric/steady-cycle.ts'
import { MOTOR, SPEED } from '../../sim/electric/wave-network.ts'
import type { WaveRun } from '../../sim/run/waveform.ts'
import { advanceRun, changeInput, createRun, storedEnergy } from '../../sim/run/waveform.ts'
import { INPUT, SPENT, STORED } from '../../sim/run/waveform-state.ts'
import { chains, ordinarySpeed } from '../support/arbitrary-circuits.ts'
import { bootCleaner, cordWinder, ventOpener } from '../support/machines.ts'
import { near } from '../support/near.ts'

const seed = 20_261_125
const trains = [bootCleaner, ventOpener, cordWinder].map((machine) => compileDrive(machine))
const withCircuit = (drive: Drive, circuit: Circuit): Drive => ({
  ...drive,
  circuits: [circuit],
  primaries: [],
  melting: null,
})

/** Fails unless all that came in is in the ledger, and the state holds what the ledger says is stored. */
function balance(run: WaveRun): void {
  const { y } = run
  let spent = 0
  let flow = 1e-6
  for (const n of SPENT) {
    spent += y[n]!
    flow += Math.abs(y[n]!)
  }
  flow = Math.max(flow, Math.abs(y[INPUT]!))
  expect(y.every((each) => Number.isFinite(each))).toBe(true)
  near(spent + y[STORED]!, y[INPUT]!, 1e-11 * flow)
  near(storedEnergy(run) - run.storedAtStart, y[STORED]!, 5e-6 * flow)
  expect(run.events.chatter).toBe(0)
}

test.each(Object.entries(chains))(
  '%s: start, jam, release, plug pulled and put back, every joule is in the ledger',
  (_name, circuits) => {
    fc.assert(
      fc.property(circuits, fc.nat({ max: 2 }), (circuit, train) => {
        const run = createRun(withCircuit(trains[train]!, circuit), firstInput())
        advanceRun(run, 0.03)
        changeInput(run, { jammed: 'left' })
        advanceRun(run, 0.02)
        changeInput(run, { jammed: 'none', rightLoad: 1 })
        advanceRun(run, 0.021)
        changeInput(run, { connected: false })
        advanceRun(run, 0.013)
        changeInput(run, { connected: true })
        advanceRun(run, 0.017)
        balance(run)
      }),
      { seed, numRuns: 12 },
    )
  },
)

/** A duty of a few per cent may draw a large capacitor down for minutes before the motor stands. */
const prompt = Object.entries(chains).filter(([name]) => name !== 'chopper behind a capacitor')

test.each(prompt)('%s: pulled out, it comes to rest and no current is left', (_name, circuits) => {
  fc.assert(
    fc.property(circuits, fc.constantFrom(0, 2), (circuit, train) => {
      const run = createRun(withCircuit(trains[train]!, circuit), firstInput())
      advanceRun(run, 0.05)
      changeInput(run, { connected: false })
      for (let n = 0; n < 40 && run.y[SPEED] !== 0; n++) advanceRun(run, 0.1)
      advanceRun(run, 0.1)
      expect(run.y[SPEED]).toBe(0)
      expect(Math.abs(run.y[MOTOR]!)).toBeLessThan(1e-3 * run.parts.network.currentSize)
      balance(run)
    }),
    { seed, numRuns: 6 },
  )
})

/** What the means of a period say was lost and what drove the shaft [W] */
function spentIn(circuit: Circuit, cycle: CurrentCycle, speed: number): number {
  const { source, winding, triac, chopper } = circuit
  const drop = triac ? triac.drop : (chopper?.switchDrop ?? 0)
  return (
    source.resistance * cycle.sourceSquare +
    circuit.diodeDrops * cycle.rectifiedMean +
    drop * cycle.switchMean +
    (chopper?.freewheelDrop ?? 0) * cycle.freewheelMean +
    cycle.capacitorSquare / circuit.bleedResistance +
    winding.resistance * cycle.square +
    winding.brushDrop * (Math.abs(cycle.mean) + cycle.reversal) +
    cycle.torque * speed
  )
}

test.each(Object.entries(chains))(
  '%s: the period at a frozen speed comes back, its power accounted for',
  (_name, circuits) => {
    const work = newSteadyWork()
    fc.assert(
      fc.property(circuits, fc.double({ min: 0, max: 1.2, noNaN: true }), (circuit, part) => {
        const speed = part * ordinarySpeed(circuit)
        const cycle = newCycle()
        solveCycle(cycle, circuit, speed, work)
        expect(work.map?.search.worst ?? 0).toBeLessThan(1e-9)
        expect(work.solver?.run.chatter ?? 0).toBe(0)
        near(
          spentIn(circuit, cycle, speed),
          cycle.sourcePower,
          1e-7 * (cycle.sourcePower + 1e-6 * circuit.source.emf ** 2),
        )
      }),
      { seed, numRuns: 25 },
    )
  },
)
