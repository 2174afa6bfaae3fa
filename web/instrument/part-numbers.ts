/** The numbers that belong to one part of the machine, each with its formula where it has one. */
import { pairProportions } from '../../sim/gear/proportions.ts'
import type { PartName } from '../../sim/pose/parts.ts'
import { rpm } from '../../sim/quantity/convert.ts'
import { isAlternating } from './motor-state.ts'
import { type Numbers, type PartNumber, given, number } from './part-number.ts'
import { ELECTRIC_NUMBERS } from './part-numbers-electric.ts'
import { figureOf } from './reading-text.ts'
import type { Situation } from './situation.ts'
import { sideLoad, threadSliding, wormThrust } from './worm-forces.ts'

const wheel =
  (side: 'left' | 'right'): Numbers =>
  ({ machine, reading }) => {
    const left = side === 'left'
    return [
      given('Teeth', machine.gearing.wheelTeeth, ''),
      number(
        'Reference diameter',
        machine.gearing.axialModule * machine.gearing.wheelTeeth,
        'mm',
        'wheelDiameter',
      ),
      number(
        'Speed',
        rpm(left ? reading.leftSpeed : reading.rightSpeed),
        'r/min',
        left ? 'leftSpeed' : 'rightSpeed',
      ),
      number(
        'Torque',
        left ? reading.leftTorque : reading.rightTorque,
        'N m',
        left ? 'leftTorque' : 'rightTorque',
      ),
      number(
        'Lost in its mesh',
        left ? reading.meshLossLeft : reading.meshLossRight,
        'W',
        left ? 'meshLossLeft' : 'meshLossRight',
      ),
    ]
  }

const output =
  (side: 'left' | 'right'): Numbers =>
  ({ machine, reading, leftLoad, rightLoad }) => {
    const left = side === 'left'
    return [
      { name: 'Load', text: (left ? leftLoad : rightLoad).name || 'none' },
      given('Rows of bristles or blades', machine.outputs.tufts, ''),
      number(
        'Power taken',
        left ? reading.outputLeft : reading.outputRight,
        'W',
        left ? 'leftPower' : 'rightPower',
      ),
    ]
  }

const push = (situation: Situation): PartNumber =>
  number('Push along the worm, both meshes', wormThrust(situation), 'N', 'wormThrust')

const rotor: Numbers = (situation) => {
  const { machine, reading } = situation
  const { gearing } = machine
  return [
    {
      name: 'Worm',
      text: `${gearing.wormStarts} ${gearing.wormStarts === 1 ? 'start' : 'starts'}, ${gearing.hand} hand`,
    },
    number('Lead', pairProportions(gearing).lead, 'mm', 'lead'),
    number(
      'Lead angle',
      Math.atan(gearing.wormStarts / gearing.diameterQuotient) * (180 / Math.PI),
      '°',
      'leadAngle',
    ),
    number('Speed', rpm(reading.wormSpeed), 'r/min', 'motorSpeed'),
    { name: 'Sliding speed on the teeth', text: `${figureOf(threadSliding(situation), '')} m/s` },
    push(situation),
    given('Inertia', machine.rotor.inertia, 'kg cm²'),
  ]
}

const motor: Numbers = ({ machine, setting, reading }) => {
  const series = machine.motor?.kind === 'universal'
  return [
    number('Torque', reading.motorTorque, 'N m', 'motorTorque'),
    ...(machine.motor
      ? [
          given(
            series ? 'Motor constant at small current' : 'Motor constant',
            machine.motor.emfConstant,
            series ? 'V s/(rad A)' : 'V s/rad',
          ),
        ]
      : []),
    number(
      isAlternating(machine, setting) ? 'R.m.s. voltage at the brushes' : 'Mean voltage at the brushes',
      reading.motorVoltage,
      'V',
    ),
    number(
      series ? 'Lost in armature and field' : 'Lost in its winding',
      reading.copperLoss,
      'W',
      'copperLoss',
    ),
  ]
}

const brushGear: Numbers = ({ machine, setting, reading }) => [
  number(
    isAlternating(machine, setting) ? 'Mean size of the current' : 'Mean current',
    reading.currentMean,
    'A',
    'meanCurrent',
  ),
  ...(machine.motor ? [given('Drop of both brushes', machine.motor.brushDrop, 'V')] : []),
  number('Lost at the brushes', reading.brushLoss, 'W', 'brushLoss'),
]

const NUMBERS: Record<PartName, Numbers> = {
  ...ELECTRIC_NUMBERS,
  case: () => [],
  tray: ({ machine }) => [
    number('Worm to wheel axis', pairProportions(machine.gearing).centreDistance, 'mm', 'centreDistance'),
  ],
  motor,
  rotor,
  fan: ({ machine, reading }) => [
    given('Blades', machine.rotor.fanBlades, ''),
    number('Power to the air', reading.fanLoss, 'W', 'fanLoss'),
  ],
  brushGear,
  frontBearing: (situation) => [
    push(situation),
    number('Side load from both meshes', sideLoad(situation, 'front'), 'N'),
  ],
  rearBearing: (situation) => [
    number('Side load from both meshes', sideLoad(situation, 'rear'), 'N'),
    number('Friction of the rotor', situation.reading.frictionLoss, 'W', 'frictionLoss'),
  ],
  leftWheel: wheel('left'),
  rightWheel: wheel('right'),
  leftBrush: output('left'),
  rightBrush: output('right'),
  crank: ({ reading }) => [
    number('Speed', rpm(reading.wormSpeed), 'r/min', 'motorSpeed'),
    number('Torque of the hand', reading.motorTorque, 'N m', 'crankTorque'),
  ],
}

export const partNumbers = (part: PartName, situation: Situation): readonly PartNumber[] =>
  NUMBERS[part](situation)
