/**
 * Reads what a person types into a field: '0.5 in', '12 kgf cm', '1/2', '2,5'. Answers are read
 * by entry.ts instead. mathjs is large: import it when a field is first edited, not with the first picture.
 *
 * mathjs gives the grammar and the table of units; the sum itself is done here, on plain numbers and powers
 * of base units, so that nothing but arithmetic can be asked for: no functions, no names, no assignments.
 */
import * as mathjs from 'mathjs'
import type { MathNode } from 'mathjs'
import * as numbers from 'mathjs/number'
import { parse } from './grammar.ts'
import { plainSpelling } from './quantity-text.ts'

/** Exported by mathjs 15.2 and missing from its own types. */
declare module 'mathjs' {
  export const createUnitClass: FactoryFunction<UnitCtor>
  export const subtractScalarDependencies: FactoryFunctionMap
}

export type ReadQuantity = { readonly value: number } | { readonly problem: string }

/** A number with the powers of its base units; `named` once a unit was written. */
interface Amount {
  readonly value: number
  readonly powers: readonly number[]
  readonly named: boolean
}

/** What is wrong with the text: thrown by the sum below, and caught only by readQuantity. */
class Unreadable extends Error {}

/** Units hold plain numbers only, so nothing stands for the other kinds of numbers. */
const absent = (kind: string) => mathjs.factory(kind, [], () => function Absent() {})

const math = mathjs.create({
  ...numbers.parseDependencies,
  ...numbers.absDependencies,
  ...numbers.addScalarDependencies,
  ...numbers.divideScalarDependencies,
  ...numbers.equalDependencies,
  ...numbers.fixDependencies,
  ...numbers.formatDependencies,
  ...numbers.isNumericDependencies,
  ...numbers.multiplyScalarDependencies,
  ...numbers.numberDependencies,
  ...numbers.powDependencies,
  ...numbers.roundDependencies,
  ...numbers.subtractScalarDependencies,
  complex: absent('Complex'),
  bigNumber: absent('BigNumber'),
  fraction: absent('Fraction'),
  createUnitClass: mathjs.createUnitClass,
})

/** Written by the trade and not known to mathjs 15. */
const TRADE_UNITS = {
  r: '1 cycle',
  rev: '1 cycle',
  turn: '1 cycle',
  rpm: '1 cycle/min',
  gf: '0.001 kgf',
  ozf: '0.0625 lbf',
  percent: '0.01',
}
for (const [name, definition] of Object.entries(TRADE_UNITS)) math.Unit.createUnitSingle(name, { definition })

const MASS = math.Unit.BASE_DIMENSIONS.indexOf('MASS')
const ANGLE = math.Unit.BASE_DIMENSIONS.indexOf('ANGLE')
const NO_POWERS = math.Unit.BASE_DIMENSIONS.map(() => 0)

function unitAmount(name: string): Amount {
  if (!math.Unit.isValuelessUnit(name)) throw new Unreadable(`there is no unit '${name}'`)
  const unit = new math.Unit(1, name)
  return { value: unit.value, powers: unit.dimensions, named: true }
}

const samePowers = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((power, i) => power === b[i])

function sum(a: Amount, b: Amount, sign: 1 | -1): Amount {
  if (!samePowers(a.powers, b.powers)) {
    throw new Unreadable(`${amountName(a)} and ${amountName(b)} cannot be added or subtracted`)
  }
  return { value: a.value + sign * b.value, powers: a.powers, named: a.named || b.named }
}

const product = (a: Amount, b: Amount, sign: 1 | -1): Amount => ({
  value: sign === 1 ? a.value * b.value : a.value / b.value,
  powers: a.powers.map((power, i) => power + sign * (b.powers[i] ?? 0)),
  named: a.named || b.named,
})

function raised(a: Amount, exponent: Amount): Amount {
  if (exponent.named) throw new Unreadable('an exponent is a plain number')
  return {
    value: a.value ** exponent.value,
    powers: a.powers.map((power) => power * exponent.value),
    named: a.named,
  }
}

function operate(op: string, a: Amount, b: Amount | undefined): Amount {
  if (b === undefined) {
    if (op === '-') return { ...a, value: -a.value }
    if (op === '+') return a
  } else {
    if (op === '+') return sum(a, b, 1)
    if (op === '-') return sum(a, b, -1)
    if (op === '*') return product(a, b, 1)
    if (op === '/') return product(a, b, -1)
    if (op === '^') return raised(a, b)
  }
  throw new Unreadable(`only + - * / and ^ are read, not '${op}'`)
}

function amountOf(node: MathNode): Amount {
  if (numbers.isParenthesisNode(node)) return amountOf(node.content)
  if (numbers.isSymbolNode(node)) return unitAmount(node.name)
  if (numbers.isConstantNode(node) && typeof node.value === 'number') {
    return { value: node.value, powers: NO_POWERS, named: false }
  }
  if (numbers.isOperatorNode(node)) {
    const [first, second] = node.args.map(amountOf)
    if (first !== undefined) return operate(node.op, first, second)
  }
  throw new Unreadable('only numbers, units and + - * / ^ are read')
}

/** In the order of search; the first of equal powers names them. */
const NAMED_UNITS: readonly (readonly [string, string])[] = [
  ['percent', 'a plain number'],
  ['mm', 'a length'],
  ['kg', 'a mass'],
  ['s', 'a time'],
  ['A', 'a current'],
  ['V', 'a voltage'],
  ['ohm', 'a resistance'],
  ['mH', 'an inductance'],
  ['deg', 'an angle'],
  ['r/min', 'a speed of turning'],
  ['kHz', 'a frequency'],
  ['m/s', 'a speed'],
  ['N', 'a force'],
  ['N m', 'a torque'],
  ['W', 'a power'],
  ['kg m', 'a mass times a length'],
  ['kg m^2', 'a moment of inertia'],
  ['N m s/rad', 'a torque per speed'],
  ['N m s^2/rad^2', 'a torque per speed squared'],
  ['V s/rad', 'a voltage per speed of turning'],
  ['V s/(rad A)', 'a voltage per speed of turning and current'],
  ['K', 'a temperature'],
  ['m^2', 'an area'],
  ['m^3', 'a volume'],
]

const amountOfText = (text: string): Amount => amountOf(parse(text))
const NAMES = NAMED_UNITS.map(([unit, name]) => ({ powers: amountOfText(unit).powers, name }))

/**
 * The radian is 1 in SI, and where a mass is in play (torque, inertia, motor constants) people leave it out.
 */
const withoutAngle = (powers: readonly number[]): readonly number[] =>
  powers[MASS] === 0 ? powers : powers.map((power, i) => (i === ANGLE ? 0 : power))

function amountName({ powers }: Amount): string {
  const exact = NAMES.find((row) => samePowers(row.powers, powers))
  const loose = NAMES.find((row) => samePowers(withoutAngle(row.powers), withoutAngle(powers)))
  return (exact ?? loose)?.name ?? 'another kind of quantity'
}

const ownUnit = (unit: string): Amount => {
  const spelt = unit === '' ? { text: '1' } : plainSpelling(unit, '')
  if ('problem' in spelt) throw new Error(`unit of a field: ${spelt.problem}`)
  return amountOfText(spelt.text)
}

/** 0 °C [K] */
const ZERO_CELSIUS = 273.15

const TRADE_WEIGHT = 'a mass times a length'

function inUnit(amount: Amount, own: Amount, example: string): ReadQuantity {
  if (!amount.named) return { value: amount.value }
  if (!samePowers(withoutAngle(amount.powers), withoutAngle(own.powers))) {
    const got = amountName(amount)
    const hint = got === TRADE_WEIGHT ? '; a force is written kgf, gf, lbf or ozf' : ''
    return { problem: `must be ${example}, got ${got}${hint}` }
  }
  // 14 digits: drops the last bits that the division by the unit leaves, so that 1 in is 25.4 mm
  return { value: Number((amount.value / own.value).toPrecision(14)) }
}

/** A scale with a zero of its own cannot be multiplied like a unit, so only °C itself is read, and K turned into it. */
function readTemperature(text: string): ReadQuantity {
  const [, number = text, kelvin] = /^(.*?)\s*(?:(?:°|deg)\s?C|(K))?\s*$/s.exec(text) ?? []
  const read = readQuantity(number, '')
  if ('problem' in read) return { problem: `must be a temperature such as 20 °C, got '${text.trim()}'` }
  return kelvin === undefined ? read : { value: Number((read.value - ZERO_CELSIUS).toPrecision(14)) }
}

/**
 * The number that a text means in a field's own unit; a number without a unit is taken to be in it.
 * unit - as in the field table: 'mm', 'N m s/rad', '%', '' for a plain number
 * Never throws on the text, however strange; throws when `unit` itself cannot be read.
 */
export function readQuantity(text: string, unit: string): ReadQuantity {
  if (unit === 'degC') return readTemperature(text)
  const own = ownUnit(unit)
  const example = `${amountName(own)} such as 2${unit === '' ? '' : ` ${unit}`}`
  const spelt = plainSpelling(text, example)
  if ('problem' in spelt) return spelt
  try {
    const read = inUnit(amountOfText(spelt.text), own, example)
    if ('problem' in read || Number.isFinite(read.value)) return read
    return { problem: `must be ${example}, got a sum without a finite result` }
  } catch (error) {
    const cause = error instanceof Unreadable ? `; ${error.message}` : ''
    return { problem: `must be ${example}, got '${text.trim()}'${cause}` }
  }
}
