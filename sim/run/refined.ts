import type { Drive } from '../drive/drive.ts'
import type { DriveInput } from '../drive/input.ts'
import type { OperatingPoint } from '../drive/operating-point.ts'
import { operatingPoint } from '../drive/operating-point.ts'
import { extreme } from '../electric/steady-network.ts'
import { SPEED } from '../electric/wave-network.ts'
import { guessStart, newPeriodMap, periodOf } from '../electric/wave-period.ts'
import { TIME } from '../numeric/dormand-prince.ts'
import { advance } from '../numeric/event-steps.ts'
import type { PeriodMap } from '../numeric/shooting.ts'
import { closePeriod } from '../numeric/shooting.ts'
import type { WaveRun } from './waveform.ts'
import { createRun, hasWaveforms, settleRun } from './waveform.ts'
import * as at from './waveform-state.ts'

/** Steady running with the speed rising and falling within the period, exact means included. */
export interface RefinedPoint {
  /** Mean worm speed about +z [rad/s] */
  readonly speed: number
  /** From the least to the greatest speed over the mean; 0 at rest */
  readonly ripple: number
  /** Whether cycle means at a speed that stands still are too far from this, or the ripple too much for them */
  readonly isNeeded: boolean
  /** Motor current: mean of its size, r.m.s. [A] */
  readonly currentMean: number
  readonly currentRms: number
  /** Through the source [A] */
  readonly sourceRms: number
  /** Out of secondary, mains or battery [W] */
  readonly inputPower: number
  /** Mean in the supply's sense [N m] */
  readonly torque: number
  /** What the last period missed its start by: speed [rad/s], currents and voltage in ordinary sizes */
  readonly speedMiss: number
  readonly currentMiss: number
  /** Standing at the start of the period */
  readonly run: WaveRun
}

/** Ripple above which cycle means at a frozen speed no longer agree with the waveform: design choice, measured. */
const MOST_RIPPLE = 0.08
/** How far cycle means may be off, of the ripple, of the currents and of the power: design choice. */
const MOST_OFF = { speed: 0.2, current: 5e-3, power: 8e-3 }

const TOLERANCE = 1e-10
const MET = 1e-12
const NEARLY_MET = 1e-9
const MOST_ROUNDS = 24
const MOST_PERIODS = 1000
/** Slope of a period's gain in speed over its first speed, as most drives have it, for the first guess. */
const FIRST_SLOPE = -0.1

/**
 * The speed that comes back after a period: secant on the speed at its start; for each such speed the currents are
 * closed by `closePeriod`. Begins at the operating point of cycle means. A chopper behind a smoothing capacitor is taken
 * at its mean. Null where the operating point is.
 */
export function refinedPoint(drive: Drive, input: DriveInput): RefinedPoint | null {
  if (!hasWaveforms(drive)) return null
  const averaged = operatingPoint(drive, input)
  if (!averaged) return null
  const search = newSpeedSearch(drive, input)
  if (!Number.isFinite(search.period)) return null
  findSpeed(search, input.sense * averaged.speed)
  return pointOf(search, averaged)
}

interface SpeedSearch {
  readonly run: WaveRun
  readonly map: PeriodMap
  readonly period: number
  /** Worm speed at the start of the period, in the supply's sense, and what it gains over it [rad/s] */
  speed: number
  gain: number
  low: number
  high: number
}

function newSpeedSearch(drive: Drive, input: DriveInput): SpeedSearch {
  const run = createRun(drive, input, { tolerance: TOLERANCE, averaged: true })
  const { network } = run.parts
  const search: SpeedSearch = {
    run,
    map: newPeriodMap(network, run.y, () => runPeriod(search)),
    period: periodOf(network),
    speed: 0,
    gain: 0,
    low: 0,
    high: 0,
  }
  return search
}

function runPeriod(search: SpeedSearch): void {
  const { run, period } = search
  const { y, events } = run
  y.fill(0, at.FUSE)
  y[SPEED] = search.speed
  settleRun(run)
  search.low = Infinity
  search.high = -Infinity
  events.idle = 0
  events.stride = Infinity
  events.witness = {
    see(stepper) {
      search.high = Math.max(search.high, extreme(stepper, SPEED, 1))
      search.low = Math.min(search.low, -extreme(stepper, SPEED, -1))
    },
  }
  advance(events, y[TIME]! + period)
  events.witness = null
}

/** Sets search.gain at a speed. */
function tryAt(search: SpeedSearch, speed: number): number {
  search.speed = speed
  closePeriod(search.map)
  search.gain = search.run.y[SPEED]! - speed
  return search.gain
}

function findSpeed(search: SpeedSearch, guess: number): void {
  search.run.y[SPEED] = guess
  guessStart(search.map, search.run.parts.network, search.run.y)
  let last = guess
  let lastGain = tryAt(search, guess)
  let speed = guess - lastGain / FIRST_SLOPE
  for (let round = 0; round < MOST_ROUNDS; round++) {
    if (Math.abs(lastGain) <= MET * Math.abs(last)) return
    // A drive does not settle beyond standstill; there it may start and stop within each period.
    if (speed * guess < 0) speed = 0
    const gain = tryAt(search, speed)
    const slope = (gain - lastGain) / (speed - last)
    last = speed
    lastGain = gain
    if (!(slope < 0)) break
    speed -= gain / slope
  }
  // Where no secant leads there, periods follow each other as they would in time.
  for (let n = 0; n < MOST_PERIODS && Math.abs(search.gain) > NEARLY_MET * Math.abs(search.speed); n++)
    tryAt(search, search.run.y[SPEED])
}

function pointOf(search: SpeedSearch, averaged: OperatingPoint): RefinedPoint {
  const { run, period, map } = search
  const { y } = run
  const speed = y[at.ANGLE]! / period
  const ripple = speed === 0 ? 0 : (search.high - search.low) / Math.abs(speed)
  const point = {
    speed: run.input.sense * speed + 0,
    ripple,
    currentMean: y[at.CURRENT_INTEGRAL]! / period,
    currentRms: Math.sqrt(y[at.CURRENT_SQUARE]! / period),
    sourceRms: Math.sqrt(y[at.SOURCE_SQUARE]! / period),
    inputPower: y[at.INPUT]! / period,
    torque: y[at.TORQUE_INTEGRAL]! / period,
    speedMiss: search.gain,
    currentMiss: map.search.worst,
    run,
  }
  return { ...point, isNeeded: ripple > MOST_RIPPLE || !areNear(averaged, point) }
}

const isNear = (a: number, b: number, part: number): boolean => Math.abs(a - b) <= part * Math.abs(b)

function areNear({ speed, reading }: OperatingPoint, point: Omit<RefinedPoint, 'isNeeded'>): boolean {
  return (
    isNear(speed, point.speed, MOST_OFF.speed * point.ripple + NEARLY_MET) &&
    isNear(reading.currentMean, point.currentMean, MOST_OFF.current) &&
    isNear(reading.currentRms, point.currentRms, MOST_OFF.current) &&
    isNear(reading.inputPower, point.inputPower, MOST_OFF.power)
  )
}
