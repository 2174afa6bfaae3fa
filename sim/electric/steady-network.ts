import type { EventRun, SwitchedSystem, Witness } from '../numeric/event-run.ts'
import { newEventRun } from '../numeric/event-run.ts'
import type { Stepper } from '../numeric/dormand-prince.ts'
import { denseSlope, denseValue, newStepper } from '../numeric/dormand-prince.ts'
import { brent } from '../numeric/brent.ts'
import type { Circuit } from './circuit.ts'
import { changeNetwork, passNetworkInstant } from './wave-changes.ts'
import { NETWORK_GUARDS, writeNetworkGuards } from './wave-guards.ts'
import type { WaveNetwork } from './wave-network.ts'
import { CAPACITOR, FREE, MOTOR, newNetwork, smoothed, SPEED } from './wave-network.ts'
import type { Look } from './wave-rates.ts'
import { lookAt, lookAtQuadrature, newLook, writeNetworkRates } from './wave-rates.ts'

/** Integrals over a period that follow the network's own components in a state. */
export const MEAN = FREE
export const SQUARE = FREE + 1
export const CONDUCTING = FREE + 2
export const TORQUE = FREE + 3
export const VOLTAGE = FREE + 4
export const DRAWN = FREE + 5
export const DRAWN_SQUARE = FREE + 6
export const POWER = FREE + 7
export const QUADRATURE = FREE + 8
export const RECTIFIED = FREE + 9
export const SWITCHED = FREE + 10
export const FREEWHEEL = FREE + 11
export const HELD = FREE + 12
export const HELD_SQUARE = FREE + 13
export const MEAN_SIZE = FREE + 14
const SIZE = FREE + 15

/** Relative error of one step, and the part of an ordinary current below which it no longer shrinks with the current */
const SMALL = 0.02
const TOLERANCE = 1e-10
/** Steps that a period of the mains takes at least, and one of a chopper */
const PARTS_OF_PERIOD = 36
const PARTS_OF_SWITCHING = 8

/** Longest step in which the integrals of a period keep up with its currents [s] */
export function longestStep(network: WaveNetwork): number {
  const { chopper } = network.circuit
  const mains = (network.turnsOver ? 2 : 1) * (network.length / PARTS_OF_PERIOD)
  return chopper && !network.averaged ? Math.min(mains, chopper.period / PARTS_OF_SWITCHING) : mains
}

/** A network at a speed that stands still, with the integrals of a period. */
export interface SteadyNetwork {
  readonly network: WaveNetwork
  readonly run: EventRun
  /** Largest motor current, least and largest capacitor voltage seen since they were cleared */
  readonly extremes: Extremes
}

export interface Extremes extends Witness {
  peak: number
  low: number
  high: number
}

export function newSteadyNetwork(circuit: Circuit): SteadyNetwork {
  const network = newNetwork(circuit, true)
  // Where the limit acts, the period that repeats itself is sought by its duty.
  network.currentLimit = Infinity
  const stepper = newStepper(SIZE, FREE, SPEED)
  stepper.tolerance = TOLERANCE
  stepper.sizes.fill(SMALL * network.currentSize)
  stepper.sizes[CAPACITOR] = network.voltageSize
  return { network, run: newEventRun(steadySystem(network), stepper), extremes: newExtremes(network) }
}

function steadySystem(network: WaveNetwork): SwitchedSystem {
  const look = newLook()
  return {
    guards: NETWORK_GUARDS,
    longest: longestStep(network),
    clock: network,
    writeRates(rates, y) {
      lookAt(look, network, y)
      lookAtQuadrature(look, network, y)
      writeNetworkRates(rates, look)
      rates[SPEED] = 0
      writeIntegrands(rates, network, look, y)
    },
    writeGuards: (out, y) => writeNetworkGuards(out, network, look, y),
    change: (guard, y) => changeNetwork(network, guard, y),
    passInstant: (y) => passNetworkInstant(network, y),
  }
}

/** Currents and voltages that alternate are taken by their size. */
function writeIntegrands(rates: Float64Array, network: WaveNetwork, look: Look, y: Float64Array): void {
  const { loops, circuit, sense, turn, path, feed } = network
  const i = y[MOTOR]!
  const v = y[CAPACITOR]!
  const alternates = circuit.rectifier === 'none' && network.alternating
  const size = sense * i
  const voltage = brushVoltage(network, look, i)
  rates[MEAN] = alternates ? size : i
  rates[MEAN_SIZE] = size
  rates[SQUARE] = i * i
  rates[CONDUCTING] = sense * sense
  rates[TORQUE] = look.torque
  rates[VOLTAGE] = alternates ? voltage * voltage : voltage
  rates[DRAWN] = network.alternating ? 0 : look.source
  rates[DRAWN_SQUARE] = look.source * look.source
  rates[POWER] = look.emf * look.source
  rates[QUADRATURE] = look.source * look.quadrature
  rates[RECTIFIED] =
    (path === 'legs' || feed === 'series' ? size : 0) + loops.intoCapacitor * turn * look.source
  // Legs that hold an empty capacitor carry what its bleed resistor would have it lose.
  if (path === 'legs') rates[RECTIFIED]! += v / circuit.bleedResistance
  rates[SWITCHED] = 0
  if (circuit.triac) rates[SWITCHED] = (feed === 'series' ? size : 0) + loops.apart * turn * look.source
  else if (loops.switched !== 0) rates[SWITCHED] = path === 'capacitor' ? loops.tapped * size : size
  rates[FREEWHEEL] = path === 'freewheel' ? size : 0
  if (path === 'capacitor') rates[FREEWHEEL] = (1 - loops.tapped) * size
  rates[HELD] = v
  rates[HELD_SQUARE] = v * v
}

/** Between the motor's terminals: what drives the current, or the emf alone where none flows [V] */
export function brushVoltage(network: WaveNetwork, look: Look, i: number): number {
  return look.motorEmf + network.motor.resistance * i + look.inductance * look.motorRate + network.loops.brush
}

function newExtremes(network: WaveNetwork): Extremes {
  const extremes: Extremes = {
    peak: 0,
    low: Infinity,
    high: -Infinity,
    see(stepper) {
      const current = extreme(stepper, MOTOR, network.sense)
      if (current > extremes.peak) extremes.peak = current
      if (!smoothed(network)) return
      extremes.high = Math.max(extremes.high, extreme(stepper, CAPACITOR, 1))
      extremes.low = Math.min(extremes.low, -extreme(stepper, CAPACITOR, -1))
    },
  }
  return extremes
}

const ROOT = 1e-9

/** Largest value of sign times a component in the step taken, at its ends or where its slope is 0. */
export function extreme(stepper: Stepper, n: number, sign: -1 | 0 | 1): number {
  const ends = Math.max(sign * stepper.y[n]!, sign * stepper.next[n]!)
  const rising = sign * denseSlope(stepper, n, 0)
  const falling = sign * denseSlope(stepper, n, 1)
  if (!(rising > 0 && falling < 0)) return ends
  const top = brent({ at: (x) => sign * denseSlope(stepper, n, x) }, 0, 1, rising, falling, ROOT)
  return sign * denseValue(stepper, n, top)
}
