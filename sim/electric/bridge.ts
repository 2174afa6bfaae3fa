import type { Arc } from './arc.ts'
import { evaluateArc, findPeak, integrateArc, meetArc } from './arc.ts'
import type { BridgeCircuit, BridgeWork } from './bridge-circuit.ts'
import { driveBoth, driveSource } from './bridge-circuit.ts'
import type { CurrentCycle } from './cycle.ts'
import { clearCycle } from './cycle.ts'

const MOST_PASSES = 40
/** Steps in which an event after the mains zero is looked for [rad] */
const SEARCH_STEP = Math.PI / 32

/**
 * Means of the half cycle that repeats itself at the opposing voltage in `cycle`.
 *
 * While the bridge conducts, both inductances carry one current. Where the voltage ahead of the diodes would
 * turn negative, all four diodes conduct (overlap): the motor current runs down by itself while the source
 * current turns over, and the bridge conducts again when the two are equal. Between events all currents are
 * closed expressions; the events are roots. With gaps one pass is the answer; without, the current at the
 * start of the overlap is sought that comes back after half a cycle (secant; the map is nearly affine).
 * Derived here; overlap as in N. Mohan, T. Undeland & W. Robbins, Power Electronics, chapter 5 (from memory).
 * Exact while leakage stays below the motor's inductance, as it does in any real transformer.
 */
export function solveBridge(cycle: CurrentCycle, circuit: BridgeCircuit, work: BridgeWork): void {
  clearCycle(cycle)
  const opposing = cycle.opposing + circuit.diodeDrops
  work.opposing = opposing
  if (opposing >= circuit.emfPeak) return
  work.cross =
    circuit.sourceResistance * circuit.motorInductance - circuit.sourceInductance * circuit.motorResistance
  work.restart = 0
  work.current = 0
  if (opposing > 0) work.restart = Math.asin(opposing / circuit.emfPeak)
  else work.current = -opposing / circuit.motorResistance
  work.start = work.restart
  const flowsOn = conduct(cycle, circuit, work)
  if (flowsOn) repeatHalfCycle(cycle, circuit, work)
  finish(cycle, circuit)
}

function finish(cycle: CurrentCycle, circuit: BridgeCircuit): void {
  cycle.mean /= Math.PI
  cycle.rectifiedMean = cycle.mean
  cycle.square /= Math.PI
  cycle.conducting /= Math.PI
  cycle.sourceSquare /= Math.PI
  cycle.sourcePower *= circuit.emfPeak / Math.PI
  cycle.sourceQuadrature *= circuit.emfPeak / Math.PI
}

function repeatHalfCycle(cycle: CurrentCycle, circuit: BridgeCircuit, work: BridgeWork): void {
  let before = work.current
  let last = Number.NaN
  let lastMiss = Number.NaN
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    clearCycle(cycle)
    work.current = before
    const overlaps = overlap(cycle, circuit, work)
    if (!overlaps) return
    if (!conduct(cycle, circuit, work)) return
    const miss = work.current - before
    if (Math.abs(miss) <= 4 * Number.EPSILON * before) return
    const slope = (miss - lastMiss) / (before - last)
    const next = slope < 0 ? before - miss / slope : before + miss
    last = before
    lastMiss = miss
    before = next > 0 ? next : work.current
  }
}

/**
 * From the start of the overlap, which the current there fixes, to the angle where the source carries the
 * motor's current the new way. False when that never comes: then all diodes conduct for ever.
 */
function overlap(cycle: CurrentCycle, circuit: BridgeCircuit, work: BridgeWork): boolean {
  const { emfPeak, angularFrequency, sourceResistance, sourceInductance, motorResistance, motorInductance } =
    circuit
  const { motor, other, opposing } = work
  if (sourceResistance === 0 && sourceInductance === 0) {
    work.start = 0
    return true
  }
  let level = (work.current * work.cross - sourceInductance * opposing) / (motorInductance * emfPeak)
  // Clamped because a current beyond what the source can reach starts its overlap at the crest.
  if (level > 1) level = 1
  if (level < -1) level = -1
  const from = -Math.asin(level)
  motor.sine = 0
  motor.cosine = 0
  motor.constant = -opposing / motorResistance
  motor.rate = motorResistance / (angularFrequency * motorInductance)
  motor.from = from
  motor.decaying = work.current - motor.constant
  driveSource(other, circuit)
  other.constant = 0
  other.from = from
  other.decaying = 0
  other.to = from
  evaluateArc(other)
  if (sourceInductance > 0) other.decaying = -work.current - other.value
  if (!findNewCourse(work)) {
    allConduct(cycle, work)
    return false
  }
  add(cycle, motor, other)
  evaluateArc(motor)
  work.start = motor.to
  work.current = motor.value
  return true
}

/**
 * Ends both arcs where the source carries the motor's current; false where it does not do so in this half
 * cycle.
 */
function findNewCourse(work: BridgeWork): boolean {
  const { motor, other } = work
  motor.to = motor.from
  other.to = other.from
  while (other.to < Math.PI) {
    const before = motor.to
    motor.to = other.to
    evaluateArc(motor)
    evaluateArc(other)
    if (motor.value <= other.value) {
      motor.to = before
      meetArc(motor, other)
      other.to = motor.to
      return true
    }
    other.to += SEARCH_STEP
  }
  return false
}

/** Motor current steady, source current a whole sine behind the short circuit. */
function allConduct(cycle: CurrentCycle, work: BridgeWork): void {
  const { motor, other } = work
  clearCycle(cycle)
  motor.decaying = 0
  other.decaying = 0
  motor.from = 0
  motor.to = Math.PI
  other.from = 0
  other.to = Math.PI
  add(cycle, motor, other)
}

/**
 * From work.start, with work.current, until the current dies (false) or the next overlap begins (true, its
 * current left in work.current).
 */
function conduct(cycle: CurrentCycle, circuit: BridgeCircuit, work: BridgeWork): boolean {
  const { motor, nothing } = work
  beginConduction(circuit, work)
  if (motor.to < work.restart) motor.to = work.restart
  evaluateArc(motor)
  if (motor.value < 0) {
    motor.to = motor.from
    nothing.to = work.restart
    meetArc(motor, nothing)
    add(cycle, motor, motor)
    work.start = work.restart
    work.current = 0
    beginConduction(circuit, work)
  }
  motor.to = Math.PI
  evaluateArc(motor)
  let flowsOn = motor.value > 0
  motor.to = Math.PI / 2
  if (motor.to < motor.from) motor.to = motor.from
  nothing.to = Math.PI
  if (flowsOn) flowsOn = findOverlap(circuit, work)
  else meetArc(motor, nothing)
  add(cycle, motor, motor)
  evaluateArc(motor)
  work.current = motor.value
  return flowsOn
}

function beginConduction(circuit: BridgeCircuit, work: BridgeWork): void {
  const { motor, opposing, start, current } = work
  const resistance = circuit.sourceResistance + circuit.motorResistance
  driveBoth(motor, circuit)
  motor.constant = -opposing / resistance
  motor.from = start
  motor.to = start
  motor.decaying = 0
  evaluateArc(motor)
  motor.decaying = current - motor.value
}

/**
 * Ends the conducting arc where the voltage ahead of the diodes passes zero, near the mains zero; false where
 * the current dies before.
 */
function findOverlap(circuit: BridgeCircuit, work: BridgeWork): boolean {
  const { motor, other, nothing, cross } = work
  other.sine = circuit.motorInductance * circuit.emfPeak - cross * motor.sine
  other.cosine = -cross * motor.cosine
  other.constant = circuit.sourceInductance * work.opposing - cross * motor.constant
  other.decaying = -cross * motor.decaying
  other.rate = motor.rate
  other.from = motor.from
  let before = motor.to
  other.to = Math.PI
  evaluateArc(other)
  while (other.value > 0 && other.to < 2 * Math.PI) {
    before = other.to
    motor.to = before + SEARCH_STEP
    other.to = motor.to
    evaluateArc(motor)
    evaluateArc(other)
    if (motor.value > 0 || overlapsFirst(work, before)) continue
    motor.to = before
    meetArc(motor, nothing)
    return false
  }
  nothing.to = other.to
  other.to = before
  meetArc(other, nothing)
  motor.to = other.to
  return true
}

/** Whether the voltage has passed zero where the current, gone at the end of the step, still flowed. */
function overlapsFirst({ motor, other, nothing }: BridgeWork, before: number): boolean {
  nothing.to = motor.to
  if (other.value > 0) return false
  const { to, value } = other
  other.to = before
  meetArc(other, nothing)
  motor.to = other.to
  evaluateArc(motor)
  other.to = to
  other.value = value
  return motor.value > 0
}

function add(cycle: CurrentCycle, motor: Arc, source: Arc): void {
  integrateArc(motor)
  cycle.mean += motor.sum
  cycle.square += motor.squareSum
  cycle.conducting += motor.to - motor.from
  findPeak(motor)
  if (motor.peak > cycle.peak) cycle.peak = motor.peak
  if (source !== motor) integrateArc(source)
  cycle.sourceSquare += source.squareSum
  cycle.sourcePower += source.sineSum
  cycle.sourceQuadrature += source.cosineSum
}
