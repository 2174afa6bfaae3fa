/** Bearing patterns that panel and stage share: asked for once, from another thread. */
import { expect, test } from 'vitest'
import { COMPOUND_FILM, bearingPattern } from '../../sim/gear/bearing-pattern.ts'
import { type PatternRequest, flankPatterns, patternOf } from '../../web/shape-work/flank-patterns.ts'
import { createPatternDesk } from '../../web/shape-work/patterns.ts'
import { IDEAL } from '../../web/store/view.ts'
import { bootCleaner } from '../support/machines.ts'

const { gearing } = bootCleaner
const tilted = { ...IDEAL, along: 0.05, tilt: 0.3 }

/** Threads that answer only when they are told to. */
function heldThreads() {
  const sent: PatternRequest[] = []
  const log = { opened: 0, ended: 0 }
  let thread: EventTarget | null = null
  const open = () => {
    log.opened++
    thread = Object.assign(new EventTarget(), {
      postMessage: (request: PatternRequest) => void sent.push(request),
      terminate: () => void log.ended++,
    })
    return thread as Worker
  }
  const answer = () =>
    thread?.dispatchEvent(new MessageEvent('message', { data: flankPatterns(sent.at(-1)!) }))
  return { open, answer, sent, log }
}

test('what panel and stage both ask for is worked out once', () => {
  const { open, answer, sent, log } = heldThreads()
  const desk = createPatternDesk(open)
  const panel = desk.use()
  const stage = desk.use()
  desk.ask(gearing, tilted)
  desk.ask(gearing, tilted)
  expect(sent).toEqual([{ gearing, misplaced: tilted }])
  expect(desk.found.getState()).toBeNull()
  answer()
  expect(desk.found.getState()).toMatchObject({ gearing, misplaced: tilted })
  panel()
  expect(log.ended).toBe(0)
  stage()
  expect(log).toEqual({ opened: 1, ended: 1 })
})

test('a drag ends with the last setting, and a thread that was let go is opened again', () => {
  const { open, answer, sent, log } = heldThreads()
  const desk = createPatternDesk(open)
  const release = desk.use()
  const steps = [0.01, 0.02, 0.03].map((along) => ({ ...IDEAL, along }))
  for (const step of steps) desk.ask(gearing, step)
  answer()
  answer()
  expect(sent.map(({ misplaced }) => misplaced.along)).toEqual([0.01, 0.03])
  expect(desk.found.getState()?.misplaced).toBe(steps[2])
  release()
  desk.use()
  desk.ask(gearing, steps[2]!)
  expect(log.opened).toBe(2)
})

test('each pattern is that of its wheel and flank, with the tilt in radians', () => {
  const patterns = flankPatterns({ gearing, misplaced: tilted })
  const place = { ...tilted, tilt: (0.3 * Math.PI) / 180 }
  for (const side of ['left', 'right'] as const)
    for (const flank of [-1, 1] as const)
      expect(patternOf(patterns, side, flank)).toEqual(
        bearingPattern(gearing, side, flank, place, COMPOUND_FILM),
      )
})
