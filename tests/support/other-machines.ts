import type { Machine } from '../../sim/machine/machine.ts'
import { bootCleaner, cordWinder, ventOpener } from './machines.ts'

/** Chains and kinds of protection that none of the demo machines has; invented, for the tests only. */

/** Direct mains for a magnet motor, wound for it. */
const directMagnet = {
  ...bootCleaner,
  name: 'Direct bridge',
  supply: { kind: 'mains', voltage: 230, frequency: 50, resistance: 2 },
  transformer: null,
  motor: {
    kind: 'permanent-magnet',
    resistance: 60,
    inductance: 120,
    emfConstant: 0.45,
    brushDrop: 2,
  },
} satisfies Machine

export const smoothed: Machine = {
  ...bootCleaner,
  name: 'Smoothed boot cleaner',
  rectifier: { diodeDrop: 0.8, capacitance: 2200, bleedResistance: 10 },
  protection: { kind: 'overload', side: 'secondary', current: 4, timeConstant: 10 },
}

export const triacBridge: Machine = {
  ...directMagnet,
  name: 'Triac ahead of a bridge',
  rectifier: { diodeDrop: 0.8, capacitance: 0, bleedResistance: 10 },
  control: { kind: 'phase', switchDrop: 1.2, steps: [{ angle: 100 }, { angle: 70 }, { angle: 30 }] },
}

export const directChopper: Machine = {
  ...directMagnet,
  name: 'Chopper behind a smoothed bridge',
  rectifier: { diodeDrop: 0.8, capacitance: 220, bleedResistance: 100 },
  control: {
    kind: 'chopper',
    frequency: 8,
    switchDrop: 0.5,
    freewheelDrop: 0.8,
    steps: [{ duty: 30 }, { duty: 60 }, { duty: 100 }],
  },
}

export const halfWaveSeries: Machine = {
  ...cordWinder,
  name: 'Half-wave winder',
  control: { kind: 'half-wave', diodeDrop: 0.9, freewheel: 'none', steps: [{ waves: 1 }, { waves: 2 }] },
}

export const halfWaveMagnet: Machine = {
  ...directMagnet,
  name: 'Half-wave magnet motor',
  rectifier: null,
  control: { kind: 'half-wave', diodeDrop: 0.9, freewheel: 'diode', steps: [{ waves: 1 }] },
}

/** The vent opener with a series motor for its battery. */
export const batterySeries: Machine = {
  ...ventOpener,
  name: 'Battery series motor',
  motor: {
    kind: 'universal',
    resistance: 0.7,
    inductance: 1,
    fieldInductance: 2,
    emfConstant: 0.012,
    saturationCurrent: 6,
    brushDrop: 1,
  },
}

export const otherMachines: readonly Machine[] = [
  smoothed,
  triacBridge,
  directChopper,
  halfWaveSeries,
  halfWaveMagnet,
  batterySeries,
]
