/** Numbers to begin with where heat or brushes are not described yet: those of a small motor, to be set by the user. */
import type { Brushes, Machine, Motor, Thermal } from '../../sim/machine/machine.ts'
import { ownValue } from '../../sim/machine/path.ts'

const MAGNET_THERMAL: Thermal = {
  insulation: 'B',
  windingCapacity: 60,
  caseCapacity: 300,
  windingToCase: 0.35,
  windingToCaseFan: 0.35,
  caseToAir: 0.16,
  caseToAirFan: 0.4,
  referenceSpeed: 5000,
  fanExponent: 0.8,
  ambient: 20,
  hotSpotMargin: 10,
  magnetCoefficient: -0.2,
  brushHeatToWinding: 50,
  frictionHeatToWinding: 40,
}

const SERIES_THERMAL: Thermal = {
  ...MAGNET_THERMAL,
  insulation: 'F',
  windingCapacity: 220,
  caseCapacity: 400,
  windingToCase: 0.5,
  windingToCaseFan: 1.6,
  caseToAir: 0.35,
  caseToAirFan: 1.9,
  referenceSpeed: 9000,
  magnetCoefficient: 0,
  frictionHeatToWinding: 50,
}

const MAGNET_BRUSHES: Brushes = {
  commutatorDiameter: 14,
  bars: 12,
  arcWidth: 4,
  area: 24,
  coilInductance: 40,
  coilTurns: 20,
  peakFlux: 0,
  densityLimit: 10,
  springForce: 1,
  friction: 0.25,
  usableLength: 7,
  wear: 1.2,
  wearSpeed: 4,
  wearCurrent: 1.5,
  wearByCurrent: 0.5,
}

const SERIES_BRUSHES: Brushes = {
  ...MAGNET_BRUSHES,
  commutatorDiameter: 22,
  bars: 24,
  arcWidth: 5,
  area: 35,
  coilInductance: 250,
  coilTurns: 14,
  springForce: 2.5,
  usableLength: 10,
  wear: 8,
  wearSpeed: 13,
  wearCurrent: 2,
  wearByCurrent: 0.6,
}

export type Described = 'thermal' | 'brushes'

const isSeries = (motor: Motor): boolean => motor.kind === 'universal'

const START = {
  thermal: (motor: Motor): Thermal => (isSeries(motor) ? SERIES_THERMAL : MAGNET_THERMAL),
  brushes: (motor: Motor): Brushes => (isSeries(motor) ? SERIES_BRUSHES : MAGNET_BRUSHES),
}

/** The machine with that part described by the numbers to begin with, or not described. */
export const withDescribed = (machine: Machine, part: Described, described: boolean): Machine => {
  if ((machine[part] !== null) === described || machine.motor === null) return machine
  return { ...machine, [part]: described ? START[part](machine.motor) : null }
}

/** Whether a part still has every number that it was begun with. */
export function isAsBegun({ motor, ...machine }: Machine, part: Described): boolean {
  const now = machine[part]
  if (motor === null || now === null) return false
  return Object.entries(START[part](motor)).every(([name, value]) => ownValue(now, name) === value)
}
