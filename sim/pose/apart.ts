/** How far each part has moved along its assembly axis while the machine is drawn apart. */
import type { Layout } from './layout.ts'
import type { PartName } from './parts.ts'

/** Stretch of the slider, 0 to 1, in which a part moves: what comes off later begins later. */
export const BEGINS: Readonly<Record<PartName, number>> = {
  case: 0,
  leftWheel: 0.15,
  rightWheel: 0.15,
  leftBrush: 0.3,
  rightBrush: 0.3,
  fan: 0.4,
  crank: 0.4,
  battery: 0.42,
  transformer: 0.42,
  rectifier: 0.42,
  capacitor: 0.42,
  setting: 0.42,
  motor: 0.45,
  brushGear: 0.6,
  frontBearing: 0.7,
  rearBearing: 0.7,
  rotor: 0,
  tray: 0,
  plug: 0,
  leads: 0,
}

const STRETCH = 0.3

/** Part of its way that a part has gone: slow at both ends, 3 t^2 - 2 t^3, clamped because the parts wait for each other. */
export function eased(apart: number, begins: number): number {
  const t = Math.min(1, Math.max(0, (apart - begins) / STRETCH))
  return t * t * (3 - 2 * t)
}

/** The whole way of a part along its own axis [mm]; the sign is that of the axis. */
export function wholeWay(part: PartName, layout: Layout): number {
  const { gears, output, shaft, motor } = layout
  const housing = motor === null ? 0 : motor.front - motor.back
  switch (part) {
    case 'case':
      return 1.15 * (layout.case.top - layout.case.bottom)
    case 'leftWheel':
      return -0.8 * gears.centreDistance
    case 'rightWheel':
      return 0.8 * gears.centreDistance
    case 'leftBrush':
    case 'rightBrush':
      return layout.floor - (output.brush - output.brushHeight / 2) + 1
    case 'fan':
      return -1.25 * housing
    case 'crank':
      return -gears.centreDistance
    case 'motor':
      return -0.95 * housing
    case 'brushGear':
      return 1.2 * (motor?.radius ?? 0)
    case 'battery':
    case 'transformer':
    case 'rectifier':
    case 'capacitor':
    case 'setting':
      return 0.9 * (motor?.radius ?? 0)
    case 'frontBearing':
      return 0.8 * (shaft.collar - shaft.collarWidth / 2 - shaft.frontBearing - shaft.bearingWidth / 2)
    case 'rearBearing':
      return -0.45 * shaft.bearingWidth
    case 'rotor':
    case 'tray':
    case 'plug':
    case 'leads':
      return 0
  }
}

/** Way of a part along its own axis [mm] when the slider stands at `apart`, 0 to 1. */
export const wayApart = (part: PartName, layout: Layout, apart: number): number =>
  eased(apart, BEGINS[part]) * wholeWay(part, layout)
