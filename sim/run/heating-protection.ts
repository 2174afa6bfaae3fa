import type { Drive } from '../drive/drive.ts'
import type { DriveInput } from '../drive/input.ts'
import { meltingSquare } from '../drive/melting.ts'
import { newReading, readAt } from '../drive/reading.ts'
import {
  bledVoltage,
  bleedTime,
  capacitorEnergy,
  EXTRA_LOW_VOLTAGE,
  PLUG_PIN_LIMIT,
} from '../heat/capacitor-bleed.ts'
import { fuseExcess, fuseTime, meltingIntegral } from '../heat/fuse.ts'
import type { Machine } from '../machine/machine.ts'

/** A fuse or overload switch under a steady current. */
export interface FuseState {
  /** Through it [A r.m.s.] */
  readonly current: number
  /** (I/Imf)^2; above 1 it opens */
  readonly excess: number
  /** From cold [s]; Infinity is never */
  readonly opensAfter: number
  /** That opens it however short the time is [A2 s] */
  readonly meltingIntegral: number
}

/** At a steady speed about +z [rad/s]; null without fuse or overload switch. */
export function fuseState(
  { protection }: Machine,
  drive: Drive,
  input: DriveInput,
  speed: number,
): FuseState | null {
  if (!('timeConstant' in protection) || !drive.melting) return null
  readAt(newReading(), drive, input, speed, 0)
  const current = input.connected ? Math.sqrt(meltingSquare(drive.melting, drive.work.cycle)) : 0
  const { current: Imf, timeConstant: tau } = protection
  return {
    current,
    excess: fuseExcess(current, Imf),
    opensAfter: fuseTime(current, Imf, tau),
    meltingIntegral: meltingIntegral(Imf, tau),
  }
}

/** A charged smoothing capacitor that is left to its bleed resistor. */
export interface BleedState {
  /** [J] */
  readonly energy: number
  /** Time constant [s] */
  readonly timeConstant: number
  /** Time down to what the pins of a plug may have after a second, and to what is harmless to touch [s] */
  readonly toPlugLimit: number
  readonly toExtraLow: number
  /** After one second [V] */
  readonly afterOneSecond: number
}

const MICRO = 1e-6
const KILO = 1e3

/** From a voltage [V] on; null without a capacitor. */
export function bleedState({ rectifier }: Machine, voltage: number): BleedState | null {
  if (!rectifier || rectifier.capacitance === 0) return null
  const C = rectifier.capacitance * MICRO
  const R = rectifier.bleedResistance * KILO
  return {
    energy: capacitorEnergy(C, voltage),
    timeConstant: R * C,
    toPlugLimit: bleedTime(voltage, PLUG_PIN_LIMIT, R, C),
    toExtraLow: bleedTime(voltage, EXTRA_LOW_VOLTAGE, R, C),
    afterOneSecond: bledVoltage(voltage, 1, R, C),
  }
}
