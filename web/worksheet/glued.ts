/** Numbers that stay with their units, wherever a line ends. */
const FIXED = '\u00a0'
const SIGNS = ['N m', 'N', '%', 'r/min', 'V', 'A', 'W', 'K', '°C', 'mm', 'kΩ', 'Ω', 'µF', 'Hz', 's', 'min']
const COUNTED = ['turns?', 'tooth', 'teeth', 'starts?', 'days?', 'hours?', 'seconds?']
const UNITS = [...SIGNS, ...COUNTED]
const NUMBER_AND_UNIT = new RegExp(String.raw`(\d) (${UNITS.join('|')})(?![\w/])`, 'g')

export const glued = (text: string): string =>
  text.replaceAll(
    NUMBER_AND_UNIT,
    (_, digit: string, unit: string) => digit + FIXED + unit.replace(' ', FIXED),
  )
