/** The symbols of the formulas: how each is written, what it stands for, and where its number comes from. */
import { degrees, radians, rpm } from '../../sim/quantity/convert.ts'
import { wormDrivingEfficiency } from '../../sim/gear/efficiency.ts'
import { wheelSense } from '../../sim/gear/wheel-motion.ts'
import type { Load, Machine } from '../../sim/machine/machine.ts'
import { type Unit, figureOf, givenFigure } from './reading-text.ts'
import type { Situation } from './situation.ts'
import { MOTOR_SYMBOLS } from './symbols-motor.ts'
import { type Of, type SymbolRow, found, read, set, written } from './symbol-row.ts'
import { wormTorque } from './worm-shaft.ts'

const load = (
  letter: string,
  words: string,
  unit: Unit,
  side: 'left' | 'right',
  of: Of<Load>,
): SymbolRow => ({
  ...written(letter),
  words: `${words}, ${side} wheel`,
  unit,
  origin: 'set',
  value: (situation) => of(side === 'left' ? situation.leftLoad : situation.rightLoad),
})

/** Speed of a wheel in the sense in which the machine is driven. */
const drivenWheelSpeed = ({ machine, reading, sense }: Situation): number =>
  (reading.wormSpeed * sense * machine.gearing.wormStarts) / machine.gearing.wheelTeeth

const leadAngle = ({ gearing }: Machine): number =>
  degrees(Math.atan(gearing.wormStarts / gearing.diameterQuotient))

const drivingEfficiency = (machine: Machine): number =>
  wormDrivingEfficiency(
    radians(leadAngle(machine)),
    radians(machine.gearing.pressureAngle),
    machine.gearing.friction,
  )

const GEAR_SYMBOLS = {
  z1: set('z_1', 'starts of the worm', '', ({ gearing }) => gearing.wormStarts),
  z2: set('z_2', 'teeth of each wheel', '', ({ gearing }) => gearing.wheelTeeth),
  m: set('m', 'axial module', 'mm', ({ gearing }) => gearing.axialModule),
  q: set('q', 'diameter quotient', '', ({ gearing }) => gearing.diameterQuotient),
  alphaN: set('α_n', 'pressure angle, square to the thread', '°', ({ gearing }) => gearing.pressureAngle),
  jx: set('j_x', 'backlash along the worm', 'mm', ({ gearing }) => gearing.backlash),
  mu: set('μ', 'coefficient of friction', '', ({ gearing }) => gearing.friction),
  eta: found('η', 'efficiency of a mesh, worm driving', '', drivingEfficiency),
  gamma: found('γ', 'lead angle', '°', leadAngle),
  d1: found(
    'd_1',
    'reference diameter of the worm',
    'mm',
    ({ gearing }) => gearing.axialModule * gearing.diameterQuotient,
  ),
  d2: found(
    'd_2',
    'reference diameter of a wheel',
    'mm',
    ({ gearing }) => gearing.axialModule * gearing.wheelTeeth,
  ),
  r2: found(
    'r_2',
    'reference radius of a wheel',
    'm',
    ({ gearing }) => (gearing.axialModule * gearing.wheelTeeth) / 2000,
  ),
  sL: found('s_L', 'sense of the left wheel', '', ({ gearing }) => wheelSense('left', gearing.hand)),
  sR: found('s_R', 'sense of the right wheel', '', ({ gearing }) => wheelSense('right', gearing.hand)),
} satisfies Record<string, SymbolRow>

const MOTION_SYMBOLS = {
  n1: read('n_1', 'speed of motor and worm', 'r/min', ({ reading }) => rpm(reading.wormSpeed)),
  omega: read(
    'ω',
    'speed of motor and worm, driven sense',
    'rad/s',
    ({ reading, sense }) => reading.wormSpeed * sense,
  ),
  omega2: read('ω_2', 'speed of a wheel, driven sense', 'rad/s', drivenWheelSpeed),
  s: read('s', 'sense of motion, +1 or −1', '', (situation) => Math.sign(drivenWheelSpeed(situation))),
  sigma: { ...read('σ', 'way in which it is driven, +1 or −1', '', ({ sense }) => sense), origin: 'set' },
} satisfies Record<string, SymbolRow>

const OUTPUT_SYMBOLS = {
  TaL: load('T_a', 'active load', 'N m', 'left', ({ active }) => active),
  T0L: load('T_0', 'passive load', 'N m', 'left', ({ passive }) => passive),
  bL: load('b', 'load growing with speed', 'N m s/rad', 'left', ({ linear }) => linear),
  cL: load('c', 'load growing with speed squared', 'N m s²/rad²', 'left', ({ quadratic }) => quadratic),
  TaR: load('T_a', 'active load', 'N m', 'right', ({ active }) => active),
  T0R: load('T_0', 'passive load', 'N m', 'right', ({ passive }) => passive),
  bR: load('b', 'load growing with speed', 'N m s/rad', 'right', ({ linear }) => linear),
  cR: load('c', 'load growing with speed squared', 'N m s²/rad²', 'right', ({ quadratic }) => quadratic),
  Tb: set('T_b', 'friction of the bearings of one wheel', 'N m', ({ outputs }) => outputs.bearingTorque),
  TL: read('T_L', 'torque of the left wheel', 'N m', ({ reading }) => reading.leftTorque),
  TR: read('T_R', 'torque of the right wheel', 'N m', ({ reading }) => reading.rightTorque),
  T2L: read('T_2L', 'torque in the left mesh', 'N m', ({ reading }) => reading.meshTorqueLeft),
  T2R: read('T_2R', 'torque in the right mesh', 'N m', ({ reading }) => reading.meshTorqueRight),
  Tw: read('T_w', 'torque at the worm', 'N m', wormTorque),
  PL: read('P_L', 'power of the left wheel', 'W', ({ reading }) => reading.outputLeft),
  PR: read('P_R', 'power of the right wheel', 'W', ({ reading }) => reading.outputRight),
  P: read('P', 'power taken in', 'W', ({ reading }) => reading.inputPower + reading.coreLoss),
} satisfies Record<string, SymbolRow>

const SYMBOL_TABLE = { ...GEAR_SYMBOLS, ...MOTION_SYMBOLS, ...MOTOR_SYMBOLS, ...OUTPUT_SYMBOLS }

const GUARD_DIGITS = 2

export type SymbolName = keyof typeof SYMBOL_TABLE
export const SYMBOLS: Readonly<Record<SymbolName, SymbolRow>> = SYMBOL_TABLE

/**
 * What was set is written as set, a sense or a count as a whole number, the rest with as many digits more than the
 * reading shows that whoever works the formula out comes to the same.
 */
export function symbolFigure(name: SymbolName, value: number): string {
  const { origin, unit } = SYMBOLS[name]
  const plain = origin === 'set' || (unit === '' && Number.isInteger(value))
  return plain ? givenFigure(value) : figureOf(value, unit, GUARD_DIGITS)
}
