/**
 * Records kept in this browser: read back once, written after each change, joined with those of another open page.
 * What cannot be read is put aside whole before anything takes its place; where it cannot be, nothing is written.
 */
import { ASKS_KEY } from '../file/asks.ts'
import { type ErasableKeeper, browserKeeper, keep, kept } from '../file/storage.ts'
import type { Workshop } from '../frame/workshop.ts'
import type { RecordStore, Records } from '../store/records.ts'
import { eraseDraft } from '../question/draft.ts'
import { followLesson } from './follow-lesson.ts'
import { type ReadRecords, keptText, merged, readRecords } from './records-file.ts'

export const RECORDS_KEY = 'counterturn.records'
export const DAMAGED_KEY = 'counterturn.records.damaged'
/** What practice draws its numbers from: one for each browser, so it goes with the record. */
const PRACTICE_KEY = 'counterturn.practice'

const REASONS = {
  missing:
    'This browser keeps nothing for this page: your record is gone when it is closed. Export it to keep it.',
  full: 'This browser has no room left: new answers are gone when this page is closed. Export your record to keep it.',
  forbidden:
    'This browser does not let this page keep your record: it is gone when the page is closed. Export it to keep it.',
  damaged:
    'What this browser kept of your record could not be read, and there is no room to put it aside. New answers are gone when this page is closed.',
}
const PUT_ASIDE =
  'Part of what this browser kept of your record could not be read. It is put aside as it was, and not counted here.'

const NOTHING: ReadRecords = { answered: [], passed: [], settings: null, problems: [] }

/** What is kept; nothing new where that is the text which this page wrote last. */
function stored(keeper: ErasableKeeper | null, written: string | null = null): ReadRecords {
  const text = kept(keeper, RECORDS_KEY)
  return text === null || text === written ? NOTHING : readRecords(text)
}

/** Keeps a text that cannot be read with the other damaged ones; whether it is kept now. */
function putAside(keeper: ErasableKeeper | null): boolean {
  const text = kept(keeper, RECORDS_KEY)
  if (text === null) return true
  const damaged = kept(keeper, DAMAGED_KEY)
  if (damaged?.includes(text)) return true
  return keep(keeper, DAMAGED_KEY, damaged === null ? text : `${damaged}\n${text}`).ok
}

const isEmpty = ({ answered, passed, nickname, marksOn, homePage, account }: Records): boolean =>
  answered.length === 0 && passed.length === 0 && !nickname && !marksOn && !homePage && !account

/** Takes in what is kept, as another page may have written it. */
function takeIn({ store }: RecordStore, read: ReadRecords): void {
  store.setState((last) => ({ ...read.settings, ...merged(last, read) }))
}

/** Writes all that is known, here and there, and returns the text; null where it is not kept: `notKept` says why. */
function write(
  records: RecordStore,
  keeper: ErasableKeeper | null,
  written: string | null = null,
): string | null {
  const there = stored(keeper, written)
  if (there.problems.length > 0) {
    if (!putAside(keeper)) {
      records.store.setState({ notKept: REASONS.damaged })
      return null
    }
    records.store.setState({ damaged: PUT_ASIDE })
  }
  const now = records.store.getState()
  const all = merged(now, there)
  const text = keptText({ ...now, ...all })
  const result = keep(keeper, RECORDS_KEY, text)
  records.store.setState({ ...all, notKept: result.ok ? '' : REASONS[result.reason] })
  return result.ok ? text : null
}

const isChange = (now: Records, before: Records): boolean =>
  now.answered !== before.answered ||
  now.passed !== before.passed ||
  now.nickname !== before.nickname ||
  now.marksOn !== before.marksOn ||
  now.homePage !== before.homePage ||
  now.account !== before.account

function follow({ records, announcer }: Workshop, keeper: ErasableKeeper | null, page?: EventTarget): void {
  let busy = false
  let written: string | null = null
  /** What changes in here is not written back. */
  const quietly = (act: () => void) => {
    busy = true
    act()
    busy = false
  }
  records.store.subscribe((now, before) => {
    if (now.notKept !== before.notKept && now.notKept) announcer.say(now.notKept)
    if (busy || !isChange(now, before)) return
    if (isEmpty(now) && kept(keeper, RECORDS_KEY) === null) return
    quietly(() => {
      written = write(records, keeper, written)
    })
  })
  page?.addEventListener('storage', (event) => {
    const { key } = event as StorageEvent
    if (key !== RECORDS_KEY && key !== null) return
    quietly(() => {
      if (kept(keeper, RECORDS_KEY) === null) records.eraseAll()
      else takeIn(records, stored(keeper))
    })
  })
}

/** Begins keeping, once for each page; from then on `workshop.records` holds what was kept. */
export function keepRecords(
  workshop: Workshop,
  keeper: ErasableKeeper | null = browserKeeper(),
  page: EventTarget | undefined = globalThis.window,
): void {
  const { records, exercise } = workshop
  if (records.store.getState().readBack) return
  records.store.setState({ readBack: true })
  const there = stored(keeper)
  takeIn(records, there)
  if (kept(keeper, DAMAGED_KEY) !== null) records.store.setState({ damaged: PUT_ASIDE })
  if (there.problems.length > 0 || records.store.getState().answered.length > there.answered.length)
    write(records, keeper)
  follow(workshop, keeper, page)
  followLesson(workshop)
  exercise.subscribe((now, before) => {
    const goesOn = now.question === before.question && before.phase === 'predict'
    if (goesOn && now.phase !== 'predict') records.store.setState({ committedAt: Date.now() })
  })
}

/** Erases all records, here and in this browser, with what was put aside; whether nothing is left. */
export function eraseRecords(
  { records }: Workshop,
  keeper: ErasableKeeper | null = browserKeeper(),
): boolean {
  try {
    for (const key of [RECORDS_KEY, DAMAGED_KEY, PRACTICE_KEY, ASKS_KEY]) keeper?.removeItem(key)
    eraseDraft()
  } catch {
    return false
  }
  records.eraseAll()
  return true
}
