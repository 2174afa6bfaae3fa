import type { BridgeCircuit } from '../electric/bridge-circuit.ts'
import type { ChopperCircuit } from '../electric/chopper.ts'
import { solvePrimary } from '../electric/transformer.ts'
import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'

/** The part of a reading from the wall to the motor's brushes, as period means; signs as in `Reading`. */
export interface ElectricReading {
  /** Motor current [A] */
  currentMean: number
  currentRms: number
  /** Mean at the brushes [V] */
  motorVoltage: number
  /** Taken from secondary, battery or hand [W] */
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
  switchLoss: number
  copperLoss: number
  brushLoss: number
}

export const newElectricReading = (): ElectricReading => ({
  currentMean: 0,
  currentRms: 0,
  motorVoltage: 0,
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
  switchLoss: 0,
  copperLoss: 0,
  brushLoss: 0,
})

/** Fills the electrical part from work.speed, work.torque and work.cycle. */
export function readElectrics(out: ElectricReading, drive: Drive, input: DriveInput): void {
  const { cycle, speed, torque } = drive.work
  const bridge = drive.bridges[input.setting]
  const chopper = drive.choppers[input.setting]
  out.currentMean = cycle.mean
  out.currentRms = Math.sqrt(cycle.square)
  out.brushLoss = drive.brushDrop * cycle.mean
  out.motorVoltage = drive.emfConstant * speed + drive.brushDrop * cycle.conducting
  out.sourceResistanceLoss = 0
  out.copperLoss = 0
  out.diodeLoss = 0
  out.switchLoss = 0
  out.inputPower = cycle.sourcePower
  if (bridge) {
    readCircuit(out, drive, bridge)
    out.diodeLoss = bridge.diodeDrops * cycle.mean
  } else if (chopper) {
    readCircuit(out, drive, chopper)
    out.diodeLoss = chopper.freewheelDrop * cycle.freewheelMean
    if (chopper.duty < 1) out.switchLoss = chopper.switchDrop * cycle.sourceMean
  } else if (drive.crankSpeeds.length > 0 && input.connected) out.inputPower = torque * speed
  readWall(out, drive, input)
}

function readCircuit(out: ElectricReading, drive: Drive, circuit: BridgeCircuit | ChopperCircuit): void {
  const { cycle } = drive.work
  out.motorVoltage += circuit.motorResistance * cycle.mean
  out.sourceResistanceLoss = circuit.sourceResistance * cycle.sourceSquare
  out.copperLoss = circuit.motorResistance * cycle.square
}

function readWall(out: ElectricReading, drive: Drive, input: DriveInput): void {
  const { cycle } = drive.work
  const primary = drive.primaries[input.setting]
  out.wallVoltage = drive.supplyVoltage
  out.wallFrequency = drive.supplyFrequency
  out.coreLoss = 0
  out.wallCurrent = cycle.sourceMean
  if (primary && input.connected) {
    solvePrimary(cycle, primary)
    out.coreLoss = drive.supplyVoltage * primary.coreCurrent
    out.wallCurrent = cycle.primary
  }
  out.wallPower = drive.supplyVoltage > 0 ? out.inputPower + out.coreLoss : 0
  out.apparentPower = out.wallVoltage * out.wallCurrent
  out.powerFactor = out.apparentPower === 0 ? 0 : out.wallPower / out.apparentPower
}
