/** What a winding's insulation bears. */

export type InsulationClass = 'A' | 'E' | 'B' | 'F' | 'H' | 'N'

/** Temperature of each class [degC], coolest first. Source: IEC 60085:2007. */
export const CLASS_TEMPERATURE: Readonly<Record<InsulationClass, number>> = {
  A: 105,
  E: 120,
  B: 130,
  F: 155,
  H: 180,
  N: 200,
}

/** Rise by resistance above air of 40 degC that rotating machines may reach [K]. Source: IEC 60034-1. */
export const ROTATING_MACHINE_RISE = { A: 60, E: 75, B: 80, F: 105, H: 125 } as const

/** Rise by resistance that windings of household appliances may reach [K]. Source: IEC 60335-1, Table 3, from memory. */
export const APPLIANCE_RISE = { A: 75, E: 90, B: 95, F: 115, H: 140 } as const

/** How far below its class a winding begins to be called hot [K]; chosen here. */
export const AMBER_MARGIN = 15

export type HeatLevel = 'cool' | 'amber' | 'red'

/** How a winding whose hottest spot is at T [degC] stands to its class. */
export function heatLevel(T: number, insulation: InsulationClass): HeatLevel {
  const limit = CLASS_TEMPERATURE[insulation]
  if (T >= limit) return 'red'
  return T >= limit - AMBER_MARGIN ? 'amber' : 'cool'
}

/** Hottest spot [degC] of a winding whose mean, which its resistance tells, is T. */
export const hotSpot = (T: number, margin: number): number => T + margin

const HALVING = 10 // [K]

/**
 * Life over that at the class temperature: halved for each 10 K above it, doubled below. A rule of thumb, no law.
 * Source: I. L. Kosow, Electric Machinery and Transformers, 2nd ed., chapter 13.
 */
export const lifeFactor = (T: number, insulation: InsulationClass): number =>
  2 ** ((CLASS_TEMPERATURE[insulation] - T) / HALVING)

/**
 * Temperature at another load [degC], the rise above the air in step with the load: a rule of thumb (Kosow, as above);
 * the heat of copper goes with the square of the current.
 *
 * T, Ta - at the rated load, and of the air [degC]
 * part  - load over rated load
 */
export const temperatureAtLoad = (T: number, Ta: number, part: number): number => Ta + (T - Ta) * part
