import type { Machine } from '../../sim/machine/machine.ts'
import { ventOpener } from './machines.ts'

export interface DirectCurrentMotor {
  /** [V] */
  readonly voltage: number
  /** [ohm] */
  readonly resistance: number
  /** [V s/rad] */
  readonly constant: number
  /** [V] */
  readonly brushDrop?: number
  /** Constant torque against the shaft [N m] */
  readonly torque?: number
  /** [kg m2] */
  readonly inertia?: number
  /** Part of the period that a lossless chopper of continuous current is closed; 1 is none */
  readonly duty?: number
}

/**
 * A textbook's direct-current motor on its own: no source resistance, no wheels to speak of, no other losses.
 */
export const directCurrentMachine = (given: DirectCurrentMotor): Machine => ({
  ...ventOpener,
  supply: { kind: 'battery', voltage: given.voltage, resistance: 0 },
  control: {
    kind: 'chopper',
    frequency: 1,
    switchDrop: 0,
    freewheelDrop: 0,
    steps: [{ duty: 100 * (given.duty ?? 1) }],
  },
  motor: {
    kind: 'permanent-magnet',
    resistance: given.resistance,
    inductance: 1e4 * given.resistance,
    emfConstant: given.constant,
    brushDrop: given.brushDrop ?? 0,
  },
  rotor: {
    inertia: 1e4 * (given.inertia ?? 1e-3),
    frictionTorque: given.torque ?? 0,
    viscousTorque: 0,
    fanTorque: 0,
    fanBlades: 0,
    breakaway: 1,
  },
  thermal: null,
  protection: { kind: 'none' },
  outputs: {
    ...ventOpener.outputs,
    wheelInertia: 0,
    bearingTorque: 0,
    tufts: 1,
    loads: [{ name: 'None', active: 0, passive: 0, linear: 0, quadratic: 0 }],
  },
})

export const RPM = (2 * Math.PI) / 60
