import type { Drive } from '../drive/drive.ts'
import type { DriveInput } from '../drive/input.ts'
import type { WormTurns } from '../drive/turns.ts'
import { advanceTurns, noTurns } from '../drive/turns.ts'
import { longestStep } from '../electric/steady-network.ts'
import { connect, disconnect } from '../electric/wave-connection.ts'
import type { WaveNetwork } from '../electric/wave-network.ts'
import { CAPACITOR, MOTOR, newNetwork, SOURCE, SPEED } from '../electric/wave-network.ts'
import { lookAt, newLook } from '../electric/wave-rates.ts'
import { startNetwork } from '../electric/wave-start.ts'
import type { Stepper } from '../numeric/dormand-prince.ts'
import { newStepper, TIME } from '../numeric/dormand-prince.ts'
import type { EventRun } from '../numeric/event-run.ts'
import { newEventRun } from '../numeric/event-run.ts'
import { advance } from '../numeric/event-steps.ts'
import { TURN } from '../quantity/constants.ts'
import { fieldEnergy } from './waveform-powers.ts'
import { loadShaft, newShaft } from './waveform-shaft.ts'
import { ANGLE, ARC, COUPLED, FUSE, STATE_SIZE, STORED } from './waveform-state.ts'
import type { WaveParts } from './waveform-system.ts'
import { newWaveSystem, settleParts } from './waveform-system.ts'

/**
 * A drive at work moment by moment: every current, the shaft and every energy, with each change of mode where it is.
 * The state is told in the supply's sense.
 */
export interface WaveRun {
  readonly drive: Drive
  readonly options: WaveOptions
  readonly y: Float64Array
  /** Where the worm stands, about +z */
  readonly turns: WormTurns
  input: DriveInput
  parts: WaveParts
  events: EventRun
  /** Whether fuse or overload switch has opened */
  isOpen: boolean
  /** Energy stored at the start [J] */
  storedAtStart: number
}

export interface WaveOptions {
  /** Relative error of one step */
  readonly tolerance?: number
  /** Longest step [s]; by itself a thirty-sixth of a mains period */
  readonly longest?: number
  /** Whether a chopper behind a capacitor is taken at its mean */
  readonly averaged?: boolean
  /** About +z [rad/s] */
  readonly speed?: number
  /** [V] */
  readonly capacitorVoltage?: number
  /** How warm the fuse is, 1 where it opens */
  readonly fuse?: number
  /** Time since a mains zero [s] */
  readonly time?: number
}

const TOLERANCE = 1e-8
/** Parts of the ordinary current and speed below which the allowed error no longer shrinks with them */
const SMALL = 0.02

/** Whether the drive has waveforms at all: a motor, and a motion that is computed. */
export const hasWaveforms = (drive: Drive): boolean => drive.circuits.length > 0 && drive.notComputed === null

/** Throws for a drive without waveforms. */
export function createRun(drive: Drive, input: DriveInput, options: WaveOptions = {}): WaveRun {
  if (!hasWaveforms(drive)) throw new Error('this drive has no waveforms')
  const stepper = newStepper(STATE_SIZE, COUPLED, FUSE)
  const parts = newParts(drive, input, options)
  const run: WaveRun = {
    drive,
    options,
    y: stepper.y,
    turns: noTurns(),
    input: { ...input },
    parts,
    events: newEvents(parts, stepper, options, () => melt(run)),
    isOpen: false,
    storedAtStart: 0,
  }
  const { y } = run
  y[TIME] = options.time ?? 0
  y[SPEED] = input.sense * (options.speed ?? 0)
  y[CAPACITOR] = options.capacitorVoltage ?? 0
  y[FUSE] = options.fuse ?? 0
  parts.network.connected = input.connected
  begin(run)
  run.storedAtStart = storedEnergy(run)
  return run
}

function newParts(drive: Drive, input: DriveInput, options: WaveOptions): WaveParts {
  const network = newNetwork(drive.circuits[input.setting]!, options.averaged)
  const { isSeries, emfConstant: k } = network.motor
  const flux = isSeries ? k * network.currentSize : k
  return {
    network,
    shaft: newShaft(drive, flux * network.currentSize, network.voltageSize / flux),
    look: newLook(),
    melting: drive.melting,
    primary: drive.primaries[input.setting] ?? null,
  }
}

function newEvents(parts: WaveParts, stepper: Stepper, options: WaveOptions, open: () => void): EventRun {
  const { network, shaft } = parts
  const { sizes } = stepper
  stepper.tolerance = options.tolerance ?? TOLERANCE
  sizes.fill(SMALL * network.currentSize)
  sizes[CAPACITOR] = network.voltageSize
  sizes[SPEED] = SMALL * shaft.speedSize
  const longest = Math.min(options.longest ?? Infinity, longestStep(network))
  return newEventRun(newWaveSystem(parts, longest, open), stepper)
}

/** Puts network and shaft in the modes that the state tells. */
function begin(run: WaveRun): void {
  const { parts, y, events } = run
  startNetwork(parts.network, y)
  settleRun(run)
  events.fresh = true
}

export function settleRun({ parts, drive, input, y, events }: WaveRun): void {
  loadShaft(parts.shaft, drive, input)
  settleParts(parts, y)
  events.fresh = true
}

/** Moves on by some seconds of model time. */
export function advanceRun(run: WaveRun, seconds: number): void {
  advanceTo(run, run.y[TIME]! + seconds)
}

export function advanceTo(run: WaveRun, time: number): void {
  const { y, turns } = run
  advance(run.events, time)
  advanceTurns(turns, (run.input.sense * y[ANGLE]!) / TURN)
  y[ANGLE] = 0
}

/** Changes what a person sets, at this moment of the run. */
export function changeInput(run: WaveRun, change: Partial<DriveInput>): void {
  const before = run.input
  const input = { ...before, ...change }
  run.input = input
  if (input.sense !== before.sense) turnPoles(run)
  if (input.setting !== before.setting) changeSetting(run)
  const isLive = input.connected && !run.isOpen
  if (isLive && !run.parts.network.connected) connect(run.parts.network)
  else if (!isLive && run.parts.network.connected) breakContact(run)
  settleRun(run)
}

/** From tap to tap the contact opens: the source's current ends in its arc, and the motor's runs on in the legs. */
function changeSetting(run: WaveRun): void {
  const before = storedEnergy(run)
  const { connected, circuit } = run.parts.network
  run.parts = newParts(run.drive, run.input, run.options)
  run.parts.network.connected = connected
  run.events = newEvents(run.parts, run.events.stepper, run.options, () => melt(run))
  if (run.parts.network.circuit.source.emf !== circuit.source.emf) run.y[SOURCE] = 0
  begin(run)
  leaveInArc(run, before)
}

/** The poles are changed at the motor itself, whose current ends in the arc of the contacts. */
function turnPoles(run: WaveRun): void {
  const { y } = run
  const before = storedEnergy(run)
  y[MOTOR] = 0
  if (run.parts.network.feed === 'series') y[SOURCE] = 0
  y[SPEED] = -y[SPEED]!
  startNetwork(run.parts.network, y)
  leaveInArc(run, before)
}

function melt(run: WaveRun): void {
  run.isOpen = true
  breakContact(run)
}

/** What a current without another way leaves behind goes into the arc. */
function breakContact(run: WaveRun): void {
  const before = storedEnergy(run)
  disconnect(run.parts.network, run.y)
  leaveInArc(run, before)
}

/** Counts as lost what was stored before and is no longer. */
function leaveInArc(run: WaveRun, before: number): void {
  const lost = before - storedEnergy(run)
  run.y[ARC]! += lost
  run.y[STORED]! -= lost
}

/** In inductances, capacitor and turning masses, from the state alone [J] */
export function storedEnergy({ parts, y }: WaveRun): number {
  const { network, shaft, look } = parts
  lookAt(look, network, y)
  const inertia = shaft.rotorInertia + (2 * shaft.wheelInertia) / (shaft.ratio * shaft.ratio)
  return (
    fieldEnergy(network, y[MOTOR]!) +
    (network.sourceInductance * look.source ** 2 +
      network.circuit.capacitance * y[CAPACITOR]! ** 2 +
      inertia * y[SPEED]! ** 2) /
      2
  )
}

/** Speed about +z [rad/s] */
export const speedOf = (run: WaveRun): number => run.input.sense * run.y[SPEED]!

/** Sense of source voltage and current against the frame of the present half cycle. */
export const frameSign = (network: WaveNetwork): 1 | -1 =>
  network.turnsOver && network.count % 2 !== 0 ? -1 : 1
