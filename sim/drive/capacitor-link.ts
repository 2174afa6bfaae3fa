import type { Circuit, MagnetWinding } from '../electric/circuit.ts'

/**
 * What a smoothing capacitor that the supply has left drives, by itself or through a chopper, which counts as a
 * transformer of direct current.
 */
export interface CapacitorLink {
  /** [F] */
  readonly capacitance: number
  /** [ohm] */
  readonly bleedResistance: number
  readonly winding: MagnetWinding
  /** Voltage at the motor over that of the capacitor, and current out of it over that of the motor */
  readonly ratio: number
  /** Mean drop of switch and freewheel diode [V] */
  readonly drops: number
  /** The motor's current is in the switch, and in the diode, for these parts of the time; 0 without a chopper */
  readonly switchPart: number
  readonly freewheelPart: number
  /** Whether a motor that coasts faster can charge the capacitor */
  readonly isTwoWay: boolean
}

/** Null where there is no capacitor, or no magnet that keeps an emf. */
export function capacitorLinkOf(circuit: Circuit): CapacitorLink | null {
  const { capacitance, bleedResistance, winding, chopper } = circuit
  if (capacitance === 0 || winding.kind !== 'permanent-magnet') return null
  const common = { capacitance, bleedResistance, winding }
  if (!chopper) return { ...common, ratio: 1, drops: 0, switchPart: 0, freewheelPart: 0, isTwoWay: true }
  const { duty } = chopper
  // With a duty of 1 a relay bridges the switch.
  const switchPart = duty < 1 ? duty : 0
  const freewheelPart = 1 - duty
  const drops = switchPart * chopper.switchDrop + freewheelPart * chopper.freewheelDrop
  return { ...common, ratio: duty, drops, switchPart, freewheelPart, isTwoWay: false }
}
