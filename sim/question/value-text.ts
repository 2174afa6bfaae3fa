/** Numbers and quantities as sentences print them. */
import type { AnswerUnit } from './family.ts'

/** At most this many significant digits, none in vain; a true minus; no powers of ten between 1e-6 and 1e7. */
export function numberText(value: number, digits = 5): string {
  const text = String(Number(value.toPrecision(digits)))
  return text.replaceAll('-', '−')
}

const QUARTERS: Readonly<Record<number, string>> = { 0.25: '1/4', 0.5: '1/2', 0.75: '3/4' }

/** Quarters as people write them: '1/4', '1 1/2', '3'; any other number as it is printed. */
export function fractionText(count: number): string {
  const whole = Math.floor(count)
  const quarters = QUARTERS[count - whole]
  if (quarters === undefined) return numberText(count)
  return whole === 0 ? quarters : `${whole} ${quarters}`
}

const SIGNS: Readonly<Record<AnswerUnit, string>> = {
  turn: ' turns',
  deg: '°',
  '1': '',
  'r/min': ' r/min',
  A: ' A',
  'N m': ' N m',
  W: ' W',
  N: ' N',
  V: ' V',
  degC: ' °C',
  '%': ' %',
  d: ' days',
  s: ' s',
  mm: ' mm',
}

/** '13.333 turns', '1 turn', '9°'. */
export function valueText(value: number, unit: AnswerUnit, digits = 5): string {
  const number = numberText(value, digits)
  if (number === '1' && unit === 'turn') return '1 turn'
  if (number === '1' && unit === 'd') return '1 day'
  return number + SIGNS[unit]
}

/** '1 start', '3 starts' */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${numberText(count)} ${count === 1 ? one : many}`
