import { solveBridge } from '../electric/bridge.ts'
import { solveChopper } from '../electric/chopper.ts'
import type { Circuit, MagnetWinding } from '../electric/circuit.ts'
import type { CycleTable } from '../electric/cycle-table.ts'
import { lookUpCycle, solveTabulated } from '../electric/cycle-table.ts'
import { circulate, clearCycle } from '../electric/cycle.ts'
import type { CapacitorLink } from './capacitor-link.ts'
import { runOnCapacitor } from './capacitor.ts'
import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import type { Work } from './work.ts'

/**
 * Sets work.torque to the mean motor torque at work.speed, and work.cycle to the currents behind it, where the
 * supply reaches the drive or not.
 */
export function solveTorque(drive: Drive, input: DriveInput): void {
  const { work } = drive
  if (work.held) return
  const circuit = drive.circuits[input.setting]
  work.capacitorPower = 0
  if (!circuit) clearCycle(work.cycle)
  else if (work.live) solveFed(drive, input.setting, circuit)
  else solveIdle(work, circuit, drive.capacitorLinks[input.setting] ?? null)
  work.torque = work.cycle.torque
}

function solveFed(drive: Drive, setting: number, circuit: Circuit): void {
  const { work } = drive
  const { cycle } = work
  const bridge = drive.bridges[setting]
  const chopper = drive.choppers[setting]
  const table = drive.tables[setting]
  if (table) solveWithTable(work, table)
  else if (circuit.winding.kind === 'permanent-magnet') {
    oppose(work, circuit.winding)
    if (bridge) solveBridge(cycle, bridge, work.bridge)
    else if (chopper) solveChopper(cycle, chopper)
    finish(work, circuit.winding)
  }
}

function solveWithTable({ cycle, exact, speed }: Work, table: CycleTable): void {
  table.speed = speed
  if (exact) solveTabulated(cycle, table)
  else lookUpCycle(cycle, table)
}

/**
 * Without a source: a charged capacitor drives the motor, and a motor with magnets that is turned the wrong way
 * drives a current through the diodes. A series motor without a source has no field.
 */
function solveIdle(work: Work, circuit: Circuit, link: CapacitorLink | null): void {
  const { cycle } = work
  const { winding, rectifier, chopper } = circuit
  clearCycle(cycle)
  if (winding.kind !== 'permanent-magnet') return
  oppose(work, winding)
  if (link && work.capacitorVoltage > 0) runOnCapacitor(work, link)
  else if (rectifier === 'bridge' || rectifier === 'half-wave-freewheel') {
    cycle.opposing += circuit.diodeDrops
    circulate(cycle, winding)
    cycle.rectifiedMean = cycle.mean
  } else if (chopper) {
    cycle.opposing += chopper.freewheelDrop
    circulate(cycle, winding)
    cycle.freewheelMean = cycle.mean
  }
  finish(work, winding)
}

function oppose({ cycle, speed }: Work, winding: MagnetWinding): void {
  cycle.opposing = winding.emfConstant * speed + winding.brushDrop
}

function finish({ cycle, speed }: Work, winding: MagnetWinding): void {
  const brushes = winding.brushDrop * cycle.conducting
  cycle.torque = winding.emfConstant * cycle.mean
  cycle.motorVoltage = winding.emfConstant * speed + winding.resistance * cycle.mean + brushes
}
