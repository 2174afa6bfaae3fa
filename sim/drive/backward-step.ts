import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import { respond } from './motion.ts'

/** Each doubles the reach: more than the range of doubles between any two speeds that matter. */
const MOST_DOUBLINGS = 400
const MOST_ROUNDS = 80
/** The speed is met to this part of itself. */
const MET = 1e-13

/**
 * Takes work.from over work.span implicitly, w1 = w0 + h a(w1), the backward Euler step: for drives that
 * settle much faster than a step is long, where explicit steps would swing out. It is L-stable, and of all
 * its solutions the one nearest on the way of the acceleration is taken: that one never passes the speed at
 * which the drive settles, so the decay stays without overshoot. Needs work.push, the acceleration at
 * work.from, and work.rate; shortens work.span to where the drive comes to rest. Source of the method: E.
 * Hairer & G. Wanner, Solving Ordinary Differential Equations II, chapter IV.3 (from memory).
 */
export function stepBackward(drive: Drive, input: DriveInput): void {
  const { work } = drive
  if (work.push === 0) work.speed = work.from
  else if (work.push * work.motion > 0 || !comesToRest(drive, input)) {
    bracket(drive, input)
    close(drive, input)
  }
  work.turned = work.span * work.speed
}

/** At rest the step reads 0 = w0 + h a(0), which gives the span itself. */
function comesToRest(drive: Drive, input: DriveInput): boolean {
  const { work } = drive
  work.speed = 0
  respond(drive, input)
  if ((work.from + work.span * work.acceleration) * work.motion > 0) return false
  work.span = -work.from / work.acceleration
  return true
}

/** Sets work.miss to what w1 = w0 + work.gain misses the implicit equation by. */
function findMiss(drive: Drive, input: DriveInput): void {
  const { work } = drive
  work.speed = work.from + work.gain
  respond(drive, input)
  work.miss = work.gain - work.span * work.acceleration
}

/** Finds gains on both sides of the solution: work.nearGain falls short of it, work.gain does not. */
function bracket(drive: Drive, input: DriveInput): void {
  const { work } = drive
  const slows = work.push * work.motion < 0
  work.nearGain = 0
  work.nearMiss = -work.span * work.push
  // Exact where the acceleration falls at its fastest all the way.
  work.gain = (work.span * work.push) / (1 + work.span * work.rate)
  for (let n = 0; n < MOST_DOUBLINGS; n++) {
    if (slows && Math.abs(work.gain) > Math.abs(work.from)) work.gain = -work.from
    findMiss(drive, input)
    if (work.miss * work.push >= 0) return
    work.nearGain = work.gain
    work.nearMiss = work.miss
    work.gain *= 2
  }
}

/**
 * False position in which an end that stays loses half its weight (Illinois), and halving where that lags.
 */
function close(drive: Drive, input: DriveInput): void {
  const { work } = drive
  let farGain = work.gain
  let farMiss = work.miss
  for (let round = 0; round < MOST_ROUNDS && work.miss !== 0; round++) {
    const { nearGain, nearMiss } = work
    if (Math.abs(farGain - nearGain) <= MET * Math.abs(work.from + farGain)) break
    const straight = nearGain - (nearMiss * (farGain - nearGain)) / (farMiss - nearMiss)
    work.gain = round % 4 === 3 ? (nearGain + farGain) / 2 : straight
    findMiss(drive, input)
    if (work.miss * work.push >= 0) {
      farGain = work.gain
      farMiss = work.miss
      work.nearMiss /= 2
    } else {
      work.nearGain = work.gain
      work.nearMiss = work.miss
      farMiss /= 2
    }
  }
}
