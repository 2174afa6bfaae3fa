/** The parts that a machine is made of: what each is called, what it is for, and which way it comes off. */
import type { Machine } from '../machine/machine.ts'
import type { Control } from '../machine/supply.ts'
import { chainOf } from './electric-chain.ts'

/** Every part that any machine can have, in the order in which poses are written. */
export const PART_NAMES = [
  'case',
  'tray',
  'motor',
  'rotor',
  'fan',
  'brushGear',
  'frontBearing',
  'rearBearing',
  'leftWheel',
  'rightWheel',
  'leftBrush',
  'rightBrush',
  'crank',
  'plug',
  'battery',
  'transformer',
  'rectifier',
  'capacitor',
  'setting',
  'leads',
] as const

export type PartName = (typeof PART_NAMES)[number]

export type ApartDirection = 'stays' | 'up' | 'down' | 'forward' | 'back' | 'outward'

export interface Part {
  readonly part: PartName
  readonly name: string
  /** What it is for, in one sentence. */
  readonly purpose: string
  readonly apart: ApartDirection
}

const CASE: Part = {
  part: 'case',
  name: 'Case',
  purpose: 'Keeps fingers, dirt and bristles away from the gears and the live parts.',
  apart: 'up',
}
const TRAY: Part = {
  part: 'tray',
  name: 'Tray and feet',
  purpose: 'Holds the bearings and the motor in line, and stands on the floor.',
  apart: 'stays',
}
const MOTOR: Part = {
  part: 'motor',
  name: 'Motor housing',
  purpose: 'Carries the fixed magnetic field that pushes on the current in the rotor.',
  apart: 'back',
}
const ROTOR: Part = {
  part: 'rotor',
  name: 'Rotor with worm',
  purpose: 'One shaft with windings, commutator and worm, so that every motor turn is a worm turn.',
  apart: 'stays',
}
const WORM_SHAFT: Part = {
  part: 'rotor',
  name: 'Worm and shaft',
  purpose: 'Passes every turn of the crank on to both wheels, a tooth for each start.',
  apart: 'stays',
}
const FAN: Part = {
  part: 'fan',
  name: 'Fan',
  purpose: 'Blows cool air through the motor, and is a safe place to turn the shaft by hand.',
  apart: 'back',
}
const BRUSH_GEAR: Part = {
  part: 'brushGear',
  name: 'Carbon brushes',
  purpose: 'Two carbon blocks, pressed on by springs, lead the current into the turning commutator.',
  apart: 'up',
}
const FRONT_BEARING: Part = {
  part: 'frontBearing',
  name: 'Front bearing',
  purpose: 'Holds the front end of the shaft and takes the push along the worm.',
  apart: 'forward',
}
const REAR_BEARING: Part = {
  part: 'rearBearing',
  name: 'Rear bearing',
  purpose: 'Holds the shaft between worm and motor, so that the worm cannot bend away from the wheels.',
  apart: 'back',
}
const LEFT_WHEEL: Part = {
  part: 'leftWheel',
  name: 'Left wheel',
  purpose: 'Turns once while the worm pushes all its teeth past, and turns the left output shaft.',
  apart: 'outward',
}
const RIGHT_WHEEL: Part = {
  part: 'rightWheel',
  name: 'Right wheel',
  purpose: 'Meets the worm on the other side, and so turns the opposite way to the left wheel.',
  apart: 'outward',
}
const LEFT_BRUSH: Part = {
  part: 'leftBrush',
  name: 'Left brush',
  purpose: 'Does the work of the left output, its bristle rows passing between those of the right brush.',
  apart: 'down',
}
const RIGHT_BRUSH: Part = {
  part: 'rightBrush',
  name: 'Right brush',
  purpose: 'Does the work of the right output, its bristle rows passing between those of the left brush.',
  apart: 'down',
}
const CRANK: Part = {
  part: 'crank',
  name: 'Hand crank',
  purpose: 'Turns the worm shaft by hand in place of a motor.',
  apart: 'back',
}

const GEAR_PARTS: readonly Part[] = [
  FRONT_BEARING,
  REAR_BEARING,
  LEFT_WHEEL,
  RIGHT_WHEEL,
  LEFT_BRUSH,
  RIGHT_BRUSH,
]

const PLUG: Part = {
  part: 'plug',
  name: 'Mains plug and lead',
  purpose: 'Brings the alternating current from the socket, and is pulled before anybody opens the case.',
  apart: 'stays',
}
const BATTERY: Part = {
  part: 'battery',
  name: 'Battery',
  purpose: 'Keeps the energy that the motor takes, as a direct current at a low voltage.',
  apart: 'up',
}
const TRANSFORMER: Part = {
  part: 'transformer',
  name: 'Transformer',
  purpose: 'Lowers the mains voltage, with no wire between the side of the socket and the side of the motor.',
  apart: 'up',
}
const RECTIFIER: Part = {
  part: 'rectifier',
  name: 'Rectifier',
  purpose: 'Four diodes lead both half waves the same way through the motor, and a heat sink cools them.',
  apart: 'up',
}
const CAPACITOR: Part = {
  part: 'capacitor',
  name: 'Smoothing capacitor',
  purpose: 'Fills the gaps between the half waves, and stays charged when the plug is out.',
  apart: 'up',
}
const LEADS: Part = {
  part: 'leads',
  name: 'Leads',
  purpose: 'Carry the current from one part to the next, and back.',
  apart: 'stays',
}
const setting = (name: string, purpose: string): Part => ({ part: 'setting', name, purpose, apart: 'up' })
const SETTINGS: Readonly<Record<Exclude<Control['kind'], 'crank'>, Part>> = {
  taps: setting('Tap switch', 'Chooses a tap of the transformer, and with it the voltage for the motor.'),
  chopper: setting('Chopper', 'Switches the current on and off so fast that the motor feels only the mean.'),
  phase: setting('Triac control', 'Holds each half wave back until the set angle, and lets the rest pass.'),
  'half-wave': setting(
    'Half-wave switch',
    'Leads the current through a diode, so that one half wave is left.',
  ),
}

/** From socket or battery to the brushes, in the order of the current. */
function electricParts(machine: Machine): readonly Part[] {
  const { supply, control } = machine
  if (control.kind === 'crank') return []
  const chain = {
    transformer: TRANSFORMER,
    rectifier: RECTIFIER,
    capacitor: CAPACITOR,
    setting: SETTINGS[control.kind],
  }
  const source = supply.kind === 'mains' ? PLUG : BATTERY
  return [source, ...chainOf(machine).map((element) => chain[element]), LEADS]
}

/** The parts of one machine, in the order in which they come off. */
export function partsOf(machine: Machine): readonly Part[] {
  if (machine.motor === null) return [CASE, ...GEAR_PARTS, CRANK, WORM_SHAFT, TRAY]
  const fan = machine.rotor.fanBlades > 0 ? [FAN] : []
  return [CASE, ...fan, ...electricParts(machine), MOTOR, BRUSH_GEAR, ...GEAR_PARTS, ROTOR, TRAY]
}
