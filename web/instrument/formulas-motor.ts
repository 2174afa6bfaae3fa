/** Formulas of the motor, and of what is lost from its shaft to the wheels. */
import { rpm } from '../../sim/quantity/convert.ts'
import type { Formula, FormulaRow } from './formula.ts'
import { type Tree, fraction, magnitude, minus, power, product, sum } from './formula-tree.ts'
import { motorEmf } from './motor-state.ts'
import type { Situation } from './situation.ts'
import { COLD } from '../store/bench.ts'

const LEDGER = 'Part of the ledger: what goes in is what comes out, what is lost and what is stored.'
const DRIVING = 'Holds while the worm drives the wheel.'
const MACHINE_SET = 'The constants are set by you, as a data sheet or a bench test of the motor gives them.'

const meshLoss = (side: 'left' | 'right') =>
  ({
    title: `Loss in the ${side} mesh`,
    letter: 'P',
    unit: 'W',
    right: product(side === 'left' ? 'T2L' : 'T2R', 'omega2', sum(fraction(1, 'eta'), minus(1))),
    source: 'Sliding between thread and teeth, by the efficiency of the mesh. Shigley, from memory.',
    holds: DRIVING,
    reading: ({ reading }) => (side === 'left' ? reading.meshLossLeft : reading.meshLossRight),
  }) satisfies FormulaRow

/** k, with what the warmth of the magnets takes from it where they are not as cold as the constant was told. */
const constant = ({ machine, magnet }: Situation): Tree => {
  const change = product(fraction('aB', 100), sum('magnets', minus(20)))
  const warm = magnet !== COLD && (machine.thermal?.magnetCoefficient ?? 0) !== 0
  return warm ? product('k', sum(1, change)) : product('k')
}

/** k(i) of a series motor, whose iron fills with flux */
const filling = fraction('k0', sum(1, fraction(magnitude('i'), 'isat')))
const FROELICH = 'Saturation after Frölich, from memory.'

const motorTorque = (situation: Situation): FormulaRow => {
  const shown = {
    letter: 'T',
    index: 'm',
    unit: 'N m',
    reading: ({ reading }: Situation) => reading.motorTorque,
  } as const
  if (situation.machine.motor?.kind === 'universal')
    return {
      ...shown,
      title: 'Torque of the motor, mean over the wave',
      right: product(filling, power('i', 2)),
      lawOnly: true,
      holds: 'The law holds at every instant; its mean over one period is shown.',
      source: `The current makes the field as well, so that torque goes with its square. ${FROELICH} ${MACHINE_SET}`,
    }
  return {
    ...shown,
    title: 'Torque of the motor',
    right: product(constant(situation), 'I'),
    source: `Torque goes with current. ${MACHINE_SET}`,
  }
}

const emf = (situation: Situation): FormulaRow => {
  const shown = { letter: 'E', unit: 'V', reading: motorEmf } as const
  if (situation.machine.motor?.kind === 'universal')
    return {
      ...shown,
      title: 'Emf, the voltage that the turning motor makes itself',
      right: fraction(product('Tm', 'omega'), 'I'),
      holds: 'Without current a series motor has no field, and so no emf.',
      source: `In a series motor it is k i ω and follows the current over the wave. Its mean weighted by the current is shown: times the mean current it is the power that becomes motion. ${FROELICH}`,
    }
  return {
    ...shown,
    title: 'Emf, the voltage that the turning motor makes itself',
    right: product(constant(situation), 'omega'),
    source: `Voltage goes with speed, by the same constant as torque with current. ${MACHINE_SET}`,
  }
}

export const MOTOR_FORMULAS = {
  motorTorque,
  emf,
  motorSpeed: {
    title: 'Speed of motor and worm',
    letter: 'J dω/dt',
    unit: 'r/min',
    right: sum(
      'Tm',
      minus(product('s', 'Tc')),
      minus(product('bv', 'omega')),
      minus(product('cf', 'omega', magnitude('omega'))),
      minus('Tw'),
    ),
    lawOnly: true,
    source:
      'The speed settles where the right side is 0: motor torque equals what works against it. Mechanics.',
    reading: ({ reading }) => rpm(reading.wormSpeed),
  },
  crankTorque: {
    title: 'Torque of the hand on the crank',
    letter: 'T',
    index: 'm',
    unit: 'N m',
    right: sum(product('s', 'Tc'), product('bv', 'omega'), product('cf', 'omega', magnitude('omega')), 'Tw'),
    source: 'The hand gives what friction, fan and both meshes ask for at its speed. Mechanics.',
    holds: 'Holds at steady speed.',
    reading: ({ reading }) => reading.motorTorque,
  },
  frictionLoss: {
    title: 'Loss to friction of the rotor',
    letter: 'P',
    unit: 'W',
    right: product(sum(product('s', 'Tc'), product('bv', 'omega')), 'omega'),
    source: `Bearings, brushes and iron, constant and growing with speed. ${LEDGER}`,
    reading: ({ reading }) => reading.frictionLoss,
  },
  fanLoss: {
    title: 'Loss to fan and air',
    letter: 'P',
    unit: 'W',
    right: product('cf', magnitude('omega'), power('omega', 2)),
    source: `Fan laws: torque with the square of the speed, power with its cube. ${LEDGER}`,
    reading: ({ reading }) => reading.fanLoss,
  },
  meshLossLeft: meshLoss('left'),
  meshLossRight: meshLoss('right'),
  bearingLoss: {
    title: 'Loss in the bearings of both wheels',
    letter: 'P',
    unit: 'W',
    right: product(2, 'Tb', magnitude('omega2')),
    source: LEDGER,
    reading: ({ reading }) => reading.bearingLossLeft + reading.bearingLossRight,
  },
} satisfies Record<string, Formula>
