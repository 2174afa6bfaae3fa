import { changeNetwork, passNetworkInstant } from '../electric/wave-changes.ts'
import { NETWORK_GUARDS, writeNetworkGuards } from '../electric/wave-guards.ts'
import type { WaveNetwork } from '../electric/wave-network.ts'
import { SPEED } from '../electric/wave-network.ts'
import type { Look } from '../electric/wave-rates.ts'
import { lookAt, lookAtQuadrature, writeNetworkRates } from '../electric/wave-rates.ts'
import type { Melting } from '../drive/melting.ts'
import type { Primary } from '../electric/transformer.ts'
import type { SwitchedSystem } from '../numeric/event-run.ts'
import { writeElectricPowers, writeShaftPowers } from './waveform-powers.ts'
import type { Shaft } from './waveform-shaft.ts'
import { lookAtShaft } from './waveform-shaft.ts'
import {
  BACKWARD,
  FORWARD,
  settleShaft,
  SHAFT_GUARDS,
  startShaft,
  STOP,
  stopShaft,
  turnBranch,
  writeShaftGuards,
} from './waveform-shaft-modes.ts'
import { ANGLE, FUSE } from './waveform-state.ts'

/** What moves together: network, shaft and fuse. */
export interface WaveParts {
  readonly network: WaveNetwork
  readonly shaft: Shaft
  readonly look: Look
  readonly melting: Melting | null
  /** Mains side of a transformer, null without one */
  readonly primary: Primary | null
}

const SHAFT_AT = NETWORK_GUARDS
const FUSE_AT = SHAFT_AT + SHAFT_GUARDS
const GUARDS = FUSE_AT + 1

/** `melt` is called where the fuse, or overload switch, opens. */
export function newWaveSystem(
  parts: WaveParts,
  longest: number,
  melt: (y: Float64Array) => void,
): SwitchedSystem {
  const { network, shaft, look, melting } = parts
  return {
    guards: GUARDS,
    longest,
    clock: network,
    writeRates(rates, y) {
      lookAtParts(parts, y)
      writeNetworkRates(rates, look)
      rates[SPEED] = shaft.acceleration
      rates[ANGLE] = y[SPEED]!
      writeWarming(rates, parts, y)
      writeElectricPowers(rates, network, look, y)
      writeShaftPowers(rates, shaft, y)
    },
    writeGuards(out, y) {
      writeNetworkGuards(out, network, look, y)
      lookAtParts(parts, y)
      writeShaftGuards(out, SHAFT_AT, shaft)
      out[FUSE_AT] = melting && network.connected ? 1 - y[FUSE]! : 1
    },
    change(guard, y) {
      if (guard < SHAFT_AT) changeNetwork(network, guard, y)
      else if (guard === FUSE_AT) melt(y)
      else changeShaft(parts, guard - SHAFT_AT, y)
    },
    passInstant: (y) => passNetworkInstant(network, y),
  }
}

function lookAtParts({ network, shaft, look }: WaveParts, y: Float64Array): void {
  lookAt(look, network, y)
  shaft.torque = look.torque
  shaft.speed = y[SPEED]!
  lookAtShaft(shaft)
}

/** Puts the shaft in the sense of motion, or at rest, that torque and speed of this moment lead to. */
export function settleParts(parts: WaveParts, y: Float64Array): void {
  lookAtParts(parts, y)
  settleShaft(parts.shaft)
}

function changeShaft(parts: WaveParts, guard: number, y: Float64Array): void {
  const { shaft } = parts
  lookAtParts(parts, y)
  if (guard === STOP) {
    y[SPEED] = 0
    stopShaft(shaft)
  } else if (guard === FORWARD) startShaft(shaft, 1)
  else if (guard === BACKWARD) startShaft(shaft, -1)
  else turnBranch(shaft, guard)
}

/** Rate of a fuse's, or overload switch's, warmth: ((I/Imf)^2 - Q)/tau [1/s] */
function writeWarming(rates: Float64Array, parts: WaveParts, y: Float64Array): void {
  const { melting, look } = parts
  rates[FUSE] = 0
  if (!melting) return
  lookAtLine(parts, y)
  const i = melting.isPrimary ? look.line : look.source
  rates[FUSE] = ((i * i) / melting.square - y[FUSE]!) / melting.time
}

/**
 * Sets the current from the socket or battery in the present frame, after a look: through a transformer that of the
 * secondary over the ratio of turns, with what its core takes.
 */
export function lookAtLine({ network, look, primary }: WaveParts, y: Float64Array): void {
  look.line = look.source
  if (!primary) return
  look.line /= primary.turnsRatio
  if (!network.connected) return
  lookAtQuadrature(look, network, y)
  const { emf } = network.circuit.source
  const core = primary.coreCurrent * look.emf - primary.magnetisingCurrent * look.quadrature
  look.line += (Math.SQRT2 * core) / emf
}
