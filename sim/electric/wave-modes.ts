import type { WaveNetwork } from './wave-network.ts'
import { smoothed, switchDrop } from './wave-network.ts'

/** Writes what the present mode means into network.loops; to be called after every change of it. */
export function setLoops(network: WaveNetwork): void {
  const { circuit, loops, path, feed, sense, turn } = network
  const triac = circuit.triac?.drop ?? 0
  loops.series = feed === 'series' ? turn : 0
  loops.apart = feed === 'shorted' || feed === 'charging' ? 1 : 0
  loops.intoCapacitor = feed === 'charging' ? 1 : 0
  loops.charged = smoothed(network) && path !== 'legs' ? 1 : 0
  loops.tapped = 0
  loops.switched = 0
  loops.freewheel = 0
  loops.brush = sense * network.motor.brushDrop
  loops.diode = path === 'legs' || feed === 'series' ? sense * circuit.diodeDrops : 0
  loops.triac = feed === 'series' ? sense * triac : 0
  loops.ownDiode = feed === 'charging' ? circuit.diodeDrops : 0
  loops.ownTriac = loops.apart * triac
  if (path === 'freewheel') loops.freewheel = circuit.chopper?.freewheelDrop ?? 0
  if (path === 'source') loops.switched = sense * switchDrop(network)
  if (path === 'capacitor') setTapped(network)
}

function setTapped(network: WaveNetwork): void {
  const { loops, sense } = network
  const { chopper } = network.circuit
  const duty = network.averaged ? network.duty : 1
  loops.tapped = duty
  loops.switched = duty * sense * switchDrop(network)
  loops.freewheel = (1 - duty) * sense * (chopper?.freewheelDrop ?? 0)
}
