/** Temperatures and brushes that are asked for, against heat followed in time, a winding sought and brushes worn down. */
import { describe, expect, test } from 'vitest'
import { brushWear } from '../../sim/heat/brush-wear.ts'
import { resistanceFactor } from '../../sim/heat/resistance.ts'
import { valueAfter } from '../support/follow-rate.ts'
import { near, relativelyNear } from '../support/near.ts'
import { answerOf, causeOf, eachOf } from '../support/question-answers.ts'

describe('heat-rise', () => {
  test.each([
    [35.7, 'right'],
    [40, 'straight-line'],
    [15.7, 'rise-only'],
    [44.3, 'rest-not-rise'],
    [60, 'settled'],
  ])('takes %f for what it comes from: %s, worked by hand', (value, cause) => {
    expect(causeOf('heat-rise', { Ta: 20, rise: 40, tau: 20, t: 10 }, value)).toBe(cause)
  })
  test('is what a body with one heat capacity has reached', () => {
    eachOf('heat-rise', ({ Ta, rise, tau, t }, answer) => {
      // Any capacity: the time constant is capacity over conductance, and the heat that comes in keeps up the rise.
      const capacity = 320 // [J/K]
      const conductance = capacity / (60 * tau!)
      const heat = conductance * rise!
      const warming = (T: number) => (heat - conductance * (T - Ta!)) / capacity
      near(valueAfter(warming, Ta!, 60 * t!), answer, 1e-6)
    })
  })
  test('of the case of machine A in a room of 21 degC after one time constant', () => {
    near(answerOf('heat-rise', { Ta: 21, rise: 14.9, tau: 20, t: 20 }), 30.4, 0.05)
  })
})

/** Temperature at which the winding has this resistance, sought by halving [degC]. */
function temperatureAt(R1: number, T1: number, R2: number): number {
  let low = T1
  let high = 300
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if ((R1 / resistanceFactor(T1)) * resistanceFactor(middle) > R2) high = middle
    else low = middle
  }
  return (low + high) / 2
}

describe('heat-resistance', () => {
  test.each([
    [135.8, 'right'],
    [131.8, 'coefficient-at-20'],
    [105.8, 'rise-only'],
    [42, 'ratio-of-degrees'],
    [151.3, 'ratio-of-kelvin'],
  ])('takes %f for what it comes from: %s, worked by hand', (value, cause) => {
    expect(causeOf('heat-resistance', { R1: 2, T1: 30, R2: 2.8 }, value)).toBe(cause)
  })
  test('is where a copper winding has that resistance', () => {
    eachOf('heat-resistance', ({ R1, T1, R2 }, answer) => near(temperatureAt(R1!, T1!, R2!), answer, 1e-9))
  })
  test('D. C. Kulshreshtha, Basic Electrical Engineering, example 2.18, from a companion data set', () => {
    // The book takes 0.00426 at 0 degC, which is 234.74 in place of 234.5: 0.1 K.
    near(answerOf('heat-resistance', { R1: 3.42, T1: 20, R2: 4.22 }), 20 + 59.59, 0.1)
  })
})

/** Days until nothing is left, each day's wear taken off; the last one as far as it is needed. */
function daysUntilWorn(l: number, w: number, r: number, h: number): number {
  const usual = 4 // [m/s], any
  const law = { wear: w, speed: usual, current: 1, byCurrent: 0.5 }
  const daily = (brushWear(law, r * usual, 0) / 1000) * h
  let days = 0
  let left = l
  for (; left > daily; days++) left -= daily
  return days + left / daily
}

describe('brush-days', () => {
  test.each([
    [500, 'right'],
    [750, 'no-speed'],
    [1125, 'speed-upside-down'],
    [0.5, 'no-1000'],
    [2000, 'hours-for-days'],
  ])('takes %f for what it comes from: %s, worked by hand', (value, cause) => {
    expect(causeOf('brush-days', { l: 6, w: 2, r: 1.5, h: 4 }, value)).toBe(cause)
  })
  test('is when brushes are worn that wear a little each day', () => {
    eachOf('brush-days', ({ l, w, r, h }, answer) =>
      relativelyNear(daysUntilWorn(l!, w!, r!, h!), answer, 1e-9),
    )
  })
})
