import { TIME } from '../numeric/dormand-prince.ts'
import { scheduleNetwork } from './wave-changes.ts'
import { setLoops } from './wave-modes.ts'
import type { WaveNetwork } from './wave-network.ts'
import { CAPACITOR, canFeed, emfAt, hasImpedance, MOTOR, smoothed, SOURCE } from './wave-network.ts'

/**
 * Puts the network at the time in y [s], 0 being a mains zero and the start of a chopper's period, with the currents
 * and the voltage in y; the mode is the one that these currents tell.
 */
export function startNetwork(network: WaveNetwork, y: Float64Array): void {
  const { chopper, triac, source } = network.circuit
  const time = y[TIME]!
  network.count = network.alternating ? Math.floor(time / network.length) : 0
  network.origin = network.count > 0 ? network.count * network.length : 0
  network.gate =
    !triac || (time - network.origin) * source.angularFrequency >= triac.firingAngle || !network.alternating
  network.periods = chopper ? Math.floor(time / chopper.period) : 0
  network.closed = true
  network.turn = 1
  network.armed = true
  chooseMode(network, y)
  scheduleNetwork(network, time)
  setLoops(network)
}

/** Guards put right what the currents alone do not tell, before the first step. */
function chooseMode(network: WaveNetwork, y: Float64Array): void {
  const i = y[MOTOR]!
  network.sense = i === 0 ? 0 : i > 0 ? 1 : -1
  if (smoothed(network)) chooseSmoothed(network, y)
  else chooseSeries(network, y)
}

/** An empty capacitor whose motor still draws current is held there by the legs, which short the source. */
function chooseSmoothed(network: WaveNetwork, y: Float64Array): void {
  const i = y[MOTOR]!
  const isEmpty = network.hasLegs && i > 0 && y[CAPACITOR]! <= -network.circuit.diodeDrops
  if (y[SOURCE]! < 0) network.turn = -1
  network.feed = y[SOURCE] === 0 ? 'open' : 'charging'
  if (i === 0) network.path = 'still'
  else network.path = isEmpty ? 'legs' : 'capacitor'
  if (isEmpty && (network.feed === 'charging' || canFeed(network))) network.feed = 'shorted'
}

/** A source that does not carry the motor's current is shorted by the legs, or waits for its triac. */
function chooseSeries(network: WaveNetwork, y: Float64Array): void {
  const i = y[MOTOR]!
  const drop = network.circuit.triac?.drop ?? 0
  const beyond =
    network.sourceInductance > 0
      ? y[SOURCE] !== i
      : emfAt(network, y[TIME]!) - drop < network.sourceResistance * i
  if (i === 0) {
    network.path = 'still'
    network.feed = 'open'
  } else if (network.hasLegs && (!network.gate || beyond)) {
    network.path = 'legs'
    network.feed = network.gate && hasImpedance(network) ? 'shorted' : 'open'
    if (y[SOURCE]! < 0) network.turn = -1
  } else {
    network.path = 'source'
    network.feed = 'series'
  }
  if (network.feed === 'series') y[SOURCE] = i
  if (network.feed === 'open') y[SOURCE] = 0
}
