import type { Circuit } from '../electric/circuit.ts'
import type { CurrentCycle } from '../electric/cycle.ts'
import { solvePrimary } from '../electric/transformer.ts'
import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'

/** The part of a reading from the wall to the motor's brushes, as period means; signs as in `Reading`. */
export interface ElectricReading {
  /** Motor current [A] */
  currentMean: number
  currentRms: number
  currentPeak: number
  /** At the brushes: mean of a direct voltage, r.m.s. of an alternating one [V] */
  motorVoltage: number
  /** Across the smoothing capacitor: mean, and from least to most [V]; 0 without one */
  capacitorVoltage: number
  capacitorRipple: number
  /** Taken from secondary, line, battery or hand [W] */
  inputPower: number
  /** At the wall plug, or battery, also while unplugged [V] */
  wallVoltage: number
  /** 0 for direct current [Hz] */
  wallFrequency: number
  /** r.m.s. from the mains, mean from a battery [A] */
  wallCurrent: number
  /** [W] */
  wallPower: number
  /** [V A] */
  apparentPower: number
  powerFactor: number
  /**
   * The ledger [W]: what the input turns into, in the order of the power's way, as far as the motor's brushes
   */
  coreLoss: number
  sourceResistanceLoss: number
  diodeLoss: number
  bleedLoss: number
  switchLoss: number
  copperLoss: number
  brushLoss: number
  /** Whether the current limit holds the current back */
  isLimited: boolean
}

export const newElectricReading = (): ElectricReading => ({
  currentMean: 0,
  currentRms: 0,
  currentPeak: 0,
  motorVoltage: 0,
  capacitorVoltage: 0,
  capacitorRipple: 0,
  inputPower: 0,
  wallVoltage: 0,
  wallFrequency: 0,
  wallCurrent: 0,
  wallPower: 0,
  apparentPower: 0,
  powerFactor: 0,
  coreLoss: 0,
  sourceResistanceLoss: 0,
  diodeLoss: 0,
  bleedLoss: 0,
  switchLoss: 0,
  copperLoss: 0,
  brushLoss: 0,
  isLimited: false,
})

/** A crest at the limit, but for what solving it leaves */
const AT_LIMIT = 1 - 1e-6

/** Fills the electrical part from work.speed, work.torque and work.cycle. */
export function readElectrics(out: ElectricReading, drive: Drive, input: DriveInput): void {
  const { cycle, speed, torque } = drive.work
  const circuit = drive.circuits[input.setting]
  out.currentMean = cycle.mean
  out.currentRms = Math.sqrt(cycle.square)
  out.currentPeak = cycle.peak
  out.motorVoltage = cycle.motorVoltage
  out.capacitorVoltage = cycle.capacitorMean
  out.capacitorRipple = cycle.capacitorRipple
  out.inputPower = drive.crankSpeeds.length > 0 && input.connected ? torque * speed : cycle.sourcePower
  if (circuit) readCircuit(out, circuit, cycle)
  else clearCircuit(out)
  readWall(out, drive, input)
}

function readCircuit(out: ElectricReading, circuit: Circuit, cycle: CurrentCycle): void {
  const { source, winding, chopper, triac } = circuit
  const freewheelDrop = chopper ? chopper.freewheelDrop : 0
  const switchDrop = chopper ? chopper.switchDrop : triac ? triac.drop : 0
  out.sourceResistanceLoss = source.resistance * cycle.sourceSquare
  out.diodeLoss = circuit.diodeDrops * cycle.rectifiedMean + freewheelDrop * cycle.freewheelMean
  out.bleedLoss = cycle.capacitorSquare / circuit.bleedResistance
  out.switchLoss = switchDrop * cycle.switchMean
  out.copperLoss = winding.resistance * cycle.square
  out.brushLoss = winding.brushDrop * (Math.abs(cycle.mean) + cycle.reversal)
  out.isLimited = chopper !== null && cycle.peak >= AT_LIMIT * chopper.currentLimit
}

function clearCircuit(out: ElectricReading): void {
  out.sourceResistanceLoss = 0
  out.diodeLoss = 0
  out.bleedLoss = 0
  out.switchLoss = 0
  out.copperLoss = 0
  out.brushLoss = 0
  out.isLimited = false
}

/** Sets the current on the mains side where a transformer stands and the supply reaches it. */
export function readPrimary(drive: Drive, input: DriveInput): void {
  const primary = drive.primaries[input.setting]
  if (primary && drive.work.live) solvePrimary(drive.work.cycle, primary)
}

function readWall(out: ElectricReading, drive: Drive, input: DriveInput): void {
  const { cycle, live } = drive.work
  const primary = drive.primaries[input.setting]
  out.wallVoltage = drive.supplyVoltage
  out.wallFrequency = drive.supplyFrequency
  out.coreLoss = 0
  out.wallCurrent = drive.supplyFrequency > 0 ? Math.sqrt(cycle.sourceSquare) : cycle.sourceMean
  if (primary && live) {
    readPrimary(drive, input)
    out.coreLoss = drive.supplyVoltage * primary.coreCurrent
    out.wallCurrent = cycle.primary
  }
  out.wallPower = drive.supplyVoltage > 0 ? out.inputPower + out.coreLoss : 0
  out.apparentPower = out.wallVoltage * out.wallCurrent
  out.powerFactor = out.apparentPower === 0 ? 0 : out.wallPower / out.apparentPower
}
