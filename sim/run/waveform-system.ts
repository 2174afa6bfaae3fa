import { changeNetwork, passNetworkInstant } from '../electric/wave-changes.ts'
import { NETWORK_GUARDS, writeNetworkGuards } from '../electric/wave-guards.ts'
import type { WaveNetwork } from '../electric/wave-network.ts'
import { quadratureAt, SPEED } from '../electric/wave-network.ts'
import type { Look } from '../electric/wave-rates.ts'
import { lookAt, writeNetworkRates } from '../electric/wave-rates.ts'
import type { Melting } from '../drive/melting.ts'
import type { Primary } from '../electric/transformer.ts'
import { TIME } from '../numeric/dormand-prince.ts'
import type { SwitchedSystem } from '../numeric/event-steps.ts'
import { writeElectricPowers, writeShaftPowers } from './waveform-powers.ts'
import type { Shaft } from './waveform-shaft.ts'
import {
  BACKWARD,
  FORWARD,
  LEFT_BRANCH,
  lookAtShaft,
  settleShaft,
  SHAFT_GUARDS,
  startShaft,
  STOP,
  turnBranch,
  writeShaftGuards,
} from './waveform-shaft.ts'
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
  const lookAll = (y: Float64Array): void => {
    lookAt(look, network, y)
    lookAtShaft(shaft, look.torque, y[SPEED]!)
  }
  return {
    guards: GUARDS,
    longest,
    get nextInstant() {
      return network.nextInstant
    },
    writeRates(rates, y) {
      lookAll(y)
      writeNetworkRates(rates, look)
      rates[SPEED] = shaft.acceleration
      rates[ANGLE] = y[SPEED]!
      rates[FUSE] = melting ? (excessOf(parts, y) - y[FUSE]!) / melting.time : 0
      writeElectricPowers(rates, network, look, y)
      writeShaftPowers(rates, shaft, y)
    },
    writeGuards(out, y) {
      writeNetworkGuards(out, network, look, y)
      lookAll(y)
      writeShaftGuards(out, SHAFT_AT, shaft, look.torque, y[SPEED]!)
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

function changeShaft({ network, shaft, look }: WaveParts, guard: number, y: Float64Array): void {
  lookAt(look, network, y)
  const T = look.torque
  if (guard === STOP) {
    y[SPEED] = 0
    settleShaft(shaft, T, 0)
  } else if (guard === FORWARD) startShaft(shaft, T, 1)
  else if (guard === BACKWARD) startShaft(shaft, T, -1)
  else turnBranch(guard === LEFT_BRANCH ? shaft.left : shaft.right)
}

/** Square of the current through fuse or overload switch over that of the least current that opens it. */
function excessOf(parts: WaveParts, y: Float64Array): number {
  const i = parts.melting?.isPrimary ? lineCurrent(parts, y) : parts.look.source
  return (i * i) / (parts.melting?.square ?? 1)
}

/**
 * Current from the socket or battery in the present frame [A], after a look: through a transformer that of the
 * secondary over the ratio of turns, with what its core takes.
 */
export function lineCurrent({ network, look, primary }: WaveParts, y: Float64Array): number {
  if (!primary) return look.source
  if (!network.connected) return look.source / primary.turnsRatio
  const { emf } = network.circuit.source
  const core = primary.coreCurrent * look.emf - primary.magnetisingCurrent * quadratureAt(network, y[TIME]!)
  return look.source / primary.turnsRatio + (Math.SQRT2 * core) / emf
}
