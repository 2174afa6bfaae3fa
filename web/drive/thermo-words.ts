/** What a thermometer without contact says of the case, and the sentences about it. */
import { ZERO_CELSIUS } from '../../sim/heat/surface.ts'
import { type SurfaceKind, surfaceTemperature, thermometerReading } from '../../sim/heat/thermometer.ts'
import { degreeText } from '../instrument/reading-text.ts'

/** As set, temperatures in degC. */
export interface ThermoSetting {
  readonly emissivity: number
  readonly setting: number
  /** What the surface mirrors */
  readonly surroundings: number
}

const sightOf = ({ emissivity, setting, surroundings }: ThermoSetting) => ({
  emissivity,
  setting,
  reflected: surroundings + ZERO_CELSIUS,
})

/** Shown for a surface at T [degC] */
export const shownFor = (T: number, thermo: ThermoSetting): number =>
  thermometerReading(T + ZERO_CELSIUS, sightOf(thermo)) - ZERO_CELSIUS

/** The surface behind a reading [degC]; NaN where no surface would give it */
export const behindReading = (reading: number, thermo: ThermoSetting): number =>
  surfaceTemperature(reading + ZERO_CELSIUS, sightOf(thermo)) - ZERO_CELSIUS

/** The middle of what is usual for a surface, in hundredths */
export const usualEmissivity = ({ least, most }: SurfaceKind): number =>
  Math.round(100 * ((least + most) / 2)) / 100

export const rangeText = ({ least, most }: SurfaceKind): string =>
  least === most ? `${least}` : `${least} to ${most}`

/** A reading this near is as good as such an instrument is [K]. Our choice. */
const TRUE_ENOUGH = 1.5

/** What is seen, then why. */
export function fooledWords(T: number, thermo: ThermoSetting): string {
  const shown = shownFor(T, thermo)
  const off = Math.round(Math.abs(shown - T))
  const seen = `The case is at ${degreeText(T)}; the thermometer shows ${degreeText(shown)}`
  if (Math.abs(shown - T) < TRUE_ENOUGH) return `${seen}.`
  const percent = Math.round(100 * thermo.emissivity)
  return shown < T
    ? `${seen}, ${off} K too little. The surface gives off only ${percent} % of what a black one would, and mirrors the cooler surroundings.`
    : `${seen}, ${off} K too much. It is set for less than the surface gives off, or the surface mirrors something warmer.`
}

export function behindWords(reading: number, thermo: ThermoSetting): string {
  const T = behindReading(reading, thermo)
  return Number.isFinite(T)
    ? `Behind a reading of ${degreeText(reading)} is a surface at ${degreeText(T)}.`
    : `No surface with this emissivity, among such surroundings, would show ${degreeText(reading)}.`
}
