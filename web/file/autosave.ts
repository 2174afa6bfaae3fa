/** The bench kept in this browser as it changes, so that a closed page opens where it was. */
import { createStore } from 'zustand/vanilla'
import type { Problem } from '../../sim/machine/problem.ts'
import type { LinkState } from './link-state.ts'
import { readLink } from './state-link.ts'
import { type Keeper, keep, kept } from './storage.ts'

const BENCH_KEY = 'counterturn.bench'
const DAMAGED_KEY = 'counterturn.bench.damaged'
/** A machine with long names does not fit in a link, but is kept all the same. */
const MOST_KEPT = 200_000
/** Changes that follow each other within this time are written once [ms] */
export const QUIET_TIME = 500

export interface Autosaved {
  readonly state: LinkState | null
  readonly problems: readonly Problem[]
}

/**
 * What was kept last time. A text that cannot be read whole is put with the other damaged ones, one a line, before
 * the next save takes its place.
 */
export function readAutosave(keeper: Keeper | null): Autosaved {
  const text = kept(keeper, BENCH_KEY)
  if (text === null) return { state: null, problems: [] }
  const { state, problems } = readLink(text, MOST_KEPT)
  if (problems.length === 0) return { state, problems }
  const damaged = kept(keeper, DAMAGED_KEY)?.split('\n') ?? []
  const { ok } = damaged.includes(text)
    ? { ok: true }
    : keep(keeper, DAMAGED_KEY, [...damaged, text].join('\n'))
  const message = ok
    ? `must be readable, but what this browser kept of the bench is not; it is still there as ${DAMAGED_KEY}`
    : 'must be readable, but what this browser kept of the bench is not, and there is no room to put it aside'
  return { state, problems: [{ path: BENCH_KEY, severity: 'warning', message }, ...problems] }
}

export interface Saving {
  readonly status: 'nothing yet' | 'waiting' | 'saved' | 'not saved'
  /** Why not; '' while all is well. */
  readonly reason: string
}

const REASONS = {
  missing: 'This browser keeps nothing for this page. Save to a file to keep the machine.',
  full: 'This browser has no room left to keep the bench. Save to a file to keep the machine.',
  forbidden: 'This browser does not let this page keep the bench. Save to a file to keep the machine.',
}

interface AutosaveParts {
  readonly keeper: Keeper | null
  /** The link text of the bench as it is now. */
  readonly text: () => string
  /** Where 'pagehide' is heard: the window. */
  readonly page: EventTarget
  /** Says a sentence, once, quietly. */
  readonly tell: (sentence: string) => void
}

export function createAutosave({ keeper, text, page, tell }: AutosaveParts) {
  const store = createStore<Saving>(() => ({ status: 'nothing yet', reason: '' }))
  let waiting: ReturnType<typeof setTimeout> | undefined
  let told = false

  const write = () => {
    clearTimeout(waiting)
    waiting = undefined
    const result = keep(keeper, BENCH_KEY, text())
    if (result.ok) {
      store.setState({ status: 'saved', reason: '' })
      return
    }
    store.setState({ status: 'not saved', reason: REASONS[result.reason] })
    if (!told) tell(REASONS[result.reason])
    told = true
  }
  page.addEventListener('pagehide', write)

  return {
    store,
    /** Something changed: write it once nothing has changed for a while. */
    changed: (): void => {
      clearTimeout(waiting)
      waiting = setTimeout(write, QUIET_TIME)
      if (store.getState().status !== 'not saved') store.setState({ status: 'waiting' })
    },
    stop: (): void => {
      clearTimeout(waiting)
      page.removeEventListener('pagehide', write)
    },
  }
}

export type Autosave = ReturnType<typeof createAutosave>
