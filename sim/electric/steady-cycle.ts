import { TIME } from '../numeric/dormand-prince.ts'
import { advance } from '../numeric/event-steps.ts'
import type { PeriodMap } from '../numeric/shooting.ts'
import { closePeriod } from '../numeric/shooting.ts'
import { brent } from '../numeric/brent.ts'
import type { Chopper, Circuit } from './circuit.ts'
import type { CurrentCycle } from './cycle.ts'
import { clearCycle } from './cycle.ts'
import { solveDirect } from './steady-direct.ts'
import type { SteadyNetwork } from './steady-network.ts'
import * as sum from './steady-network.ts'
import { FREE, smoothed, SPEED } from './wave-network.ts'
import { guessStart, newPeriodMap, periodOf } from './wave-period.ts'

/** What repeated solutions of one circuit share; owned by who solves. */
export interface SteadyWork {
  circuit: Circuit | null
  solver: SteadyNetwork | null
  map: PeriodMap | null
}

export const newSteadyWork = (): SteadyWork => ({ circuit: null, solver: null, map: null })

/**
 * Means of the electrical period that repeats itself at a speed that stands still, for any circuit: shooting. One
 * period is integrated with all its changes of mode; currents and voltage at its start are sought that come back at
 * its end. A period with a gap in the current closes in one pass. A chopper behind a smoothing capacitor counts as a
 * transformer of direct current of ratio `duty`.
 */
export function solveCycle(
  cycle: CurrentCycle,
  circuit: Circuit,
  speed: number,
  work: SteadyWork,
  connected = true,
): void {
  clearCycle(cycle)
  if (solveDirect(cycle, circuit, speed, connected)) return
  if (work.circuit !== circuit || !work.solver || !work.map) {
    work.circuit = circuit
    work.solver = sum.newSteadyNetwork(circuit)
    work.map = mapOf(work.solver)
  }
  const { solver, map } = work
  solver.network.connected = connected
  solver.run.stepper.y.fill(0)
  solver.run.stepper.y[SPEED] = speed
  const { chopper } = circuit
  const duty = chopper?.duty ?? 1
  const excess = peakAt(map, solver, duty) - (chopper?.currentLimit ?? Infinity)
  if (chopper && excess > 0) holdLimit(map, solver, chopper, excess)
  fill(cycle, solver)
}

/** Largest current of the period that repeats itself at a duty [A] */
function peakAt(map: PeriodMap, { network, run, extremes }: SteadyNetwork, duty: number): number {
  network.duty = duty
  guessStart(map, network, run.stepper.y)
  closePeriod(map)
  return extremes.peak
}

/** Least part of the duty that is tried */
const LEAST_PART = 1e-3
const ROOT = 1e-14

/** Takes the duty at which the crest of the current just reaches the limit, as far as the switch has a say in it. */
function holdLimit(map: PeriodMap, solver: SteadyNetwork, chopper: Chopper, excess: number): void {
  const { duty, currentLimit } = chopper
  const curve = { at: (part: number) => peakAt(map, solver, part) - currentLimit }
  const least = LEAST_PART * duty
  const shortfall = curve.at(least)
  if (shortfall < 0) curve.at(brent(curve, least, duty, shortfall, excess, ROOT))
}

const mapOf = (solver: SteadyNetwork): PeriodMap =>
  newPeriodMap(solver.network, solver.run.stepper.y, () => runPeriod(solver))

/** One period from the start that is placed already. */
function runPeriod({ network, run, extremes }: SteadyNetwork): void {
  const { y } = run.stepper
  y.fill(0, FREE)
  extremes.peak = 0
  extremes.low = Infinity
  extremes.high = -Infinity
  run.witness = extremes
  run.fresh = true
  run.idle = 0
  run.stride = Infinity
  advance(run, y[TIME]! + periodOf(network))
}

function fill(cycle: CurrentCycle, { network, run, extremes }: SteadyNetwork): void {
  const { y } = run.stepper
  const period = periodOf(network)
  const alternates = network.circuit.rectifier === 'none' && network.alternating
  cycle.duty = network.duty
  cycle.mean = y[sum.MEAN]! / period
  cycle.reversal = Math.max(0, y[sum.MEAN_SIZE]! / period - Math.abs(cycle.mean))
  cycle.square = y[sum.SQUARE]! / period
  cycle.peak = extremes.peak
  cycle.conducting = y[sum.CONDUCTING]! / period
  cycle.torque = y[sum.TORQUE]! / period
  cycle.motorVoltage = y[sum.VOLTAGE]! / period
  if (alternates) cycle.motorVoltage = Math.sqrt(cycle.motorVoltage)
  cycle.sourceMean = y[sum.DRAWN]! / period
  cycle.sourceSquare = y[sum.DRAWN_SQUARE]! / period
  cycle.sourcePower = y[sum.POWER]! / period
  cycle.sourceQuadrature = y[sum.QUADRATURE]! / period
  cycle.rectifiedMean = y[sum.RECTIFIED]! / period
  cycle.switchMean = y[sum.SWITCHED]! / period
  cycle.freewheelMean = y[sum.FREEWHEEL]! / period
  if (!smoothed(network)) return
  cycle.capacitorMean = y[sum.HELD]! / period
  cycle.capacitorSquare = y[sum.HELD_SQUARE]! / period
  cycle.capacitorRipple = extremes.high - extremes.low
}
