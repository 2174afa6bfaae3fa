/** What is to be printed, as plain data that can be sent to a worker. */
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'
import { wheelBody } from '../../sim/shape/body.ts'

export type What = 'worm' | 'wheel' | 'set'
export type Fineness = 'print' | 'display'
export type MeshFormat = 'stl' | '3mf'

export interface PrintOrder {
  readonly machineName: string
  /** Of the print: its own backlash, bore and thinned part */
  readonly gearing: GearNumbers
  readonly what: What
  readonly fineness: Fineness
}

export interface PrintChanges {
  /** Axial backlash [mm] */
  readonly clearance: number
  /** [mm] */
  readonly bore: number
  readonly thinned: GearNumbers['thinned']
}

/** Usual for filament printing, from 0.15 to 0.3 mm (common practice). */
const USUAL_CLEARANCE = 0.2

/** The smallest is the machine's own backlash, the largest an eighth of the axial pitch (our choice). */
export function clearanceLimits(gearing: GearNumbers): { readonly min: number; readonly max: number } {
  const min = gearing.backlash
  return { min, max: Math.max(min, pairProportions(gearing).axialPitch / 8) }
}

/** Walls thinner than this, between bore and rim, do not print well [mm] (common practice). */
const THINNEST_RING = 1
/** The widest bore that is drawn, as a part of the rim (see body.ts). */
const WIDEST_BORE = 0.8
const LEAST_BORE = 0.5

export function boreLimits(gearing: GearNumbers): { readonly min: number; readonly max: number } {
  const { rimRadius } = wheelBody(gearing)
  const widest = 2 * Math.min(rimRadius - THINNEST_RING, WIDEST_BORE * rimRadius)
  return { min: LEAST_BORE, max: Math.max(LEAST_BORE, Math.floor(10 * widest) / 10) }
}

const within = (value: number, { min, max }: { readonly min: number; readonly max: number }): number =>
  Math.min(max, Math.max(min, value))

/** What a machine is printed with until somebody chooses otherwise. */
export const firstChanges = (gearing: GearNumbers): PrintChanges => chosenChanges(gearing, {})

/** What was chosen, kept inside what this machine allows. */
export const chosenChanges = (gearing: GearNumbers, wanted: Partial<PrintChanges>): PrintChanges => ({
  clearance: within(wanted.clearance ?? USUAL_CLEARANCE, clearanceLimits(gearing)),
  bore: within(wanted.bore ?? gearing.boreDiameter, boreLimits(gearing)),
  thinned: wanted.thinned ?? gearing.thinned,
})

export const printGearing = (
  gearing: GearNumbers,
  { clearance, bore, thinned }: PrintChanges,
): GearNumbers => ({
  ...gearing,
  backlash: clearance,
  boreDiameter: bore,
  thinned,
})
