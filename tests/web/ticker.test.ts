/** Frames that are asked for: when one follows, and how much time each one counts. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { createTicker } from '../../web/scene/ticker.ts'

let now = 0
let asked: ((at: number) => void)[] = []

/** The browser draws, so many milliseconds later. */
function pass(milliseconds: number): void {
  now += milliseconds
  const due = asked
  asked = []
  for (const step of due) step(now)
}

beforeEach(() => {
  now = 1000
  asked = []
  vi.stubGlobal('requestAnimationFrame', (step: (at: number) => void) => asked.push(step))
  vi.spyOn(performance, 'now').mockImplementation(() => now)
})
afterEach(() => {
  vi.unstubAllGlobals()
  vi.restoreAllMocks()
})

const nothing = () => ({ triangles: 0, drawCalls: 0, geometries: 0 })

test('the first frame counts from when it was asked for, the rest of a machine at rest counts nothing', () => {
  const drawn: number[] = []
  const more = [true, false, false]
  const ticker = createTicker(
    (elapsed) => {
      drawn.push(elapsed)
      return more.shift() ?? false
    },
    () => false,
    nothing,
  )
  ticker.wake()
  ticker.wake()
  pass(600)
  pass(20)
  expect(asked).toHaveLength(0)
  pass(60_000)
  ticker.wake()
  pass(16)
  expect(drawn).toEqual([0.6, 0.02, 0.016])
})

test('a frame that waits for something else is not drawn, and the wait is not counted', () => {
  const drawn: number[] = []
  let waiting = true
  const ticker = createTicker(
    (elapsed) => drawn.push(elapsed) < 0,
    () => waiting,
    nothing,
  )
  ticker.wake()
  pass(16)
  expect(drawn).toEqual([])
  waiting = false
  pass(500)
  ticker.wake()
  pass(16)
  expect(drawn).toEqual([0.016])
})
