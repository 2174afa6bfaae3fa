/** What is read of the supply, of a smoothing capacitor, of the motor's current and of what protects the machine. */
import type { Machine } from '../../sim/machine/machine.ts'
import type { FormulaId } from './formulas.ts'
import { isAlternating, isSmoothed, motorEmf } from './motor-state.ts'
import { type Unit, degreeText, quantityText } from './reading-text.ts'
import type { Situation } from './situation.ts'
import { COLD } from '../store/bench.ts'

export interface SupplyRow {
  readonly name: string
  readonly formula: FormulaId | null
  readonly text: (situation: Situation) => string
}

const row = (
  name: string,
  unit: Unit,
  value: (situation: Situation) => number,
  formula: FormulaId | null = null,
): SupplyRow => ({ name, formula, text: (situation) => quantityText(value(situation), unit) })

/** Voltage and frequency are those of the socket, which has them whatever the machine does. */
const supplyRows = ({ supply }: Machine): readonly SupplyRow[] => {
  if (supply.kind === 'crank') return []
  const power = row('Input power', 'W', ({ reading }) => reading.wallPower)
  const current = row('Input current', 'A', ({ reading }) => reading.wallCurrent)
  if (supply.kind === 'battery')
    return [row('Voltage without load', 'V', () => supply.voltage), current, power]
  return [
    row('Input voltage', 'V', () => supply.voltage),
    row('Input frequency', 'Hz', () => supply.frequency),
    current,
    power,
    row('Power factor', '', ({ reading }) => reading.powerFactor),
  ]
}

const CAPACITOR_ROWS = [
  row('Capacitor voltage', 'V', ({ reading }) => reading.capacitorVoltage, 'capacitorVoltage'),
  row('Capacitor ripple, least to most', 'V', ({ reading }) => reading.capacitorRipple),
]

/** A direct current is told by its mean, an alternating one by the mean of its size. */
const motorRows = (alternates: boolean): readonly SupplyRow[] => [
  row(
    alternates ? 'Motor current, mean size' : 'Motor current, mean',
    'A',
    ({ reading }) => reading.currentMean,
    'meanCurrent',
  ),
  row('Motor current, r.m.s.', 'A', ({ reading }) => reading.currentRms),
  row('Motor current, peak', 'A', ({ reading }) => reading.currentPeak),
  row(
    alternates ? 'Motor voltage, r.m.s.' : 'Motor voltage, mean',
    'V',
    ({ reading }) => reading.motorVoltage,
  ),
  row('Motor emf', 'V', motorEmf, 'emf'),
]

const LIMIT_ROW: SupplyRow = {
  name: 'Current limit',
  formula: null,
  text: ({ reading }) => (reading.isLimited ? 'reached' : 'not reached'),
}

export const rowsFor = (machine: Machine, setting: number): readonly SupplyRow[] => [
  ...supplyRows(machine),
  ...(isSmoothed(machine) ? CAPACITOR_ROWS : []),
  ...motorRows(isAlternating(machine, setting)),
  ...(machine.protection.kind === 'limit' ? [LIMIT_ROW] : []),
]

/** How far a fuse or an overload switch is on its way to opening; null without one. */
export function protectionRow({ protection }: Machine): SupplyRow | null {
  const name = { fuse: 'Fuse', overload: 'Overload switch', limit: null, none: null }[protection.kind]
  if (name === null) return null
  const warmth = (fuse: number): string => `${Math.min(100, Math.floor(100 * fuse))} %`
  return {
    name: `${name}, way to opening`,
    formula: null,
    text: ({ reading }) => (reading.isOpen ? 'open' : warmth(reading.fuse)),
  }
}

/** Null while everything is as cold as the numbers of the machine are told. */
export function warmthText({ machine, winding, magnet }: Situation): string | null {
  const magnets = (machine.thermal?.magnetCoefficient ?? 0) !== 0 && magnet !== COLD
  if (winding === COLD && !magnets) return null
  const rest = magnets ? ` and the magnets at ${degreeText(magnet)}` : ''
  return `Computed with the winding at ${degreeText(winding)}${rest}.`
}
