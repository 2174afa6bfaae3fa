import { expect, test } from 'vitest'
import {
  begunClock,
  clockAt,
  clockText,
  paused,
  readClock,
  resetClock,
  resumed,
  spentInAll,
  spentOn,
} from '../../web/presenter/clock.ts'

const RUN = 'run'
const at = (beat: string) => ({ run: RUN, beat })
const MINUTE = 60_000

test('each topic has its own time, and the whole is their sum', () => {
  let clock = begunClock(RUN, 'a', 0)
  clock = clockAt(clock, at('b'), 2 * MINUTE)
  clock = clockAt(clock, at('a'), 5 * MINUTE)
  expect(spentOn(clock, 'a', 6 * MINUTE)).toBe(3 * MINUTE)
  expect(spentOn(clock, 'b', 6 * MINUTE)).toBe(3 * MINUTE)
  expect(spentInAll(clock, 6 * MINUTE)).toBe(6 * MINUTE)
  expect(spentOn(clock, 'c', 6 * MINUTE)).toBe(0)
})

test('a paused clock stands, also from topic to topic, until it runs again', () => {
  let clock = paused(begunClock(RUN, 'a', 0), MINUTE)
  expect(spentInAll(clock, 9 * MINUTE)).toBe(MINUTE)
  clock = clockAt(clock, at('b'), 9 * MINUTE)
  expect(spentInAll(clock, 10 * MINUTE)).toBe(MINUTE)
  clock = resumed(clock, 10 * MINUTE)
  expect(resumed(clock, 11 * MINUTE)).toBe(clock)
  expect(spentOn(clock, 'b', 12 * MINUTE)).toBe(2 * MINUTE)
  expect(spentInAll(clock, 12 * MINUTE)).toBe(3 * MINUTE)
})

test('reset empties it and leaves it running or paused; another run of the lesson begins anew', () => {
  const running = begunClock(RUN, 'a', 0)
  expect(spentInAll(resetClock(running, MINUTE), 3 * MINUTE)).toBe(2 * MINUTE)
  expect(spentInAll(resetClock(paused(running, MINUTE), MINUTE), 3 * MINUTE)).toBe(0)
  expect(clockAt(running, { run: 'other', beat: 'a' }, MINUTE)).toEqual(begunClock('other', 'a', MINUTE))
  expect(clockAt(running, at('a'), MINUTE)).toBe(running)
})

test('a clock of the device that is set back takes nothing away', () => {
  expect(spentInAll(begunClock(RUN, 'a', MINUTE), 0)).toBe(0)
})

test('times read as on a watch', () => {
  expect([0, 999, 61_000, 3_599_000, 3_600_000, 3_845_000].map(clockText)).toEqual([
    '0:00',
    '0:00',
    '1:01',
    '59:59',
    '1:00:00',
    '1:04:05',
  ])
})

test('what was kept is read back, and anything else is no clock', () => {
  const clock = paused(clockAt(begunClock(RUN, 'a', 0), at('b'), MINUTE), 2 * MINUTE)
  expect(readClock(JSON.stringify(clock))).toEqual(clock)
  for (const text of [null, '', '{', '[]', '{"run":"a"}', JSON.stringify({ ...clock, spent: { a: '1' } })])
    expect(readClock(text)).toBeNull()
})
