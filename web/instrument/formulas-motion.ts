/** Formulas of speed, torque and power along the way from the motor to the two outputs. */
import { rpm } from '../../sim/quantity/convert.ts'
import type { FormulaRow } from './formula.ts'
import { fraction, magnitude, minus, product, sum } from './formula-tree.ts'
import { motorPower, wormPower, wormTorque } from './worm-shaft.ts'

const MECHANICS = 'Power of a turning shaft: torque times speed. Mechanics.'
const RUNNING = 'Holds while the wheel turns; at rest friction carries only what it must.'
const STEADY = 'Holds at steady speed; while the speed changes, the rotor takes or gives torque as well.'
const IDEAL = 'Without losses the power goes through undiminished, so torque grows as speed falls.'
const SHARE = 'Without losses each wheel carries its share of the total, in the ratio of the real torques.'
const LOAD = 'The load set by you: weight or spring, dry friction, and what grows with speed.'

const speed = (side: 'left' | 'right') =>
  ({
    title: `Speed of the ${side} wheel`,
    letter: 'n',
    index: side === 'left' ? 'L' : 'R',
    unit: 'r/min',
    right: product(side === 'left' ? 'sL' : 'sR', 'n1', fraction('z1', 'z2')),
    source:
      'The wheels follow the worm; the far side of the worm pushes the other way. Signs seen from above.',
    reading: ({ reading }) => rpm(side === 'left' ? reading.leftSpeed : reading.rightSpeed),
  }) satisfies FormulaRow

const torque = (side: 'left' | 'right') => {
  const [Ta, T0, b, c] =
    side === 'left' ? (['TaL', 'T0L', 'bL', 'cL'] as const) : (['TaR', 'T0R', 'bR', 'cR'] as const)
  return {
    title: `Torque of the ${side} wheel`,
    letter: 'T',
    index: side === 'left' ? 'L' : 'R',
    unit: 'N m',
    right: sum(
      product('sigma', Ta),
      product('s', T0),
      product(b, 'omega2'),
      product(c, 'omega2', magnitude('omega2')),
    ),
    source: LOAD,
    holds: RUNNING,
    reading: ({ reading }) => (side === 'left' ? reading.leftTorque : reading.rightTorque),
  } satisfies FormulaRow
}

const power = (side: 'left' | 'right') =>
  ({
    title: `Power of the ${side} wheel`,
    letter: 'P',
    index: side === 'left' ? 'L' : 'R',
    unit: 'W',
    right: product(side === 'left' ? 'TL' : 'TR', 'omega2'),
    source: MECHANICS,
    reading: ({ reading }) => (side === 'left' ? reading.outputLeft : reading.outputRight),
  }) satisfies FormulaRow

const idealTotal = product('Tm', fraction('z2', 'z1'))

const ideal = (side: 'left' | 'right') =>
  ({
    title: `Torque of the ${side} wheel without losses`,
    letter: 'T',
    index: `${side === 'left' ? 'L' : 'R'},0`,
    unit: 'N m',
    right: product(idealTotal, fraction(side === 'left' ? 'TL' : 'TR', sum('TL', 'TR'))),
    source: SHARE,
    holds: 'Without any load there is nothing to share.',
    reading: ({ reading }) => (side === 'left' ? reading.idealLeft : reading.idealRight),
  }) satisfies FormulaRow

export const MOTION_FORMULAS = {
  leftSpeed: speed('left'),
  rightSpeed: speed('right'),
  leftTorque: torque('left'),
  rightTorque: torque('right'),
  leftPower: power('left'),
  rightPower: power('right'),
  wormTorque: {
    title: 'Torque at the worm',
    letter: 'T',
    index: 'w',
    unit: 'N m',
    right: sum(
      'Tm',
      minus(product('s', 'Tc')),
      minus(product('bv', 'omega')),
      minus(product('cf', 'omega', magnitude('omega'))),
    ),
    source: 'What is left of the motor torque after friction and fan. Mechanics.',
    holds: STEADY,
    reading: wormTorque,
  },
  wormPower: {
    title: 'Power at the worm',
    letter: 'P',
    index: 'w',
    unit: 'W',
    right: product('Tw', 'omega'),
    source: MECHANICS,
    holds: 'While the worm stands there is none.',
    reading: wormPower,
  },
  motorPower: {
    title: 'Power that the motor turns into motion',
    letter: 'P',
    index: 'm',
    unit: 'W',
    right: product('Tm', 'omega'),
    source: MECHANICS,
    reading: motorPower,
  },
  idealTotal: {
    title: 'Torque of both wheels without losses',
    letter: 'T',
    index: '0',
    unit: 'N m',
    right: idealTotal,
    source: IDEAL,
    reading: ({ reading }) => reading.idealTotal,
  },
  idealLeft: ideal('left'),
  idealRight: ideal('right'),
  efficiency: {
    title: 'Efficiency, from the supply to both outputs',
    letter: 'η',
    unit: '%',
    right: product(100, fraction(sum('PL', 'PR'), 'P')),
    source: 'What comes out over what goes in. Definition.',
    holds: 'While loads drive the wheels, or nothing goes in, there is none.',
    reading: ({ reading }) => 100 * reading.efficiency,
  },
} satisfies Record<string, FormulaRow>
