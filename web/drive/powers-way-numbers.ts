/** The numbers at each stop of the power's way: what is measured there, what is lost there and what goes on. */
import type { Reading } from '../../sim/drive/reading.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { rpm } from '../../sim/quantity/convert.ts'
import type { PartNumber } from '../instrument/part-number.ts'
import { stepNumbers } from '../instrument/part-numbers-electric.ts'
import { type Unit, figure, givenFigure, quantityText } from '../instrument/reading-text.ts'
import type { Situation } from '../instrument/situation.ts'
import type { PowerStop } from '../store/view.ts'
import { stopsOf } from './powers-way.ts'

const number = (name: string, value: number, unit: Unit): PartNumber => ({
  name,
  text: quantityText(value, unit),
})
const given = (name: string, value: number, unit: string): PartNumber => ({
  name,
  text: `${givenFigure(value)}${unit === '' ? '' : ` ${unit}`}`,
})

/** What comes in [W]: from the wall with the transformer's core, from the battery, or from the hand */
export const taken = ({ inputPower, coreLoss }: Reading): number => inputPower + coreLoss

function source({ machine: { supply }, reading }: Situation): readonly PartNumber[] {
  if (supply.kind === 'crank')
    return [
      number('Speed', rpm(reading.wormSpeed), 'r/min'),
      number('Torque of the hand', reading.motorTorque, 'N m'),
      number('Power', reading.inputPower, 'W'),
    ]
  const mains = supply.kind === 'mains'
  return [
    number(mains ? 'Voltage, r.m.s.' : 'Open-circuit voltage', reading.wallVoltage, 'V'),
    ...(mains ? [number('Frequency', reading.wallFrequency, 'Hz')] : []),
    number(mains ? 'Current, r.m.s.' : 'Mean current', reading.wallCurrent, 'A'),
    number('Power', reading.wallPower, 'W'),
    ...(mains ? [number('Power factor', reading.powerFactor, '')] : []),
  ]
}

function transformer({ machine, setting, reading }: Situation): readonly PartNumber[] {
  const { control } = machine
  return [
    given('Primary, rated', machine.transformer?.primaryVoltage ?? 0, 'V'),
    ...(control.kind === 'taps' ? [given('Secondary, open', control.steps[setting]?.voltage ?? 0, 'V')] : []),
    number('Power to the secondary', reading.inputPower, 'W'),
  ]
}

const toMotor = ({ machine, reading }: Situation): readonly PartNumber[] => [
  number(
    machine.motor?.kind === 'universal' && machine.supply.kind === 'mains'
      ? 'Voltage, r.m.s.'
      : 'Mean voltage',
    reading.motorVoltage,
    'V',
  ),
  number('Mean current', reading.currentMean, 'A'),
  number('Current, r.m.s.', reading.currentRms, 'A'),
]

/** RC of the smoothing capacitor with its bleed resistor [s], in which the voltage falls to 1/e */
const bleedTime = ({ rectifier }: Machine): number =>
  rectifier === null ? 0 : rectifier.bleedResistance * 1e3 * rectifier.capacitance * 1e-6

const NUMBERS: Readonly<Record<PowerStop, (situation: Situation) => readonly PartNumber[]>> = {
  socket: source,
  transformer,
  rectifier: toMotor,
  capacitor: ({ machine, reading }) => [
    given('Capacitance', machine.rectifier?.capacitance ?? 0, 'µF'),
    number('Mean voltage', reading.capacitorVoltage, 'V'),
    number('Ripple, least to most', reading.capacitorRipple, 'V'),
    { name: 'Unplugged, to 37 % in', text: `${figure(bleedTime(machine))} s` },
  ],
  setting: (situation) => [
    ...stepNumbers(situation),
    ...(situation.machine.control.kind === 'taps' ? [] : toMotor(situation).slice(0, 2)),
  ],
  brushes: (situation) => [
    ...toMotor(situation),
    given('Drop of the pair', situation.machine.motor?.brushDrop ?? 0, 'V'),
  ],
  commutator: ({ machine, reading }) => [
    number('Speed', rpm(reading.wormSpeed), 'r/min'),
    ...(machine.brushes
      ? [
          given('Bars', machine.brushes.bars, ''),
          number('Bars a second', (machine.brushes.bars * Math.abs(reading.wormSpeed)) / (2 * Math.PI), ''),
        ]
      : []),
  ],
  armature: ({ reading }) => [
    number('Torque', reading.motorTorque, 'N m'),
    number('Speed', rpm(reading.wormSpeed), 'r/min'),
    number('Power to the shaft', reading.motorTorque * Math.abs(reading.wormSpeed), 'W'),
  ],
  fan: ({ machine, reading }) => [
    given('Blades', machine.rotor.fanBlades, ''),
    number('Speed', rpm(reading.wormSpeed), 'r/min'),
  ],
  worm: ({ machine: { gearing }, reading }) => [
    given('Starts', gearing.wormStarts, ''),
    number('Speed', rpm(reading.wormSpeed), 'r/min'),
    number('Left mesh, lost', reading.meshLossLeft, 'W'),
    number('Right mesh, lost', reading.meshLossRight, 'W'),
  ],
  wheels: ({ reading }) => [
    number('Left, speed', rpm(reading.leftSpeed), 'r/min'),
    number('Right, speed', rpm(reading.rightSpeed), 'r/min'),
    number('Left, torque', reading.meshTorqueLeft, 'N m'),
    number('Right, torque', reading.meshTorqueRight, 'N m'),
  ],
  outputs: ({ reading }) => [
    number('Left, power', reading.outputLeft, 'W'),
    number('Right, power', reading.outputRight, 'W'),
    number('Of what comes in', 100 * reading.efficiency, '%'),
  ],
}

export const stopNumbers = (stop: PowerStop, situation: Situation): readonly PartNumber[] =>
  NUMBERS[stop](situation)

/** What a stop takes of the power as heat or air [W]; together they are all losses of the ledger. */
export function lostAt(machine: Machine, stop: PowerStop, r: Reading): number {
  switch (stop) {
    case 'socket':
      return machine.transformer === null ? r.sourceResistanceLoss : 0
    case 'transformer':
      return r.coreLoss + r.sourceResistanceLoss
    case 'rectifier':
      return r.diodeLoss
    case 'capacitor':
      return r.bleedLoss
    case 'setting':
      return r.switchLoss + (machine.rectifier === null ? r.diodeLoss : 0)
    case 'brushes':
      return r.brushLoss
    case 'armature':
      return r.copperLoss + r.frictionLoss + (machine.rotor.fanBlades > 0 ? 0 : r.fanLoss)
    case 'fan':
      return r.fanLoss
    case 'worm':
      return r.meshLossLeft + r.meshLossRight + (machine.motor === null ? r.frictionLoss + r.fanLoss : 0)
    case 'wheels':
      return r.bearingLossLeft + r.bearingLossRight
    case 'commutator':
    case 'outputs':
      return 0
  }
}

/** What is left of the power behind a stop [W]; what speeds the moving parts up is taken off where the shaft begins. */
export function leftBehind(machine: Machine, stop: PowerStop, reading: Reading): number {
  const shaft: PowerStop = machine.motor === null ? 'worm' : 'armature'
  let left = taken(reading)
  for (const each of stopsOf(machine)) {
    left -= lostAt(machine, each, reading)
    if (each === shaft) left -= reading.storedRate
    if (each === stop) break
  }
  return left
}

const LOST: Partial<Record<PowerStop, string>> = {
  socket: 'Lost in its own resistance',
  transformer: 'Lost in core and coils',
  rectifier: 'Lost in the diodes',
  capacitor: 'Lost in the bleed resistor',
  setting: 'Lost in the switch',
  brushes: 'Lost where carbon meets copper',
  armature: 'Lost in winding and friction',
  fan: 'Given to the air',
  worm: 'Lost in both meshes',
  wheels: 'Lost in their bearings',
}

/** "Lost in the diodes: 1.94 W, 8.3 % of what comes in." */
export function lossText(stop: PowerStop, { machine, reading }: Situation): string {
  const name = LOST[stop]
  if (name === undefined) return stop === 'commutator' ? 'Its loss is counted with the brushes.' : ''
  if (stop === 'setting' && machine.control.kind === 'taps')
    return 'Its resistance is counted with the transformer.'
  const lost = lostAt(machine, stop, reading)
  if (lost === 0 && stop === 'socket') return ''
  const all = taken(reading)
  const share = all > 0 && lost > 0 ? `, ${quantityText((100 * lost) / all, '%')} of what comes in` : ''
  return `${name}: ${quantityText(lost, 'W')}${share}.`
}

/** "Goes on: 21.4 W." Empty where nothing comes in, or nothing can go on. */
export function onwardText(stop: PowerStop, { machine, reading }: Situation): string {
  const left = leftBehind(machine, stop, reading)
  return stop === 'outputs' || taken(reading) <= 0 || left <= 0 ? '' : `Goes on: ${quantityText(left, 'W')}.`
}
