/** Numbers as they are shown: rounded to what is known, in the unit that the trade reads, never 'NaN'. */
import type { Machine } from '../../sim/machine/machine.ts'

export type Unit =
  | 'r/min'
  | 'rad/s'
  | 'N m'
  | 'N'
  | 'W'
  | 'VA'
  | 'V'
  | 'A'
  | 'Hz'
  | '%'
  | '°'
  | 'm'
  | 'm/s'
  | 'mm'
  | 'Ω'
  | 'kg m²'
  | 'mH'
  | 'V s/rad'
  | 'V s/(rad A)'
  | '%/K'
  | '°C'
  | 'N m s/rad'
  | 'N m s²/rad²'
  | ''

/** Shown where there is no number. */
export const NOTHING = '–'

const MINUS = '−'
const GROUP_SPACE = '\u202f'
const LEAST_WRITTEN_OUT = 1e-5
const MOST_WRITTEN_OUT = 1e9

/** Digits that are known: speeds and counts follow exactly from each other, the rest rests on indicative data. */
const DIGITS: Partial<Record<Unit, number>> = { 'r/min': 4, 'rad/s': 4, V: 4, Hz: 4 }
const USUAL_DIGITS = 3

/** A size below this is rounding, not a reading. */
const LEAST = 1e-9

const grouped = (text: string): string => {
  const [whole = '', part] = text.split('.')
  if (whole.length < 5) return text
  const groups = whole.replace(/(?=(\d{3})+$)(?<!^)/g, GROUP_SPACE)
  return part === undefined ? groups : `${groups}.${part}`
}

/** The number to so many significant digits, with a true minus; zeros are kept, so that a column keeps its width. */
export function figure(value: number, digits: number = USUAL_DIGITS): string {
  if (!Number.isFinite(value)) return NOTHING
  const size = Math.abs(value)
  if (size < LEAST) return '0'
  const rounded = Number(size.toPrecision(digits))
  if (rounded < LEAST_WRITTEN_OUT || rounded >= MOST_WRITTEN_OUT)
    return raisedTen(value.toExponential(digits - 1)).replace('-', MINUS)
  const decimals = digits - 1 - Math.floor(Math.log10(rounded))
  const text = rounded.toFixed(Math.max(0, decimals))
  return `${value < 0 ? MINUS : ''}${grouped(text)}`
}

const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹'

/** '2.2e-8' is written 2.2 × 10⁻⁸. */
function raisedTen(text: string): string {
  const [factor = '', exponent] = text.split('e')
  if (exponent === undefined) return text
  const raised = exponent
    .replace('+', '')
    .replace('-', '⁻')
    .replace(/\d/g, (digit) => RAISED[Number(digit)] ?? '')
  return `${factor} × 10${raised}`
}

/** The number of a quantity in its unit, to what is known of it, or with some digits more. */
export const figureOf = (value: number, unit: Unit, more = 0): string =>
  figure(value, (DIGITS[unit] ?? USUAL_DIGITS) + more)

/** Number and unit as one text: '5051 r/min', '0.0389 N m', '7.13°'. */
export function quantityText(value: number, unit: Unit): string {
  const number = figureOf(value, unit)
  if (unit === '' || number === NOTHING) return number
  return unit === '°' ? `${number}°` : `${number} ${unit}`
}

/** '43 °C'; temperatures are known to whole degrees at best. */
export function degreeText(value: number): string {
  if (!Number.isFinite(value)) return NOTHING
  const whole = Math.round(value)
  return `${whole < 0 ? MINUS : ''}${Math.abs(whole)} °C`
}

/** A number that somebody set, as they set it: not rounded, without the dust of binary fractions. */
export function givenFigure(value: number): string {
  if (!Number.isFinite(value)) return NOTHING
  const text = grouped(raisedTen(String(Number(Math.abs(value).toPrecision(12)))))
  return value < 0 ? `${MINUS}${text}` : text
}

export function ratioFigure({ gearing }: Machine): string {
  const ratio = gearing.wheelTeeth / gearing.wormStarts
  return Number.isInteger(ratio) ? String(ratio) : ratio.toFixed(2)
}

/** Turns of the worm for one turn of a wheel: '20 : 1', '10.33 : 1'. */
export const ratioText = (machine: Machine): string => `${ratioFigure(machine)} : 1`
