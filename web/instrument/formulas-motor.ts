/** Formulas of the motor, and of what each loss takes. */
import { rpm } from '../../sim/quantity/convert.ts'
import type { FormulaRow } from './formula.ts'
import { fraction, magnitude, minus, power, product, sum } from './formula-tree.ts'

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

export const MOTOR_FORMULAS = {
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
  motorTorque: {
    title: 'Torque of the motor',
    letter: 'T',
    index: 'm',
    unit: 'N m',
    right: product('k', 'I'),
    source: `Torque goes with current. ${MACHINE_SET}`,
    reading: ({ reading }) => reading.motorTorque,
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
  emf: {
    title: 'Emf, the voltage that the turning motor makes itself',
    letter: 'E',
    unit: 'V',
    right: product('k', 'omega'),
    source: `Voltage goes with speed, by the same constant as torque with current. ${MACHINE_SET}`,
  },
  meanCurrent: {
    title: 'Mean motor current',
    letter: 'L di/dt',
    unit: 'A',
    right: sum('u', minus(product(sum('Rs', 'Ra'), 'i')), minus('E'), minus('vb')),
    lawOnly: true,
    source:
      'Solved in closed form over one period of the supply, from instant to instant; the mean of i is shown.',
    reading: ({ reading }) => reading.currentMean,
  },
  copperLoss: {
    title: 'Loss in the winding',
    letter: 'P',
    unit: 'W',
    right: product('Ra', power('Irms', 2)),
    source: `Heat goes with the square of the current. ${LEDGER}`,
    reading: ({ reading }) => reading.copperLoss,
  },
  brushLoss: {
    title: 'Loss where the brushes touch',
    letter: 'P',
    unit: 'W',
    right: product('vb', 'I'),
    source: `A carbon brush drops nearly the same voltage at any current: common practice. ${LEDGER}`,
    reading: ({ reading }) => reading.brushLoss,
  },
  diodeLoss: {
    title: 'Loss in the bridge',
    letter: 'P',
    unit: 'W',
    right: product(2, 'Vd', 'I'),
    source: `The current passes two diodes at a time. ${LEDGER}`,
    reading: ({ reading }) => reading.diodeLoss,
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
  coreLoss: {
    title: 'Loss in the core of the transformer',
    letter: 'P',
    unit: 'W',
    right: fraction(power('V', 2), 'RFe'),
    source: `Stands for the heat in the iron, as a resistance across the mains. ${LEDGER}`,
    holds: 'Holds while it is plugged in.',
    reading: ({ reading }) => reading.coreLoss,
  },
} satisfies Record<string, FormulaRow>
