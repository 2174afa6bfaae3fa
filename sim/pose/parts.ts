/** The parts that a machine is made of: what each is called, what it is for, and which way it comes off. */
import type { Machine } from '../machine/machine.ts'

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

/** The parts of one machine, in the order in which they come off. */
export function partsOf(machine: Machine): readonly Part[] {
  if (machine.motor === null) return [CASE, ...GEAR_PARTS, CRANK, WORM_SHAFT, TRAY]
  const fan = machine.rotor.fanBlades > 0 ? [FAN] : []
  return [CASE, ...fan, MOTOR, BRUSH_GEAR, ...GEAR_PARTS, ROTOR, TRAY]
}
