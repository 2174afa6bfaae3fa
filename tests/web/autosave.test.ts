import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { QUIET_TIME, createAutosave } from '../../web/file/autosave.ts'
import { plainState } from '../../web/file/link-state.ts'
import { packText } from '../../web/file/pack-text.ts'
import { plainLink } from '../../web/file/plain-link.ts'
import { readAutosave } from '../../web/file/read-autosave.ts'
import type { Keeper } from '../../web/file/storage.ts'
import { firstTheme, keepTheme } from '../../web/file/theme.ts'
import { writeLink } from '../../web/file/write-link.ts'
import { bootCleaner, ventOpener } from '../support/machines.ts'

const BENCH = 'counterturn.bench'
const DAMAGED = 'counterturn.bench.damaged'

function memory(kept: Record<string, string> = {}): Keeper & { readonly kept: Record<string, string> } {
  return {
    kept,
    getItem: (key) => kept[key] ?? null,
    setItem: (key, value) => {
      kept[key] = value
    },
  }
}

const throwing = (name: string): Keeper => {
  const refuse = () => {
    throw new DOMException('refused', name)
  }
  return { getItem: refuse, setItem: refuse }
}

function autosaveIn(keeper: Keeper | null, text: () => string = () => 'now') {
  const page = new EventTarget()
  const told: string[] = []
  return {
    autosave: createAutosave({ keeper, text, page, tell: (sentence) => told.push(sentence) }),
    page,
    told,
  }
}

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

test('changes in quick succession are written once, when they have ended', () => {
  const keeper = memory()
  let text = 'first'
  const { autosave } = autosaveIn(keeper, () => text)
  autosave.changed()
  vi.advanceTimersByTime(QUIET_TIME - 1)
  text = 'second'
  autosave.changed()
  vi.advanceTimersByTime(QUIET_TIME - 1)
  expect(keeper.kept[BENCH]).toBeUndefined()
  expect(autosave.store.getState().status).toBe('waiting')
  vi.advanceTimersByTime(1)
  expect(keeper.kept[BENCH]).toBe('second')
  expect(autosave.store.getState().status).toBe('saved')
})

test('leaving the page writes at once, also what no change told of', () => {
  const keeper = memory()
  const { page } = autosaveIn(keeper)
  page.dispatchEvent(new Event('pagehide'))
  expect(keeper.kept[BENCH]).toBe('now')
})

test('after it is stopped nothing more is written', () => {
  const keeper = memory()
  const { autosave, page } = autosaveIn(keeper)
  autosave.changed()
  autosave.stop()
  vi.advanceTimersByTime(QUIET_TIME)
  page.dispatchEvent(new Event('pagehide'))
  expect(keeper.kept).toEqual({})
})

test.each([
  ['missing', null, /keeps nothing for this page/],
  ['full', throwing('QuotaExceededError'), /no room left/],
  ['forbidden', throwing('SecurityError'), /does not let this page/],
])(
  'storage that is %s is told of once, with the way out, and every later change is tried',
  (_, keeper, words) => {
    const { autosave, told } = autosaveIn(keeper)
    for (let i = 0; i < 3; i++) {
      autosave.changed()
      vi.advanceTimersByTime(QUIET_TIME)
    }
    expect(told).toHaveLength(1)
    expect(told[0]).toMatch(words)
    expect(told[0]).toMatch(/Save to a file/)
    expect(autosave.store.getState()).toEqual({ status: 'not saved', reason: told[0] })
  },
)

test('storage that has room again is used again', () => {
  const keeper = memory()
  let full = true
  const narrow: Keeper = {
    ...keeper,
    setItem: (key, value) => {
      if (full) throw new DOMException('full', 'QuotaExceededError')
      keeper.setItem(key, value)
    },
  }
  const { autosave } = autosaveIn(narrow)
  autosave.changed()
  vi.advanceTimersByTime(QUIET_TIME)
  expect(autosave.store.getState().status).toBe('not saved')
  full = false
  autosave.changed()
  vi.advanceTimersByTime(QUIET_TIME)
  expect(autosave.store.getState()).toEqual({ status: 'saved', reason: '' })
  expect(keeper.kept[BENCH]).toBe('now')
})

test('what was written is read back, bench and moment with it', () => {
  const state = {
    ...plainState(ventOpener, 'design'),
    moment: { turns: 1_000_000, ticks: 17, rest: 0.123_456_789 },
  }
  expect(readAutosave(memory({ [BENCH]: writeLink(state) }))).toStrictEqual({ state, problems: [] })
})

test.each([
  ['missing', null],
  ['empty', memory()],
  ['closed', throwing('SecurityError')],
])('from storage that is %s nothing is read, and that is no problem', (_, keeper) => {
  expect(readAutosave(keeper)).toEqual({ state: null, problems: [] })
})

test('a damaged autosave is named and put aside, before the next one takes its place', () => {
  const keeper = memory({ [BENCH]: 'damaged' })
  const { state, problems } = readAutosave(keeper)
  expect(state).toBeNull()
  expect(problems[0]).toMatchObject({ path: BENCH, severity: 'warning' })
  expect(problems[0]!.message).toContain(DAMAGED)
  expect(problems.length).toBeGreaterThan(1)
  expect(keeper.kept[DAMAGED]).toBe('damaged')
})

test('a second damaged autosave is put beside the first one, and the same one is not put there twice', () => {
  const keeper = memory({ [BENCH]: 'first' })
  readAutosave(keeper)
  readAutosave(keeper)
  keeper.kept[BENCH] = 'second'
  readAutosave(keeper)
  expect(keeper.kept[DAMAGED]).toBe('first\nsecond')
})

test('a damaged autosave that cannot be put aside says so', () => {
  const keeper: Keeper = {
    ...throwing('QuotaExceededError'),
    getItem: (key) => (key === BENCH ? 'damaged' : null),
  }
  expect(readAutosave(keeper).problems[0]!.message).toMatch(/no room to put it aside/)
})

test('an autosave with one unknown setting opens, and is put aside whole so that nothing of it is lost', () => {
  const text = packText(JSON.stringify({ v: 2, base: 'boot-cleaner', of: 0, set: { 'bench.colour': 'red' } }))
  const keeper = memory({ [BENCH]: text })
  const { state, problems } = readAutosave(keeper)
  expect(state!.machine).toStrictEqual(bootCleaner)
  expect(problems.map(({ path }) => path)).toContain('bench.colour')
  expect(keeper.kept[DAMAGED]).toBe(text)
})

test('the theme is the one chosen here before, and otherwise the one that the device asks for', () => {
  const keeper = memory()
  expect(firstTheme(keeper, true)).toBe('dark')
  expect(firstTheme(keeper, false)).toBe('light')
  keepTheme(keeper, 'dark')
  expect(keeper.kept['counterturn.theme']).toBe('dark')
  expect(firstTheme(keeper, false)).toBe('dark')
  expect(firstTheme(memory({ 'counterturn.theme': 'purple' }), false)).toBe('light')
  expect(firstTheme(throwing('SecurityError'), false)).toBe('light')
  expect(() => keepTheme(throwing('SecurityError'), 'light')).not.toThrow()
})

test('what is kept before the packing is there is plain, and comes back whole', () => {
  const state = {
    ...plainState(ventOpener),
    bench: { ...plainState(ventOpener).bench, setting: 2 },
    moment: { turns: 3, ticks: 17, rest: 0 },
  }
  const keeper = memory({ [BENCH]: plainLink(state) })
  expect(readAutosave(keeper)).toStrictEqual({ state, problems: [] })
  expect(keeper.kept[DAMAGED]).toBeUndefined()
})

test('a plain text that is damaged is told, and kept aside', () => {
  const keeper = memory({ [BENCH]: plainLink(plainState(ventOpener)).slice(0, -20) })
  const { state, problems } = readAutosave(keeper)
  expect(state).toBeNull()
  expect(problems.length).toBeGreaterThan(1)
  expect(keeper.kept[DAMAGED]).toBeDefined()
})
