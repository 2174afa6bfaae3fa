/** One quantity followed by its rate of change in small steps, for answers that have a closed form elsewhere. */
import {
  type Stepper,
  acceptStep,
  beginStep,
  denseValue,
  newStepper,
  prepareDense,
  stepFactor,
  takeStep,
} from '../../sim/numeric/dormand-prince.ts'

type Rate = (y: number) => number

const TOLERANCE = 1e-10
const HALVINGS = 60

function stepperFrom(rate: Rate, from: number) {
  const stepper = newStepper(2, 2, 2)
  stepper.tolerance = TOLERANCE
  stepper.y[1] = from
  const equations = {
    writeRates: (rates: Float64Array, y: Float64Array) => {
      rates[0] = 1
      rates[1] = rate(y[1]!)
    },
  }
  beginStep(stepper, equations)
  return { stepper, equations }
}

/** Takes steps until one has its end where `isOver` says; that one is not accepted. */
function runUntil(rate: Rate, from: number, span: number, isOver: (stepper: Stepper) => boolean): Stepper {
  const { stepper, equations } = stepperFrom(rate, from)
  stepper.span = span
  for (;;) {
    takeStep(stepper, equations)
    if (stepper.error > 1) stepper.span *= stepFactor(stepper.error)
    else if (isOver(stepper)) return stepper
    else {
      acceptStep(stepper)
      stepper.span *= stepFactor(stepper.error)
    }
  }
}

/** Where in the last step something comes about that has not at its start and has at its end. */
function placeInStep(stepper: Stepper, hasHappened: (theta: number) => boolean): number {
  prepareDense(stepper)
  let low = 0
  let high = 1
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2
    if (hasHappened(middle)) high = middle
    else low = middle
  }
  return high
}

/** Value after a time. */
export function valueAfter(rate: Rate, from: number, time: number): number {
  const stepper = runUntil(rate, from, time / 100, ({ next }) => next[0]! >= time)
  prepareDense(stepper)
  return denseValue(stepper, 1, (time - stepper.y[0]!) / stepper.span)
}

/** Time until a falling value has come down to `to`. */
export function timeToFall(rate: Rate, from: number, to: number, firstSpan: number): number {
  const stepper = runUntil(rate, from, firstSpan, ({ next }) => next[1]! <= to)
  const theta = placeInStep(stepper, (at) => denseValue(stepper, 1, at) <= to)
  return stepper.y[0]! + theta * stepper.span
}
