/** The numbers that belong to one part of the machine, each with its formula where it has one. */
import { pairProportions } from '../../sim/gear/proportions.ts'
import type { PartName } from '../../sim/pose/parts.ts'
import { rpm } from '../../sim/quantity/convert.ts'
import type { FormulaId } from './formulas.ts'
import { type Unit, figureOf, givenFigure, quantityText } from './reading-text.ts'
import type { Situation } from './situation.ts'
import { sideLoad, threadSliding, wormThrust } from './worm-forces.ts'

export interface PartNumber {
  readonly name: string
  readonly text: string
  readonly formula?: FormulaId
}

type Numbers = (situation: Situation) => readonly PartNumber[]

const number = (name: string, value: number, unit: Unit, formula?: FormulaId): PartNumber =>
  formula ? { name, text: quantityText(value, unit), formula } : { name, text: quantityText(value, unit) }
const given = (name: string, value: number, unit: string): PartNumber => ({
  name,
  text: `${givenFigure(value)}${unit === '' || unit === '°' ? '' : ' '}${unit}`,
})

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

/** What the person has set at the speed control. */
export function stepNumbers({ machine: { control }, setting }: Situation): readonly PartNumber[] {
  const count = { name: 'Step', text: `${setting + 1} of ${control.steps.length}` }
  switch (control.kind) {
    case 'taps':
      return [count, given('Open-circuit voltage of the tap', control.steps[setting]?.voltage ?? 0, 'V')]
    case 'chopper':
      return [
        count,
        given('On for', control.steps[setting]?.duty ?? 0, '%'),
        given('Switched', control.frequency, 'kHz'),
      ]
    case 'phase':
      return [count, given('Firing angle', control.steps[setting]?.angle ?? 0, '°')]
    case 'half-wave':
      return [count, given('Half waves used, of two', control.steps[setting]?.waves ?? 0, '')]
    case 'crank':
      return []
  }
}

const ELECTRIC_NUMBERS = {
  plug: ({ reading }) => [
    number('Voltage', reading.wallVoltage, 'V'),
    number('Current', reading.wallCurrent, 'A'),
    number('Power', reading.wallPower, 'W'),
  ],
  battery: ({ machine: { supply }, reading }) => [
    number('Current', reading.wallCurrent, 'A'),
    number('Power', reading.wallPower, 'W'),
    ...(supply.kind === 'battery' ? [given('Inner resistance', supply.resistance, 'Ω')] : []),
    number('Lost inside', reading.sourceResistanceLoss, 'W'),
  ],
  transformer: ({ machine, setting, reading }) => [
    given('Primary voltage', machine.transformer?.primaryVoltage ?? 0, 'V'),
    ...(machine.control.kind === 'taps'
      ? [given('Open-circuit voltage', machine.control.steps[setting]?.voltage ?? 0, 'V')]
      : []),
    number('Lost in its core', reading.coreLoss, 'W', 'coreLoss'),
    number('Lost in its windings', reading.sourceResistanceLoss, 'W'),
  ],
  rectifier: ({ machine, reading }) => [
    given('Drop of one diode', machine.rectifier?.diodeDrop ?? 0, 'V'),
    number('Mean current', reading.currentMean, 'A', 'meanCurrent'),
    number('Lost in its diodes', reading.diodeLoss, 'W'),
  ],
  capacitor: ({ machine, reading }) => [
    given('Capacitance', machine.rectifier?.capacitance ?? 0, 'µF'),
    number('Mean voltage', reading.capacitorVoltage, 'V'),
    number('From least to most', reading.capacitorRipple, 'V'),
  ],
  setting: (situation) => [
    ...stepNumbers(situation),
    number('Lost in its switch', situation.reading.switchLoss, 'W'),
  ],
  leads: ({ reading }) => [
    number('Mean current to the motor', reading.currentMean, 'A', 'meanCurrent'),
    number('R.m.s. current to the motor', reading.currentRms, 'A'),
  ],
} satisfies Partial<Record<PartName, Numbers>>

const NUMBERS: Record<PartName, Numbers> = {
  ...ELECTRIC_NUMBERS,
  case: () => [],
  tray: ({ machine }) => [
    number('Worm to wheel axis', pairProportions(machine.gearing).centreDistance, 'mm', 'centreDistance'),
  ],
  motor: ({ machine, reading }) => [
    number('Torque', reading.motorTorque, 'N m', 'motorTorque'),
    ...(machine.motor ? [given('Motor constant', machine.motor.emfConstant, 'V s/rad')] : []),
    number('Mean voltage at the brushes', reading.motorVoltage, 'V'),
  ],
  rotor,
  fan: ({ machine, reading }) => [
    given('Blades', machine.rotor.fanBlades, ''),
    number('Power to the air', reading.fanLoss, 'W', 'fanLoss'),
  ],
  brushGear: ({ machine, reading }) => [
    number('Mean current', reading.currentMean, 'A', 'meanCurrent'),
    ...(machine.motor ? [given('Drop of both brushes', machine.motor.brushDrop, 'V')] : []),
    number('Lost at the brushes', reading.brushLoss, 'W', 'brushLoss'),
  ],
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
