import { TIME } from '../numeric/dormand-prince.ts'
import { advance } from '../numeric/event-steps.ts'
import type { PeriodMap } from '../numeric/shooting.ts'
import { closePeriod, MOST_UNKNOWNS, newSearch } from '../numeric/shooting.ts'
import type { Circuit } from './circuit.ts'
import type { CurrentCycle } from './cycle.ts'
import { clearCycle } from './cycle.ts'
import { solveDirect } from './steady-direct.ts'
import type { SteadyNetwork } from './steady-network.ts'
import * as sum from './steady-network.ts'
import type { WaveNetwork } from './wave-network.ts'
import { CAPACITOR, FREE, MOTOR, smoothed, SOURCE, SPEED } from './wave-network.ts'
import { startNetwork } from './wave-start.ts'

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
    work.map = newMap(work.solver)
  }
  const { solver, map } = work
  solver.network.connected = connected
  solver.network.limited = false
  solver.run.stepper.y.fill(0)
  solver.run.stepper.y[SPEED] = speed
  guess(map, solver, speed)
  closePeriod(map)
  fill(cycle, solver)
}

/** Seconds over which currents repeat but for a turn of the frame. */
const periodOf = (network: WaveNetwork): number =>
  network.alternating ? network.length : (network.circuit.chopper?.period ?? 0)

/** With legs a period starts at the crest, where one current runs through source and motor, or none. */
function startOf(network: WaveNetwork): number {
  if (!network.alternating || !network.hasLegs || smoothed(network)) return 0
  return network.turnsOver ? network.length / 2 : network.length / 4
}

/** Unknowns in their order: motor current, then capacitor voltage where there is one, then source current. */
function newMap(solver: SteadyNetwork): PeriodMap {
  const { network } = solver
  const voltageFirst = smoothed(network)
  const map: PeriodMap = {
    unknowns: voltageFirst ? 2 : 1,
    start: new Float64Array(MOST_UNKNOWNS),
    end: new Float64Array(MOST_UNKNOWNS),
    sizes: new Float64Array(MOST_UNKNOWNS).fill(network.currentSize),
    least: new Float64Array(MOST_UNKNOWNS).fill(-Infinity),
    most: new Float64Array(MOST_UNKNOWNS).fill(Infinity),
    search: newSearch(),
    pass: () => pass(map, solver),
  }
  if (voltageFirst) map.sizes[1] = network.voltageSize
  bound(map, network)
  return map
}

/** Which way the motor's current can flow at all where a period starts. */
function bound(map: PeriodMap, network: WaveNetwork): void {
  const { rectifier, chopper } = network.circuit
  const alternates = rectifier === 'none' && network.alternating
  if (alternates) map.most[0] = 0
  else if (!smoothed(network) || chopper) map.least[0] = 0
}

function guess(map: PeriodMap, { network }: SteadyNetwork, speed: number): void {
  const { circuit } = network
  map.start.fill(0)
  map.unknowns = 1
  if (!smoothed(network)) return
  map.unknowns = 2
  const { winding } = circuit
  const charged = network.connected ? circuit.source.emf - circuit.diodeDrops : 0
  const emf = winding.kind === 'permanent-magnet' ? winding.emfConstant * speed : 0
  const turned = circuit.chopper ? 0 : emf - winding.brushDrop
  map.start[1] = Math.max(charged, turned, 0)
}

function pass(map: PeriodMap, solver: SteadyNetwork): void {
  const { network, run, extremes } = solver
  const { y } = run.stepper
  const currentAt = smoothed(network) ? 2 : 1
  y.fill(0, FREE)
  y[TIME] = startOf(network)
  y[MOTOR] = map.start[0]!
  y[CAPACITOR] = smoothed(network) ? map.start[1]! : 0
  if (map.unknowns > currentAt) y[SOURCE] = map.start[currentAt]!
  else y[SOURCE] = smoothed(network) ? 0 : y[MOTOR]
  extremes.peak = 0
  extremes.low = Infinity
  extremes.high = -Infinity
  startNetwork(network, y)
  run.witness = extremes
  run.fresh = true
  run.idle = 0
  run.stride = Infinity
  advance(run, y[TIME] + periodOf(network))
  map.end[0] = y[MOTOR]!
  if (smoothed(network)) map.end[1] = y[CAPACITOR]!
  map.end[currentAt] = y[SOURCE]!
  // A source that still runs by itself where the period ends does so where it starts.
  if (network.loops.apart === 1 && network.sourceInductance > 0) map.unknowns = currentAt + 1
}

function fill(cycle: CurrentCycle, { network, run, extremes }: SteadyNetwork): void {
  const { y } = run.stepper
  const period = periodOf(network)
  const alternates = network.circuit.rectifier === 'none' && network.alternating
  cycle.mean = y[sum.MEAN]! / period
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
