import { TURN } from '../quantity/constants.ts'
import type { Circuit, Winding } from './circuit.ts'
import type { Loops } from './wave-loops.ts'
import { newLoops } from './wave-loops.ts'

/** Where the components of a state stand; 0 is the time. All in SI. */
export const MOTOR = 1
/** Current through the source [A] */
export const SOURCE = 2
/** Voltage of the smoothing capacitor [V] */
export const CAPACITOR = 3
/** [rad/s] */
export const SPEED = 4
/** First component that belongs to who uses the network */
export const FREE = 5

/**
 * What the source does: nothing; carry the motor's current; run by itself, shorted by the legs of the rectifier; charge
 * the capacitor.
 */
export type Feed = 'open' | 'series' | 'shorted' | 'charging'

/** Where the motor's current comes from: it does not flow; source; capacitor; rectifier's legs; chopper's diode. */
export type Path = 'still' | 'source' | 'capacitor' | 'legs' | 'freewheel'

/**
 * The circuit of one setting at work. Voltages and source current are told in the frame of the present half cycle,
 * in which the mains emf is positive: at every mains zero both change their sign. Direct current, and half-wave
 * rectified mains, whose periods are not alike in halves, keep one frame for ever.
 */
export interface WaveNetwork {
  readonly circuit: Circuit
  readonly motor: WaveMotor
  readonly alternating: boolean
  /** Whether the frame turns over at each mains zero */
  readonly turnsOver: boolean
  /** Half cycle, or whole period where the frame does not turn over [s]; Infinity for direct current */
  readonly length: number
  /** Ordinary sizes of voltages and currents */
  readonly voltageSize: number
  readonly currentSize: number
  /** Source resistance in use, raised where a capacitor would charge faster than any step [ohm] */
  readonly sourceResistance: number
  /** Source inductance in use, 0 where it follows at once [H] */
  readonly sourceInductance: number
  /** Whether a fast part was held back for that */
  readonly heldBack: boolean
  /** Whether the rectifier has a way around the source for the motor's current */
  readonly hasLegs: boolean
  /** Whether the chopper is treated as a transformer of direct current with ratio `duty` */
  readonly averaged: boolean
  /** Part of a chopper's period with its switch closed, and the motor current that opens it before [A] */
  duty: number
  currentLimit: number
  connected: boolean
  /** Half cycles since the start, and the time at which the present one began [s] */
  count: number
  origin: number
  /** Whether the triac is fired */
  gate: boolean
  /** Whether the chopper's switch is closed; its periods since the start; whether the limit opened it */
  closed: boolean
  periods: number
  limited: boolean
  feed: Feed
  path: Path
  /** Sense of the motor's current, 0 where none flows */
  sense: -1 | 0 | 1
  /** Sense of the source's current in the present frame */
  turn: -1 | 1
  /** Whether a shorted source may take the motor's current over in this half cycle */
  armed: boolean
  nextInstant: number
  readonly loops: Loops
}

/** Either kind of winding in one form, which costs less to read: k(i) = k0/(1 + |i|/is), L(i) = Lc + Lf/(1 + |i|/is)^2. */
export interface WaveMotor {
  readonly isSeries: boolean
  /** [V s/rad], in a series motor for each ampere */
  readonly emfConstant: number
  /** Infinity with magnets [A] */
  readonly saturationCurrent: number
  /** [ohm] */
  readonly resistance: number
  /** In use: raised where the current would follow faster than any step [H] */
  readonly inductance: number
  /** 0 with magnets [H] */
  readonly fieldInductance: number
  /** [V] */
  readonly brushDrop: number
}

function motorOf(winding: Winding): WaveMotor {
  const isSeries = winding.kind === 'universal'
  return {
    isSeries,
    emfConstant: winding.emfConstant,
    saturationCurrent: isSeries ? winding.saturationCurrent : Infinity,
    resistance: winding.resistance,
    inductance: Math.max(winding.inductance, LEAST_TIME * winding.resistance),
    fieldInductance: isSeries ? winding.fieldInductance : 0,
    brushDrop: winding.brushDrop,
  }
}

/** Shorter time constants are held back to this length: no step of the mains could follow [s]. Our choice. */
const LEAST_TIME = 20e-6

export function newNetwork(circuit: Circuit, averaged = false): WaveNetwork {
  const { source, winding, rectifier } = circuit
  const alternating = source.angularFrequency > 0
  const turnsOver = alternating && (rectifier === 'none' || rectifier === 'bridge')
  const cycle = alternating ? TURN / source.angularFrequency : Infinity
  const slowSource = source.inductance >= LEAST_TIME * source.resistance && alternating
  const leastResistance = circuit.capacitance > 0 ? LEAST_TIME / circuit.capacitance : 0
  const sourceInductance = slowSource ? source.inductance : 0
  const sourceResistance = slowSource ? source.resistance : Math.max(source.resistance, leastResistance)
  const motor = motorOf(winding)
  return {
    circuit,
    motor,
    alternating,
    turnsOver,
    length: turnsOver ? cycle / 2 : cycle,
    voltageSize: source.emf,
    currentSize: source.emf / (sourceResistance + winding.resistance),
    sourceResistance,
    sourceInductance,
    heldBack:
      sourceInductance < source.inductance ||
      sourceResistance > source.resistance ||
      motor.inductance > winding.inductance,
    hasLegs: rectifier === 'bridge' || rectifier === 'half-wave-freewheel',
    averaged: averaged && circuit.capacitance > 0,
    duty: circuit.chopper?.duty ?? 1,
    currentLimit: circuit.chopper?.currentLimit ?? Infinity,
    connected: true,
    count: 0,
    origin: 0,
    gate: true,
    closed: true,
    periods: 0,
    limited: false,
    feed: 'open',
    path: 'still',
    sense: 0,
    turn: 1,
    armed: true,
    nextInstant: Infinity,
    loops: newLoops(),
  }
}

export const smoothed = (network: WaveNetwork): boolean => network.circuit.capacitance > 0

/** Whether the source could drive a current now if its emf were enough. */
export const canFeed = (network: WaveNetwork): boolean =>
  network.connected && network.gate && (network.closed || smoothed(network))

/** Whether the source resists a short at all. */
export const hasImpedance = (network: WaveNetwork): boolean =>
  network.sourceResistance > 0 || network.sourceInductance > 0

/** Emf of the source in the present frame [V] */
export const emfAt = (network: WaveNetwork, time: number): number =>
  network.alternating
    ? network.circuit.source.emf * Math.sin(network.circuit.source.angularFrequency * (time - network.origin))
    : network.circuit.source.emf

/** Drop of the chopper's closed switch [V]: a relay bridges it at full duty, unless the limit has let go of it. */
export const switchDrop = (network: WaveNetwork): number => {
  const { chopper } = network.circuit
  return chopper && (network.duty < 1 || network.limited) ? chopper.switchDrop : 0
}
