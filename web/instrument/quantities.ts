/** The quantities that the readings show: each with its name, its unit, its formula and its number. */
import { rpm } from '../../sim/quantity/convert.ts'
import type { FormulaId } from './formulas.ts'
import { type Unit, quantityText } from './reading-text.ts'
import type { Situation } from './situation.ts'
import { motorPower, wormPower, wormTorque } from './worm-shaft.ts'

export interface Quantity {
  /** Its accessible name */
  readonly name: string
  readonly unit: Unit
  readonly formula: FormulaId
  readonly value: (situation: Situation) => number
}

export interface QuantityRow {
  readonly part: 'motor' | 'worm' | 'left' | 'right'
  readonly name: string
  readonly speed: Quantity
  readonly torque: Quantity
  readonly power: Quantity
}

const speedOf = (name: string, formula: FormulaId, of: (situation: Situation) => number): Quantity => ({
  name: `${name} speed`,
  unit: 'r/min',
  formula,
  value: (situation) => rpm(of(situation)),
})
const torqueOf = (name: string, formula: FormulaId, value: Quantity['value']): Quantity => ({
  name: `${name} torque`,
  unit: 'N m',
  formula,
  value,
})
const powerOf = (name: string, formula: FormulaId, value: Quantity['value']): Quantity => ({
  name: `${name} power`,
  unit: 'W',
  formula,
  value,
})

/** What turns the shaft keeps its name for the readings' sake; on a cranked machine it says that a hand does. */
const driver = (cranked: boolean): QuantityRow => {
  const torqueFormula = cranked ? 'crankTorque' : 'motorTorque'
  const told = cranked ? ' (hand crank)' : ''
  const named = (quantity: Quantity): Quantity => ({ ...quantity, name: `${quantity.name}${told}` })
  return {
    part: 'motor',
    name: cranked ? 'Hand crank' : 'Motor',
    speed: named(speedOf('Motor', 'motorSpeed', ({ reading }) => reading.wormSpeed)),
    torque: named(torqueOf('Motor', torqueFormula, ({ reading }) => reading.motorTorque)),
    power: named(powerOf('Motor', 'motorPower', motorPower)),
  }
}

const WORM: QuantityRow = {
  part: 'worm',
  name: 'Worm',
  speed: speedOf('Worm', 'motorSpeed', ({ reading }) => reading.wormSpeed),
  torque: torqueOf('Worm', 'wormTorque', wormTorque),
  power: powerOf('Worm', 'wormPower', wormPower),
}

const LEFT: QuantityRow = {
  part: 'left',
  name: 'Left wheel',
  speed: speedOf('Left wheel', 'leftSpeed', ({ reading }) => reading.leftSpeed),
  torque: torqueOf('Left wheel', 'leftTorque', ({ reading }) => reading.leftTorque),
  power: powerOf('Left wheel', 'leftPower', ({ reading }) => reading.outputLeft),
}

const RIGHT: QuantityRow = {
  part: 'right',
  name: 'Right wheel',
  speed: speedOf('Right wheel', 'rightSpeed', ({ reading }) => reading.rightSpeed),
  torque: torqueOf('Right wheel', 'rightTorque', ({ reading }) => reading.rightTorque),
  power: powerOf('Right wheel', 'rightPower', ({ reading }) => reading.outputRight),
}

const MOTOR_ROWS = [driver(false), WORM, LEFT, RIGHT]
const CRANK_ROWS = [driver(true), WORM, LEFT, RIGHT]

export const quantityRows = (cranked: boolean): readonly QuantityRow[] => (cranked ? CRANK_ROWS : MOTOR_ROWS)

export const EFFICIENCY: Quantity = {
  name: 'Efficiency',
  unit: '%',
  formula: 'efficiency',
  // where nothing goes in there is none: 0 over 0
  value: ({ reading }) => (reading.inputPower + reading.coreLoss > 0 ? 100 * reading.efficiency : Number.NaN),
}

export const valueText = ({ value, unit }: Quantity, situation: Situation): string =>
  quantityText(value(situation), unit)
