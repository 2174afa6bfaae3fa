import type { Circuit } from '../electric/circuit.ts'
import { lastPlace } from '../gear/last-place.ts'
import type { Curve } from '../numeric/brent.ts'
import { brent } from '../numeric/brent.ts'
import type { Drive } from './drive.ts'
import type { DriveInput } from './input.ts'
import { accelerate, start } from './motion.ts'
import { solveTorque } from './torque.ts'

/**
 * Twice what any motor with magnets in range reaches, 280 V/50 V x 250 V x sqrt 2 on 0.0005 V s/rad: 2^23 rad/s,
 * beyond which lies nothing.
 */
const MOST_DOUBLINGS = 23
/** A series motor knows no such end, but 2^17 rad/s, over a million turns a minute, no rotor holds together. */
const MOST_SERIES_DOUBLINGS = 17
const SLICES = 64
/** Where there is one meeting alone, slices only keep its search away from standstill, which takes longest to solve. */
const FEW_SLICES = 4

/**
 * Where speed settles from standstill, in the commanded frame [rad/s]; infinite where nothing stops its rise. Solves
 * period means at the very speed. Needs work.live.
 */
export function steadySpeed(drive: Drive, input: DriveInput): number {
  const { work } = drive
  if (drive.crankSpeeds.length > 0 && input.connected)
    return input.jammed === 'none' ? (drive.crankSpeeds[input.setting] ?? 0) : 0
  work.exact = true
  work.speed = 0
  solveTorque(drive, input)
  start(drive, input)
  const { motion } = work
  return motion === 0 ? 0 : motion * outermostRest(drive, input, motion)
}

/** Acceleration at a steady speed of this size, positive where the drive would still gain speed. */
function surplus(drive: Drive, input: DriveInput, motion: number, size: number): number {
  const { work } = drive
  work.speed = motion * size
  work.motion = motion
  if (isBeyondPower(drive, input, motion, size)) return motion * work.acceleration
  solveTorque(drive, input)
  accelerate(drive, input)
  return motion * work.acceleration
}

/** Whether even all the power that the source can give is too little for the demand at this speed. */
function isBeyondPower(drive: Drive, input: DriveInput, motion: number, size: number): boolean {
  const { work } = drive
  if (!drive.tables[input.setting] || motion < 0) return false
  work.torque = work.live ? highestPower(drive, input) / size : 0
  accelerate(drive, input)
  return work.acceleration < 0
}

/**
 * What any circuit can give to the shaft on average [W]: of a source of r.m.s. voltage V behind a resistance R no
 * more than V^2/(4 R) can be taken. Elementary, by Cauchy and Schwarz.
 */
function highestPower(drive: Drive, input: DriveInput): number {
  const circuit = drive.circuits[input.setting]
  if (!circuit) return 0
  const { source, winding, capacitance } = circuit
  const square = source.angularFrequency > 0 ? source.emf ** 2 / 2 : source.emf ** 2
  // A capacitor or a chopper stands between the two resistances, and the currents through them differ.
  const inSeries = capacitance === 0 && !circuit.chopper
  return square / (4 * (source.resistance + (inSeries ? winding.resistance : 0)))
}

/**
 * Whether what is left over can only fall as the speed rises, so that torque and demand meet once: a motor with
 * magnets, and meshes that a driving load does not bind.
 */
const meetsOnce = (drive: Drive, motion: number, circuit: Circuit | undefined): boolean =>
  motion > 0 && drive.backwardEfficiency >= 0 && circuit?.winding.kind === 'permanent-magnet'

/** The highest speed at which torque and demand meet: bracketed by doubling, looked for from above, closed in. */
function outermostRest(drive: Drive, input: DriveInput, motion: number): number {
  const curve: Curve = { at: (size) => surplus(drive, input, motion, size) }
  const circuit = drive.circuits[input.setting]
  const once = meetsOnce(drive, motion, circuit)
  // From E = k w on, the crest of the source drives no current.
  let high = once && circuit ? circuit.source.emf / circuit.winding.emfConstant : 1
  let short = curve.at(high)
  const isSeries = circuit?.winding.kind === 'universal'
  const most = isSeries ? MOST_SERIES_DOUBLINGS : MOST_DOUBLINGS
  for (let i = 0; i < most && short > 0; i++) {
    high *= 2
    short = curve.at(high)
  }
  if (short > 0) return Infinity
  const slices = once ? FEW_SLICES : SLICES
  const slice = high / slices
  for (let n = slices - 1; n >= 0; n--) {
    const low = n * slice
    const over = curve.at(low)
    if (over > 0 && short < 0) return brent(curve, low, high, over, short, 0)
    // Without any friction nothing pulls a speed back at which the current has ended: it begins where that does.
    if (over > 0) return lastPlace(low, high, (size) => curve.at(size) > 0)
    high = low
    short = over
  }
  return 0
}
