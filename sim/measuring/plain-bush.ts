/** Pressure and sliding of a shaft in a plain bush. R. L. Mott, Machine Elements in Mechanical Design, chapter 16. */
import { MINUTE } from '../quantity/constants.ts'

/** Mean pressure F/(d L) on the projected area [Pa]; F [N], d, L [m], > 0. */
export const bushPressure = (F: number, d: number, L: number): number => F / (d * L)

const POUND_FORCE = 4.4482216152605 // [N]
const INCH = 0.0254 // [m]
const FOOT = 0.3048 // [m]

/** One psi ft/min [Pa m/s] */
export const PSI_FPM = (POUND_FORCE / INCH ** 2) * (FOOT / MINUTE)

/** Largest pressure times speed, boundary lubrication at room temperature [Pa m/s]. Mott, Table 16-1. */
export const PV_LIMITS = {
  porousBronzeOiled: 50_000 * PSI_FPM,
  nylon: 3000 * PSI_FPM,
  highTinBabbitt: 30_000 * PSI_FPM,
} as const
