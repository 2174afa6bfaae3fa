import { fuseTime, fuseWarmth } from '../heat/fuse.ts'
import type { Stepper } from '../numeric/dormand-prince.ts'
import {
  acceptStep,
  beginStep,
  prepareDense,
  stepFactor,
  takeStep,
  TIME,
  writeDense,
} from '../numeric/dormand-prince.ts'
import type { HeatEquations } from './heating-equations.ts'
import { newHeatEquations, newHeatStepper, WINDING } from './heating-equations.ts'
import type { HeatingRows, HeatPassages } from './heating-record.ts'
import { addRow, newHeatingRows, newPassages, notePassages } from './heating-record.ts'
import { HOTTEST } from './heating-settled.ts'
import type { HeatSource } from './heating-source.ts'

/** A heating run on its way. */
export interface Heating {
  readonly equations: HeatEquations
  readonly stepper: Stepper
  /** Of the whole run [s] */
  readonly duration: number
  /** Between even rows [s] */
  readonly interval: number
  /** Whether a fuse or overload switch that opens switches off */
  readonly protectionActs: boolean
  readonly rows: HeatingRows
  readonly passages: HeatPassages
  /** Places for a state between steps and for its rates */
  readonly between: Float64Array
  readonly rates: Float64Array
  /** Number of the next even row */
  nextRow: number
  /** Of fuse or overload switch; 1 is open */
  warmth: number
  /** Through it at the start of the step [A r.m.s.] */
  current: number
  /** Moments [s]; Infinity is not yet */
  opened: number
  stalled: number
  /** Why it ended before its time */
  ended: string | null
  /** Step that the error allows [s] */
  wanted: number
  steps: number
}

export function newHeating(
  source: HeatSource,
  from: { readonly winding: number; readonly case: number },
  duration: number,
  parts: number,
  protectionActs: boolean,
): Heating {
  const { thermal } = source
  const stepper = newHeatStepper(from.winding, from.case)
  return {
    equations: newHeatEquations(source),
    stepper,
    duration,
    interval: duration / parts,
    protectionActs,
    rows: newHeatingRows(),
    passages: newPassages(thermal.hotSpotMargin),
    between: new Float64Array(stepper.y.length),
    rates: new Float64Array(stepper.y.length),
    nextRow: 1,
    warmth: 0,
    current: 0,
    opened: Infinity,
    stalled: Infinity,
    ended: source.notComputed,
    wanted: FIRST_PART * (thermal.windingCapacity / (thermal.windingToCase + thermal.windingToCaseFan)),
    steps: 0,
  }
}

/** Part of the shorter time constant that the first step takes. */
const FIRST_PART = 0.05
const LEAST_SPAN = 1e-9 // of the duration
const MOST_STEPS = 100_000
const STALL_HALVINGS = 24
/** A step that would leave less than this part of itself is made to reach the end. */
const REMNANT = 1e-3

/** Warms or cools for a time with the machine switched on or off. Yields the part of the duration that is done. */
export function* stretch(heating: Heating, on: boolean, length: number): Generator<number, void> {
  const { stepper, duration } = heating
  const end = Math.min(duration, stepper.y[TIME]! + length)
  begin(heating, on)
  while (stepper.y[TIME]! < end && heating.ended === null) {
    stepper.span = spanTo(heating, end)
    takeStep(stepper, heating.equations)
    heating.wanted = Math.max(stepper.span * stepFactor(stepper.error), 2 * LEAST_SPAN * duration)
    if (++heating.steps >= MOST_STEPS)
      heating.ended =
        'too many steps: the run is long for how fast the winding warms, or for its times on and off'
    if (!(stepper.error <= 1) && stepper.span > LEAST_SPAN * duration) continue
    finishStep(heating, end)
    if (heating.protectionActs && heating.opened < Infinity && heating.equations.on) begin(heating, false)
    yield stepper.y[TIME]! / duration
  }
}

function begin(heating: Heating, on: boolean): void {
  const { equations, stepper } = heating
  const { point } = equations
  equations.on = on && !(heating.protectionActs && heating.opened < Infinity)
  beginStep(stepper, equations)
  point.before = point.speed
  heating.current = point.protectedCurrent
  if (point.speed === 0) noteStall(heating, stepper.y[TIME]!)
  keepRow(heating, stepper.y)
}

/** No further than the end of the stretch, and where it acts, than the moment at which the protection opens. */
function spanTo(heating: Heating, end: number): number {
  const { stepper, wanted } = heating
  const rest = Math.min(end - stepper.y[TIME]!, heating.protectionActs ? openingTime(heating) : Infinity)
  return wanted < (1 - REMNANT) * rest ? wanted : rest
}

/** Time from the start of the step until fuse or overload switch opens [s] */
function openingTime({ equations, warmth, current, opened }: Heating): number {
  const { protection } = equations.source.machine
  if (opened < Infinity || !('timeConstant' in protection)) return Infinity
  return fuseTime(current, protection.current, protection.timeConstant, warmth)
}

/** Takes what the step says into the run and makes its end the next start. */
function finishStep(heating: Heating, end: number): void {
  const { equations, stepper } = heating
  const { point } = equations
  const { speed } = point
  warmProtection(heating)
  heating.current = point.protectedCurrent
  prepareDense(stepper)
  notePassages(heating.passages, stepper)
  keepEvenRows(heating, end)
  if (speed === 0 && point.before !== 0) noteStall(heating, stallTime(heating))
  point.before = speed
  acceptStep(stepper)
  if (!Number.isFinite(speed)) heating.ended = 'the load drives the machine ever faster'
  if (!(stepper.y[WINDING]! < HOTTEST))
    heating.ended = `the winding passed ${HOTTEST} °C: nothing here holds beyond that`
  if (stepper.y[TIME]! >= end || heating.ended !== null) keepRow(heating, stepper.y)
}

function warmProtection(heating: Heating): void {
  const { stepper, equations, warmth, current } = heating
  const { protection } = equations.source.machine
  if (!('timeConstant' in protection)) return
  const opening = openingTime(heating)
  if (opening <= stepper.span * (1 + Number.EPSILON)) heating.opened = stepper.y[TIME]! + opening
  heating.warmth = fuseWarmth(warmth, current, protection.current, stepper.span, protection.timeConstant)
}

/** A jam is no stall, nor is a shaft that is held: it holds the machine whatever the motor can. */
function noteStall(heating: Heating, time: number): void {
  const { on, source } = heating.equations
  if (!on || !source.input.connected || source.input.jammed !== 'none' || source.held) return
  heating.stalled = Math.min(heating.stalled, time)
}

/** When the machine, still running at the start of the step just taken and at rest at its end, came to rest [s] */
function stallTime({ equations, stepper, between, rates }: Heating): number {
  let [running, resting] = [0, 1]
  for (let n = 0; n < STALL_HALVINGS; n++) {
    const middle = (running + resting) / 2
    writeDense(between, stepper, middle)
    equations.writeRates(rates, between)
    if (equations.point.speed === 0) resting = middle
    else running = middle
  }
  return stepper.y[TIME]! + resting * stepper.span
}

function keepEvenRows(heating: Heating, end: number): void {
  const { stepper, between, interval } = heating
  for (;;) {
    const time = heating.nextRow * interval
    if (time > stepper.next[TIME]!) return
    heating.nextRow++
    // The ends of a stretch have rows of their own.
    if (time >= end) continue
    writeDense(between, stepper, (time - stepper.y[TIME]!) / stepper.span)
    keepRow(heating, between)
  }
}

function keepRow(heating: Heating, y: Float64Array): void {
  const { equations, rates, rows } = heating
  equations.writeRates(rates, y)
  addRow(rows, y, equations.point, equations.source.thermal.ambient)
}
