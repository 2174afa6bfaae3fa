/**
 * What an infrared thermometer shows, as one that takes in all radiation of a grey surface. Instruments that see only a
 * band of it deviate: an order of magnitude. Source: radiometric balance, D. P. DeWitt & G. D. Nutter, Theory and
 * Practice of Radiation Thermometry; from memory.
 */

/** What an infrared thermometer looks at, and how it is set. */
export interface Sight {
  /** Emissivity of the surface, in (0, 1] */
  readonly emissivity: number
  /** Emissivity that the instrument is set to, in (0, 1] */
  readonly setting: number
  /** What the surface mirrors [K] */
  readonly reflected: number
}

/** Reading [K] on a surface at T [K]: Tread^4 = [eps T^4 + (1 - eps) Tr^4 - (1 - eset) Tr^4]/eset, not below 0. */
export function thermometerReading(T: number, { emissivity, setting, reflected }: Sight): number {
  const mirrored = (setting - emissivity) * reflected ** 4
  return Math.max(0, (emissivity * T ** 4 + mirrored) / setting) ** 0.25
}

/** The surface's own temperature [K] behind a reading [K]; NaN where no surface would give that reading. */
export function surfaceTemperature(reading: number, { emissivity, setting, reflected }: Sight): number {
  const mirrored = (setting - emissivity) * reflected ** 4
  return ((setting * reading ** 4 - mirrored) / emissivity) ** 0.25
}

/** A kind of surface with the emissivities that are usual for it. */
export interface SurfaceKind {
  readonly name: string
  readonly least: number
  readonly most: number
}

/**
 * Emissivities for infrared readings. The first three rows are in manuals of such instruments; the others are from
 * memory of the table of Incropera and others, Fundamentals of Heat and Mass Transfer.
 */
export const SURFACE_KINDS: readonly SurfaceKind[] = [
  { name: 'Matt paint, tape or heavily oxidised metal', least: 0.95, most: 0.95 },
  { name: 'Oxidised aluminium', least: 0.11, most: 0.19 },
  { name: 'Polished aluminium or foil', least: 0.04, most: 0.04 },
  { name: 'Nylon and other plastics', least: 0.9, most: 0.95 },
  { name: 'Oxidised steel', least: 0.7, most: 0.9 },
  { name: 'Bare copper', least: 0.03, most: 0.07 },
]
