import { compileDrive } from '../drive/drive.ts'
import { meltingSquare } from '../drive/melting.ts'
import type { Reading } from '../drive/reading.ts'
import { newReading, readAt } from '../drive/reading.ts'
import { rpm } from '../quantity/convert.ts'
import type { HeatSource } from './heating-source.ts'
import { followedSpeed } from './heating-speed.ts'
import { caseHeat, caseToAir, windingHeat, windingToCase } from './two-bodies.ts'

/** Everything at one pair of temperatures, written in place. */
export interface HeatPoint {
  /** What it reads like once speed has settled at these temperatures; kept by `writeRunning` alone */
  readonly reading: Reading
  /** Heat that arises in the winding and in the case [W] */
  windingHeat: number
  caseHeat: number
  /** Conductances [W/K] */
  windingToCase: number
  caseToAir: number
  /** Of the motor, and through fuse or overload switch where there is one [A r.m.s.] */
  current: number
  protectedCurrent: number
  /** Worm speed in the commanded frame [rad/s] */
  speed: number
  /** Speed that the drive last ran at, from which the next is looked for [rad/s]; 0 is at rest */
  before: number
}

export const newHeatPoint = (): HeatPoint => ({
  reading: newReading(),
  windingHeat: 0,
  caseHeat: 0,
  windingToCase: 0,
  caseToAir: 0,
  current: 0,
  protectedCurrent: 0,
  speed: 0,
  before: 0,
})

/** The machine running warm: winding and case (whose magnets are as warm) in degC. */
export function writeRunning(point: HeatPoint, source: HeatSource, winding: number, body: number): void {
  const { machine, thermal, input } = source
  const drive = compileDrive(machine, { winding, magnet: body })
  point.speed = source.held ? 0 : followedSpeed(drive, input, point.before)
  const { reading } = point
  readAt(reading, drive, input, input.sense * point.speed, 0)
  const { copperLoss, brushLoss, frictionLoss } = reading
  point.windingHeat = windingHeat(thermal, copperLoss, brushLoss, frictionLoss)
  point.caseHeat = caseHeat(thermal, brushLoss, frictionLoss)
  point.current = reading.currentRms
  point.protectedCurrent = drive.melting ? Math.sqrt(meltingSquare(drive.melting, drive.work.cycle)) : 0
  writeConductances(point, source)
}

/** The machine switched off and at rest. */
export function writeResting(point: HeatPoint, source: HeatSource): void {
  point.windingHeat = 0
  point.caseHeat = 0
  point.current = 0
  point.protectedCurrent = 0
  point.speed = 0
  writeConductances(point, source)
}

/** For the speed of the point. */
export function writeConductances(point: HeatPoint, { thermal, fanCools }: HeatSource): void {
  const n = fanCools ? rpm(point.speed) : 0
  point.windingToCase = windingToCase(thermal, n)
  point.caseToAir = caseToAir(thermal, n)
}
