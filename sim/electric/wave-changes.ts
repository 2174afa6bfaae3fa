import { TIME } from '../numeric/dormand-prince.ts'
import { AROUND, BACK, CURRENT, EMPTY, HANDOVER, REVERSAL } from './wave-guards.ts'
import { setLoops } from './wave-modes.ts'
import type { Feed, Path, WaveNetwork } from './wave-network.ts'
import { CAPACITOR, canFeed, emfAt, hasImpedance, MOTOR, smoothed, SOURCE } from './wave-network.ts'

/** Changes the mode as the guard asks. */
export function changeNetwork(network: WaveNetwork, guard: number, y: Float64Array): void {
  if (guard === CURRENT) {
    if (network.path === 'still') startForward(network, y)
    else endCurrent(network, y)
  } else if (guard === AROUND) startAround(network, y)
  else if (guard === BACK) {
    if (network.path === 'still') enter(network, 'capacitor', network.feed, -1)
    else limit(network, y)
  } else if (guard === HANDOVER) handOver(network, y)
  else if (guard === REVERSAL) reverse(network, y)
  else if (guard === EMPTY) empty(network, y)
  setLoops(network)
}

function enter(network: WaveNetwork, path: Path, feed: Feed, sense: -1 | 0 | 1): void {
  network.path = path
  network.feed = feed
  network.sense = sense
}

function startForward(network: WaveNetwork, y: Float64Array): void {
  y[MOTOR] = 0
  if (smoothed(network)) enter(network, 'capacitor', network.feed, 1)
  else {
    network.turn = 1
    enter(network, 'source', 'series', 1)
  }
}

function endCurrent(network: WaveNetwork, y: Float64Array): void {
  y[MOTOR] = 0
  const keeps = network.feed === 'charging'
  if (!keeps) y[SOURCE] = 0
  enter(network, 'still', keeps ? 'charging' : 'open', 0)
}

function startAround(network: WaveNetwork, y: Float64Array): void {
  y[MOTOR] = 0
  if (network.circuit.chopper) enter(network, 'freewheel', network.feed, 1)
  else {
    enter(network, 'legs', 'open', 1)
    short(network, y)
  }
}

/** The legs conduct: a source that can feed runs shorted from now on, with the current it has. */
function short(network: WaveNetwork, y: Float64Array): void {
  const runs = network.feed === 'charging' || network.feed === 'shorted'
  if (!runs) {
    network.turn = 1
    y[SOURCE] = 0
  }
  network.armed = true
  network.feed = runs || (canFeed(network) && hasImpedance(network)) ? 'shorted' : 'open'
}

function handOver(network: WaveNetwork, y: Float64Array): void {
  const { feed, path } = network
  if (feed === 'series') {
    // What the source took over in this half cycle it cannot take over again, lest rounding toss it to and fro.
    network.armed = network.turn < 0
    y[SOURCE] = hasImpedance(network) ? network.turn * y[MOTOR]! : 0
    enter(network, 'legs', hasImpedance(network) ? 'shorted' : 'open', 1)
  } else if (feed === 'shorted' || (path === 'legs' && !hasImpedance(network))) {
    network.turn = 1
    if (feed === 'shorted' && !smoothed(network)) meetSource(network, y)
    y[SOURCE] = y[MOTOR]!
    if (smoothed(network)) enter(network, 'capacitor', 'charging', 1)
    else enter(network, 'source', 'series', 1)
  } else if (feed === 'charging') {
    network.feed = 'open'
    y[SOURCE] = 0
  } else {
    network.turn = 1
    network.armed = true
    network.feed = path === 'legs' ? 'shorted' : 'charging'
    y[SOURCE] = 0
  }
}

/**
 * Where a source without inductance takes the motor's current over, it is the most that the source can carry. What the
 * current is above that is the error of a step, for which the legs would take it back at once.
 */
function meetSource(network: WaveNetwork, y: Float64Array): void {
  const { sourceResistance, sourceInductance, circuit } = network
  if (sourceInductance > 0) return
  const most = (emfAt(network, y[TIME]!) - (circuit.triac?.drop ?? 0)) / sourceResistance
  y[MOTOR] = Math.min(y[MOTOR]!, most)
}

/** A triac, a diode or an opened contact lets go of the current where it is zero, unless it may flow the new way. */
function reverse(network: WaveNetwork, y: Float64Array): void {
  y[SOURCE] = 0
  if (network.turn < 0 && canFeed(network)) network.turn = 1
  else network.feed = 'open'
}

function empty(network: WaveNetwork, y: Float64Array): void {
  y[CAPACITOR] = -network.circuit.diodeDrops
  network.path = 'legs'
  short(network, y)
}

/** The limit opens the switch until the next period, also one that a relay had bridged so far. */
function limit(network: WaveNetwork, y: Float64Array): void {
  const time = y[TIME]!
  if (network.circuit.chopper) network.periods = Math.floor(time / network.circuit.chopper.period)
  network.limited = true
  openSwitch(network, y)
  scheduleNetwork(network, time)
}

/** The motor's current goes on through the chopper's diode. */
function openSwitch(network: WaveNetwork, y: Float64Array): void {
  network.closed = false
  if (network.path === 'source') {
    y[SOURCE] = 0
    enter(network, 'freewheel', 'open', 1)
  } else if (network.path === 'capacitor') network.path = 'freewheel'
}

function closeSwitch(network: WaveNetwork): void {
  network.closed = true
  if (network.path !== 'freewheel' || !network.circuit.chopper) return
  if (smoothed(network)) network.path = 'capacitor'
  else if (network.connected) enter(network, 'source', 'series', 1)
}

/** Does what is due at the time in y and sets the next instant. */
export function passNetworkInstant(network: WaveNetwork, y: Float64Array): void {
  const time = y[TIME]!
  const { chopper, triac, source } = network.circuit
  if (time >= network.origin + network.length) turnOver(network, y)
  if (triac && !network.gate && time >= network.origin + triac.firingAngle / source.angularFrequency)
    network.gate = true
  if (chopper && isSwitched(network)) {
    const end = (network.periods + 1) * chopper.period
    if (time >= end) {
      network.periods++
      network.limited = network.limited && !network.closed
      closeSwitch(network)
    } else if (network.duty < 1 && time >= (network.periods + network.duty) * chopper.period)
      openSwitch(network, y)
  }
  scheduleNetwork(network, time)
  setLoops(network)
}

const isSwitched = (network: WaveNetwork): boolean =>
  !network.averaged && (network.duty < 1 || network.limited)

/** The next half cycle begins; where the frame turns over with it, what is told in it changes its sign. */
function turnOver(network: WaveNetwork, y: Float64Array): void {
  network.count++
  network.origin = network.count * network.length
  const { triac, rectifier } = network.circuit
  network.gate = !triac || triac.firingAngle <= 0
  network.armed = true
  if (!network.turnsOver) return
  y[SOURCE] = -y[SOURCE]!
  if (rectifier === 'none') {
    y[MOTOR] = -y[MOTOR]!
    network.sense = network.sense === 0 ? 0 : network.sense === 1 ? -1 : 1
  } else {
    const atOnce = network.feed === 'series' && !hasImpedance(network)
    network.turn = network.turn === -1 || atOnce ? 1 : -1
    // Without inductance the source's current ends with its voltage, and a triac has to be fired anew.
    const ends = network.sourceInductance === 0 && !canFeed(network)
    if (ends && (network.feed === 'series' || network.feed === 'shorted')) enter(network, 'legs', 'open', 1)
  }
}

/** Sets the earliest instant after `time`. */
export function scheduleNetwork(network: WaveNetwork, time: number): void {
  const { chopper, triac, source } = network.circuit
  let next = network.origin + network.length
  if (triac && !network.gate)
    next = Math.min(next, network.origin + triac.firingAngle / source.angularFrequency)
  if (chopper && isSwitched(network)) {
    const opening = (network.periods + network.duty) * chopper.period
    next = Math.min(next, (network.periods + 1) * chopper.period)
    if (network.closed && network.duty < 1 && opening > time) next = Math.min(next, opening)
  }
  network.nextInstant = next
}
