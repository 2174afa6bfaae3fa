import { expect, test } from 'vitest'
import {
  acceptStep,
  beginStep,
  denseSlope,
  denseValue,
  newStepper,
  prepareDense,
  takeStep,
  writeDense,
} from '../../../sim/numeric/dormand-prince.ts'
import { between, near } from '../../support/near.ts'

/** y' = -y + sin t, z' = y z: smooth, coupled and with a known first part. */
const equations = {
  writeRates(rates: Float64Array, y: Float64Array) {
    rates[0] = 1
    rates[1] = -y[1]! + Math.sin(y[0]!)
    rates[2] = y[1]! * y[2]!
  },
}
const exactFirst = (t: number) => 1.5 * Math.exp(-t) + (Math.sin(t) - Math.cos(t)) / 2

function started(steps: number, over: number) {
  const stepper = newStepper(3, 3, 3)
  stepper.y.set([0, 1, 1])
  stepper.span = over / steps
  beginStep(stepper, equations)
  return stepper
}

function errorAfter(steps: number, over: number): number {
  const stepper = started(steps, over)
  for (let n = 0; n < steps; n++) {
    takeStep(stepper, equations)
    acceptStep(stepper)
  }
  return Math.abs(stepper.y[1]! - exactFirst(over))
}

test('half the step leaves a thirty-second part of the error: the order is 5', () => {
  for (const steps of [32, 64]) {
    const order = Math.log2(errorAfter(steps, 2) / errorAfter(2 * steps, 2))
    between(order, 4.8, 5.4)
  }
})

function betweenError(span: number): number {
  const stepper = started(1, span)
  takeStep(stepper, equations)
  prepareDense(stepper)
  let worst = 0
  for (let theta = 0.05; theta < 1; theta += 0.05)
    worst = Math.max(worst, Math.abs(denseValue(stepper, 1, theta) - exactFirst(theta * span)))
  return worst
}

test('between the ends of a step the error falls with its fifth power, as an extension of order 4 does', () => {
  for (const span of [0.1, 0.05]) between(Math.log2(betweenError(span) / betweenError(span / 2)), 4.6, 5.4)
})

test('the continuous extension meets both ends, and its slope is that of its value', () => {
  const stepper = started(1, 0.5)
  takeStep(stepper, equations)
  prepareDense(stepper)
  for (const n of [1, 2]) {
    expect(denseValue(stepper, n, 0)).toBe(stepper.y[n])
    near(denseValue(stepper, n, 1), stepper.next[n]!, 1e-15)
    near(denseSlope(stepper, n, 0), 0.5 * stepper.rates[0]![n]!, 1e-15)
    near(denseSlope(stepper, n, 1), 0.5 * stepper.rates[6]![n]!, 1e-15)
    const rise = denseValue(stepper, n, 0.4 + 1e-5) - denseValue(stepper, n, 0.4 - 1e-5)
    near(denseSlope(stepper, n, 0.4), rise / 2e-5, 1e-9)
  }
  const out = new Float64Array(3)
  writeDense(out, stepper, 0.3)
  expect([...out]).toEqual([0.15, denseValue(stepper, 1, 0.3), denseValue(stepper, 2, 0.3)])
})

test('the estimated error falls with the fifth power of the step', () => {
  const errors = [0.8, 0.4, 0.2].map((span) => {
    const stepper = started(1, span)
    takeStep(stepper, equations)
    return stepper.error
  })
  between(Math.log2(errors[0]! / errors[1]!), 4.5, 5.5)
  between(Math.log2(errors[1]! / errors[2]!), 4.5, 5.5)
})

test('components that nothing depends on are integrals, taken without stages of their own', () => {
  const area = {
    writeRates(rates: Float64Array, y: Float64Array) {
      rates[0] = 1
      rates[1] = Math.cos(y[0]!)
      rates[2] = y[1]! ** 2
    },
  }
  const stepper = newStepper(3, 2, 2)
  stepper.span = 0.1
  beginStep(stepper, area)
  for (let n = 0; n < 10; n++) {
    takeStep(stepper, area)
    acceptStep(stepper)
  }
  near(stepper.y[2]!, 0.5 - Math.sin(2) / 4, 1e-9)
})
