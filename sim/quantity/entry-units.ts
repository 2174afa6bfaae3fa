/** Units that may stand behind an answer: how they are written, what kind they are of, how they compare. */

export interface Unit {
  readonly kind: string
  /** In the smallest unit of its kind that the table has */
  readonly size: number
  /** As sentences name it */
  readonly words: string
}

interface Row extends Unit {
  readonly names: readonly string[]
}

const TURN_NAMES = ['turn', 'turns', 'rev', 'revs', 'revolution', 'revolutions', 'rotation', 'rotations']
const WHOSE = ['worm', 'wheel', 'full', 'whole']
const PER_MINUTE = ['r', 'rev', 'revs', 'turn', 'turns', 'revolutions', ''].map((name) => `${name}/min`)
const PER_SECOND = ['r', 'rev', 'revs', 'turn', 'turns', 'revolutions'].map((name) => `${name}/s`)

const NEWTON_METRES = ['metre', 'metres', 'meter', 'meters'].map((length) => `newton ${length}`)

/** [deg] */
const RADIAN = 180 / Math.PI

const ROWS: readonly Row[] = [
  {
    kind: 'angle',
    size: 360,
    words: 'turns',
    names: [...TURN_NAMES, ...WHOSE.flatMap((whose) => [`${whose} turn`, `${whose} turns`])],
  },
  { kind: 'angle', size: 1, words: 'degrees', names: ['deg', 'degs', 'degree', 'degrees'] },
  { kind: 'angle', size: RADIAN, words: 'radians', names: ['rad', 'radian', 'radians'] },
  { kind: 'speed', size: 6, words: 'r/min', names: ['rpm', ...PER_MINUTE] },
  { kind: 'speed', size: 360, words: 'turns a second', names: PER_SECOND },
  { kind: 'speed', size: 360, words: 'hertz', names: ['Hz'] },
  { kind: 'speed', size: RADIAN, words: 'radians a second', names: ['rad/s'] },
  { kind: 'speed', size: 1, words: 'degrees a second', names: ['deg/s'] },
  { kind: 'torque', size: 1000, words: 'newton metres', names: ['N m', 'N*m', 'Nm', ...NEWTON_METRES] },
  { kind: 'torque', size: 1, words: 'millinewton metres', names: ['mN m', 'mN*m', 'mNm'] },
  { kind: 'torque', size: 10, words: 'newton centimetres', names: ['N cm', 'N*cm', 'Ncm'] },
  { kind: 'torque', size: 1, words: 'newton millimetres', names: ['N mm', 'N*mm', 'Nmm'] },
  { kind: 'power', size: 1000, words: 'watts', names: ['W', 'watt', 'watts'] },
  { kind: 'power', size: 1, words: 'milliwatts', names: ['mW'] },
  { kind: 'power', size: 1e6, words: 'kilowatts', names: ['kW'] },
  { kind: 'force', size: 1, words: 'newtons', names: ['N', 'newton', 'newtons'] },
  { kind: 'force', size: 1000, words: 'kilonewtons', names: ['kN'] },
  { kind: 'voltage', size: 1000, words: 'volts', names: ['V', 'volt', 'volts'] },
  { kind: 'voltage', size: 1, words: 'millivolts', names: ['mV'] },
  { kind: 'voltage', size: 1e6, words: 'kilovolts', names: ['kV'] },
  { kind: 'current', size: 1000, words: 'amperes', names: ['A', 'amp', 'amps', 'ampere', 'amperes'] },
  { kind: 'current', size: 1, words: 'milliamperes', names: ['mA'] },
  { kind: 'length', size: 1, words: 'millimetres', names: ['mm'] },
  { kind: 'length', size: 10, words: 'centimetres', names: ['cm'] },
  { kind: 'length', size: 1000, words: 'metres', names: ['m'] },
  { kind: 'time', size: 1, words: 'milliseconds', names: ['ms'] },
  { kind: 'time', size: 1000, words: 'seconds', names: ['s', 'sec', 'second', 'seconds'] },
  { kind: 'time', size: 60_000, words: 'minutes', names: ['min', 'minute', 'minutes'] },
  { kind: 'time', size: 3_600_000, words: 'hours', names: ['h', 'hour', 'hours'] },
  { kind: 'time', size: 86_400_000, words: 'days', names: ['d', 'day', 'days'] },
  {
    kind: 'temperature',
    size: 1,
    words: 'degrees Celsius',
    names: ['degC', 'deg C', 'C', 'degrees C', 'degrees Celsius'],
  },
  { kind: 'rise', size: 1, words: 'kelvins', names: ['K', 'kelvin', 'kelvins'] },
  { kind: 'part', size: 1, words: 'per cent', names: ['%', 'percent', 'per cent'] },
  {
    kind: 'plain',
    size: 1,
    words: 'a plain count',
    names: ['1', 'tooth', 'teeth', 'start', 'starts', 'times', 'pulses'],
  },
  // never asked for; known, so that a slip can be told from a word that is not
  { kind: 'energy', size: 1, words: 'joules', names: ['J', 'joule', 'joules'] },
  { kind: 'mass', size: 1, words: 'kilograms', names: ['kg'] },
  { kind: 'resistance', size: 1, words: 'ohms', names: ['ohm', 'ohms'] },
]

const BY_NAME: ReadonlyMap<string, Unit> = new Map(
  ROWS.flatMap((row) => row.names.map((name): [string, Unit] => [name, row])),
)
const BY_LOWER_CASE: ReadonlyMap<string, string> = new Map(
  [...BY_NAME.keys()].map((name): [string, string] => [name.toLowerCase(), name]),
)

/** The unit of a question, which has to be one of the table. */
export function unitNamed(name: string): Unit {
  const unit = BY_NAME.get(name)
  if (!unit) throw new Error(`answers in ${name} cannot be read`)
  return unit
}

/** A word of the table that differs from this one at most in its capitals; null when there is none. */
export const unitLike = (word: string): string | null => BY_LOWER_CASE.get(word.toLowerCase()) ?? null

const pattern = (name: string): string => name.replaceAll(/[*/]/g, ' ?\\$& ?')
const LONGEST_FIRST = [...BY_NAME.keys()].filter((name) => name !== '1').sort((a, b) => b.length - a.length)
const AT_END = new RegExp(`(?<![A-Za-z])(?:${LONGEST_FIRST.map(pattern).join('|')})$`)
/** Written out they may begin with a capital, as telephones do by themselves; mW and MW are not the same. */
const WORD_AT_END = new RegExp(
  `(?<![A-Za-z])(?:${LONGEST_FIRST.filter((name) => /^[a-z /]{3,}$/.test(name))
    .map(pattern)
    .join('|')})$`,
  'i',
)

/** The sum and the unit behind it; null for the unit where none stands there. */
export function splitUnit(text: string): { readonly sum: string; readonly unit: Unit | null } {
  const found = AT_END.exec(text) ?? WORD_AT_END.exec(text)
  if (!found) return { sum: text, unit: null }
  const name = found[0].replaceAll(/ ?([*/]) ?/g, '$1')
  const unit = BY_NAME.get(name) ?? BY_NAME.get(name.toLowerCase())!
  return { sum: text.slice(0, found.index).trim(), unit }
}
