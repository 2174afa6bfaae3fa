/** The bench kept in this browser as it changes, so that a closed page opens where it was. */
import { createStore } from 'zustand/vanilla'
import { type Keeper, keep, kept } from './storage.ts'

export const BENCH_KEY = 'counterturn.bench'
/** Changes that follow each other within this time are written once [ms] */
export const QUIET_TIME = 500

/** The text that was kept last time; null when there is none. */
export const keptBench = (keeper: Keeper | null): string | null => kept(keeper, BENCH_KEY)

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
  /** The link text of the bench as it is now */
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
