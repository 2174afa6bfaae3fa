import { setLoops } from './wave-modes.ts'
import type { WaveNetwork } from './wave-network.ts'
import { MOTOR, smoothed, SOURCE } from './wave-network.ts'

/**
 * Parts the network from its source. Alternating current runs on in the arc of the contacts to its next zero, the
 * arc's own drop neglected; direct current goes on through the chopper's diode, or ends at once where there is none.
 */
export function disconnect(network: WaveNetwork, y: Float64Array): void {
  network.connected = false
  // A short by the legs does not ask which way its current runs, until it has to be broken.
  if (network.feed === 'shorted') network.turn = y[SOURCE]! < 0 ? -1 : 1
  if (network.alternating) return
  if (network.feed === 'series' && network.circuit.chopper) network.path = 'freewheel'
  else if (network.feed === 'series') {
    network.path = 'still'
    network.sense = 0
    y[MOTOR] = 0
  }
  network.feed = 'open'
  y[SOURCE] = 0
  setLoops(network)
}

export function connect(network: WaveNetwork): void {
  network.connected = true
  if (network.path !== 'freewheel' || !network.closed || smoothed(network)) return
  network.path = 'source'
  network.feed = 'series'
  setLoops(network)
}
