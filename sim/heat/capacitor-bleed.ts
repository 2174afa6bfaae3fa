/** What a capacitor keeps when the machine is unplugged, and how it goes. */

/** Largest voltage at the pins of a plug 1 s after it is pulled [V]. Source: IEC 60335-1, clause 22.5. */
export const PLUG_PIN_LIMIT = 34
/** From what capacitance across the plug that rule holds [F]. Source as above. */
export const PLUG_PIN_CAPACITANCE = 0.1e-6
/** Direct voltage that is harmless to touch in dry surroundings [V]: limit of extra-low voltage, from memory. */
export const EXTRA_LOW_VOLTAGE = 60

/** Stored energy [J]: C V^2/2. */
export const capacitorEnergy = (C: number, V: number): number => (C * V ** 2) / 2

/** Voltage [V] after t [s] through R [ohm]: V e^(-t/(R C)). */
export const bledVoltage = (V: number, t: number, R: number, C: number): number => V * Math.exp(-t / (R * C))

/** Time until a voltage V has bled to `safe` through R [s]: R C ln(V/safe); 0 where it is there already. */
export const bleedTime = (V: number, safe: number, R: number, C: number): number =>
  V <= safe ? 0 : R * C * Math.log(V / safe)

/** Largest R C [s] that brings V down to `safe` within t [s]; Infinity where it is there already. */
export const largestBleedConstant = (V: number, safe: number, t: number): number =>
  V <= safe ? Infinity : t / Math.log(V / safe)
