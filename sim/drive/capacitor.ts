import type { CapacitorLink } from './capacitor-link.ts'
import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import type { DriveState } from './state.ts'
import type { Work } from './work.ts'

/**
 * Sets the currents of a smoothing capacitor that the supply has left: while its voltage at the motor is above emf and
 * drops, i = (ratio v - drops - E)/R; a motor that coasts faster charges it where nothing hinders that. The winding's
 * inductance is left out, since its current settles within milliseconds.
 */
export function runOnCapacitor(work: Work, link: CapacitorLink): void {
  const { cycle, capacitorVoltage: v } = work
  findSurplus(work, link)
  const current = work.surplus / link.winding.resistance
  cycle.mean = current
  cycle.square = current * current
  cycle.peak = Math.abs(current)
  // Signed, so that the drop of the brushes opposes a current that flows back as well.
  cycle.conducting = Math.sign(current)
  cycle.capacitorMean = v
  cycle.capacitorSquare = v * v
  cycle.switchMean = link.switchPart * current
  cycle.freewheelMean = link.freewheelPart * current
  work.capacitorPower = -link.ratio * v * current - (v * v) / link.bleedResistance
}

/** Sets work.surplus to the voltage that drives the motor's current, negative for one that flows back. */
function findSurplus(work: Work, link: CapacitorLink): void {
  const { emfConstant, brushDrop } = link.winding
  const over = link.ratio * work.capacitorVoltage - link.drops - emfConstant * work.speed
  work.surplus = 0
  if (over > brushDrop) work.surplus = over - brushDrop
  else if (link.isTwoWay && over < -brushDrop) work.surplus = over + brushDrop
}

/** Longest stretch over which capacitor and motor exchange charge at one speed [s]. Our choice. */
const LONGEST = 1e-3

/** Whether a charged capacitor that the supply has left matters to the motion. */
export function isOnCapacitor(drive: Drive, input: DriveInput): boolean {
  const { work, capacitorLinks } = drive
  return !work.live && work.capacitorVoltage > 0 && !!capacitorLinks[input.setting]
}

/**
 * Shortens work.span where it is long and gives the torque its mean over it. Two bodies exchange charge: with d =
 * ratio v - drops - E, C dv = -ratio i dt and J dw = k i dt, d decays with the rate (ratio^2/C + k^2/J)/R, so d (1 -
 * e^(-rate span))/(rate R) passes, exact at any length; derived here. Friction acts on the speed besides.
 */
export function holdCurrent(drive: Drive, input: DriveInput): void {
  const { work } = drive
  const link = drive.capacitorLinks[input.setting]
  if (work.span > LONGEST) work.span = LONGEST
  if (!link) return
  const { ratio, capacitance } = link
  const { emfConstant: k, resistance } = link.winding
  findSurplus(work, link)
  const rate = ((ratio * ratio) / capacitance + (k * k) / drive.leastInertia) / resistance
  const charge = (work.surplus * -Math.expm1(-rate * work.span)) / (rate * resistance)
  work.capacitorCurrent = (ratio * charge) / work.span
  work.torque = (k * charge) / work.span
}

/** Takes from the capacitor what has passed in work.span, to the motor and through the bleed resistor. */
export function discharge(drive: Drive, input: DriveInput): void {
  const { work } = drive
  const link = drive.capacitorLinks[input.setting]
  if (!link) return
  const left = work.capacitorVoltage - (work.capacitorCurrent * work.span) / link.capacitance
  work.capacitorVoltage = 0
  if (left > 0)
    work.capacitorVoltage = left * Math.exp(-work.span / (link.bleedResistance * link.capacitance))
}

/** Keeps in the state what the capacitor holds after a step. */
export function keepCapacitor(state: DriveState, { work }: Drive): void {
  if (work.live) state.capacitorVoltage = work.cycle.capacitorMean
  else state.capacitorVoltage = work.capacitorVoltage
}
