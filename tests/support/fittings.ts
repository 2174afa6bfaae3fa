import type { Machine, PermanentMagnetMotor, Protection } from '../../sim/machine/machine.ts'
import { bootCleaner, cordWinder, ventOpener } from './machines.ts'

const unprotected: Protection = { kind: 'none' }

/** A motor with magnets for rectified mains. */
const mainsMagnet: PermanentMagnetMotor = {
  kind: 'permanent-magnet',
  resistance: 20,
  inductance: 40,
  emfConstant: 0.2,
  brushDrop: 2,
}

const onMains: Machine = { ...cordWinder, motor: mainsMagnet, protection: unprotected }
const bridge = { diodeDrop: 0.8, capacitance: 0, bleedResistance: 100 }

const halfWave = (machine: Machine, freewheel: 'none' | 'diode', waves: readonly number[]): Machine => ({
  ...machine,
  control: { kind: 'half-wave', diodeDrop: 0.9, freewheel, steps: waves.map((each) => ({ waves: each })) },
})

const named = (name: string, machine: Machine): Machine => ({ ...machine, name })

/** One machine of every electrical chain, around the demonstration machines. */
export const fittings: readonly Machine[] = [
  named('taps, bridge', bootCleaner),
  named('taps, bridge, capacitor', {
    ...bootCleaner,
    rectifier: { diodeDrop: 0.8, capacitance: 2200, bleedResistance: 10 },
  }),
  named('battery, chopper, magnets, limit', ventOpener),
  named('battery, chopper, series motor', {
    ...ventOpener,
    motor: {
      kind: 'universal',
      resistance: 1.2,
      inductance: 2,
      fieldInductance: 4,
      emfConstant: 0.02,
      saturationCurrent: 6,
      brushDrop: 1,
    },
    protection: unprotected,
  }),
  named('mains, bridge, capacitor, chopper', {
    ...onMains,
    rectifier: { ...bridge, capacitance: 220 },
    control: {
      kind: 'chopper',
      frequency: 8,
      switchDrop: 1.5,
      freewheelDrop: 0.9,
      steps: [{ duty: 30 }, { duty: 60 }, { duty: 100 }],
    },
  }),
  named('triac, series motor', cordWinder),
  named('triac, bridge, magnets', {
    ...onMains,
    rectifier: bridge,
  }),
  named('half wave, series motor', halfWave(cordWinder, 'none', [1, 2])),
  named('half wave with freewheel diode, series motor', halfWave(cordWinder, 'diode', [1, 2])),
  named('half wave, magnets', halfWave(onMains, 'none', [1])),
  named('half wave with freewheel diode, magnets', halfWave(onMains, 'diode', [1])),
]
