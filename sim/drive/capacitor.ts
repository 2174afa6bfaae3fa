import type { Circuit, MagnetWinding } from '../electric/circuit.ts'
import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import type { DriveState } from './state.ts'
import type { Work } from './work.ts'

/**
 * A smoothing capacitor that the supply has left. It drives the motor through the chopper, which counts as a
 * transformer of direct current: while its voltage d v is above emf and drops, i = (d v - drops - E)/R; a motor
 * that coasts faster charges it where no chopper stands between. The winding's inductance is left out, since
 * its current settles within milliseconds.
 */
export function runOnCapacitor(work: Work, circuit: Circuit, winding: MagnetWinding): void {
  const { cycle, capacitorVoltage: v } = work
  setSurplus(work, circuit, winding)
  const current = work.surplus / winding.resistance
  const ratio = transformed(circuit)
  cycle.mean = current
  cycle.square = current * current
  cycle.peak = Math.abs(current)
  // Signed, so that the drop of the brushes opposes a current that flows back as well.
  cycle.conducting = Math.sign(current)
  cycle.capacitorMean = v
  cycle.capacitorSquare = v * v
  if (circuit.chopper) {
    cycle.switchMean = circuit.chopper.duty < 1 ? ratio * current : 0
    cycle.freewheelMean = (1 - ratio) * current
  }
  work.capacitorPower = -ratio * v * current - (v * v) / circuit.bleedResistance
}

const transformed = ({ chopper }: Circuit): number => chopper?.duty ?? 1

/** Sets work.surplus to the voltage that drives the current through the winding, negative for one that flows back. */
function setSurplus(work: Work, circuit: Circuit, winding: MagnetWinding): void {
  const { chopper } = circuit
  const ratio = transformed(circuit)
  const emf = winding.emfConstant * work.speed
  const switched = chopper && ratio < 1 ? ratio * chopper.switchDrop : 0
  const drops = switched + (1 - ratio) * (chopper?.freewheelDrop ?? 0)
  const over = ratio * work.capacitorVoltage - drops - emf
  work.surplus = 0
  if (over > winding.brushDrop) work.surplus = over - winding.brushDrop
  else if (!chopper && over < -winding.brushDrop) work.surplus = over + winding.brushDrop
}

/** Longest stretch over which capacitor and motor exchange charge at one speed [s]. Our choice. */
const LONGEST = 1e-3

/** Whether a charged capacitor that the supply has left matters to the motion. */
export function isOnCapacitor(drive: Drive, input: DriveInput): boolean {
  const { work } = drive
  const circuit = drive.circuits[input.setting]
  return !work.live && work.capacitorVoltage > 0 && (circuit?.capacitance ?? 0) > 0
}

/**
 * Shortens work.span where it is long and gives the torque its mean over it. Two bodies exchange charge: with d =
 * ratio v - drops - E, C dv = -ratio i dt and J dw = k i dt, d decays with the rate (ratio^2/C + k^2/J)/R, so d (1 -
 * e^(-rate span))/(rate R) passes, exact at any length; derived here. Friction acts on the speed besides.
 */
export function holdCurrent(drive: Drive, input: DriveInput): void {
  const { work } = drive
  const circuit = drive.circuits[input.setting]
  if (work.span > LONGEST) work.span = LONGEST
  if (circuit?.winding.kind !== 'permanent-magnet') return
  const { winding, capacitance } = circuit
  const { emfConstant: k, resistance } = winding
  setSurplus(work, circuit, winding)
  const ratio = transformed(circuit)
  const rate = ((ratio * ratio) / capacitance + (k * k) / drive.leastInertia) / resistance
  const charge = (work.surplus * -Math.expm1(-rate * work.span)) / (rate * resistance)
  work.capacitorCurrent = (ratio * charge) / work.span
  work.torque = (k * charge) / work.span
}

/** Takes from the capacitor what has passed in work.span, to the motor and through the bleed resistor. */
export function discharge(drive: Drive, input: DriveInput): void {
  const { work } = drive
  const circuit = drive.circuits[input.setting]
  if (!circuit) return
  const { capacitance, bleedResistance } = circuit
  const left = work.capacitorVoltage - (work.capacitorCurrent * work.span) / capacitance
  work.capacitorVoltage = Math.max(0, left) * Math.exp(-work.span / (bleedResistance * capacitance))
}

/** Keeps in the state what the capacitor holds after a step. */
export function keepCapacitor(state: DriveState, { work }: Drive): void {
  state.capacitorVoltage = work.live ? work.cycle.capacitorMean : work.capacitorVoltage
}
