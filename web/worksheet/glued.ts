/** Numbers that stay with their units, wherever a line ends. */
const FIXED = '\u00a0'
const UNITS = [
  'N m',
  'N',
  '%',
  'r/min',
  'V',
  'A',
  'W',
  'K',
  '°C',
  'mm',
  'kΩ',
  'Ω',
  'µF',
  'Hz',
  's',
  'min',
  'd',
]
const NUMBER_AND_UNIT = new RegExp(String.raw`(\d) (${UNITS.join('|')})(?![\w/])`, 'g')

export const glued = (text: string): string =>
  text.replaceAll(
    NUMBER_AND_UNIT,
    (_, digit: string, unit: string) => digit + FIXED + unit.replace(' ', FIXED),
  )
