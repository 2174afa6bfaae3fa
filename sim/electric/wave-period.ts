import { TIME } from '../numeric/dormand-prince.ts'
import type { PeriodMap } from '../numeric/shooting.ts'
import { MOST_UNKNOWNS, newSearch } from '../numeric/shooting.ts'
import type { WaveNetwork } from './wave-network.ts'
import { CAPACITOR, MOTOR, smoothed, SOURCE, SPEED } from './wave-network.ts'
import { startNetwork } from './wave-start.ts'

/** Seconds over which currents repeat but for a turn of the frame; Infinity for direct current that nothing switches. */
export const periodOf = (network: WaveNetwork): number =>
  network.alternating ? network.length : (network.circuit.chopper?.period ?? Infinity)

/** With legs a period starts at the crest, where one current runs through source and motor, or none. */
function startOf(network: WaveNetwork): number {
  if (!network.alternating || !network.hasLegs || smoothed(network)) return 0
  return network.turnsOver ? network.length / 2 : network.length / 4
}

/**
 * The start of an electrical period in state y, and what `run` makes of it over one period. Unknowns in their order:
 * motor current, then capacitor voltage where there is one, then the source current where it runs by itself.
 */
export function newPeriodMap(network: WaveNetwork, y: Float64Array, run: () => void): PeriodMap {
  const map: PeriodMap = {
    unknowns: 1,
    start: new Float64Array(MOST_UNKNOWNS),
    end: new Float64Array(MOST_UNKNOWNS),
    sizes: new Float64Array(MOST_UNKNOWNS).fill(network.currentSize),
    least: new Float64Array(MOST_UNKNOWNS).fill(-Infinity),
    most: new Float64Array(MOST_UNKNOWNS).fill(Infinity),
    search: newSearch(),
    pass() {
      place(map, network, y)
      run()
      collect(map, network, y)
    },
  }
  if (smoothed(network)) map.sizes[1] = network.voltageSize
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

/** A start from which the search may begin, at the speed in y: no current, and a capacitor as full as it gets. */
export function guessStart(map: PeriodMap, network: WaveNetwork, y: Float64Array): void {
  map.start.fill(0)
  map.unknowns = 1
  if (!smoothed(network)) return
  map.unknowns = 2
  const { motor } = network
  const { source, diodeDrops, chopper } = network.circuit
  const charged = network.connected ? source.emf - diodeDrops : 0
  const emf = motor.isSeries ? 0 : motor.emfConstant * y[SPEED]!
  const turned = chopper ? 0 : emf - motor.brushDrop
  map.start[1] = Math.max(charged, turned, 0)
}

function place(map: PeriodMap, network: WaveNetwork, y: Float64Array): void {
  const currentAt = smoothed(network) ? 2 : 1
  y[TIME] = startOf(network)
  y[MOTOR] = map.start[0]!
  y[CAPACITOR] = smoothed(network) ? map.start[1]! : 0
  if (map.unknowns > currentAt) y[SOURCE] = map.start[currentAt]!
  else y[SOURCE] = smoothed(network) ? 0 : y[MOTOR]
  startNetwork(network, y)
}

function collect(map: PeriodMap, network: WaveNetwork, y: Float64Array): void {
  const currentAt = smoothed(network) ? 2 : 1
  map.end[0] = y[MOTOR]!
  if (smoothed(network)) map.end[1] = y[CAPACITOR]!
  map.end[currentAt] = y[SOURCE]!
  // A source that still runs by itself where the period ends does so where it starts.
  if (network.loops.apart === 1 && network.sourceInductance > 0) map.unknowns = currentAt + 1
}
