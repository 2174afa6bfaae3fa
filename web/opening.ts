/**
 * What the page opens with: the boot cleaner, or what this browser kept, and over that the link in the address, so
 * that Undo brings back what a link took the place of.
 */
import { type StoreApi, createStore } from 'zustand/vanilla'
import { readAddress, writeAddress } from './file/address.ts'
import { readAutosave } from './file/autosave.ts'
import { DEMO_MACHINES } from './file/demo-machines.ts'
import type { Outcome } from './file/FileDesk.tsx'
import { keepWorkshop } from './file/keep-workshop.ts'
import { readLink } from './file/state-link.ts'
import { type Keeper, browserKeeper } from './file/storage.ts'
import { firstTheme } from './file/theme.ts'
import { openState } from './file/workshop-state.ts'
import { type Workshop, createWorkshop, paceFor } from './frame/workshop.ts'

const LINK_FAILED = 'This link could not be read, so nothing was opened from it.'
const LINK_DOUBTFUL = 'The link was opened, but not all of it could be read.'
const KEPT_FAILED = 'Not all that this browser kept could be read.'

/** Opens the state of a link; says what was wrong with it, if anything was. */
function openLink(workshop: Workshop, text: string): Outcome | null {
  const { state, problems } = readLink(text)
  if (state) openState(workshop, state)
  return problems.length > 0 ? { outcome: state ? LINK_DOUBTFUL : LINK_FAILED, problems } : null
}

function openKept(workshop: Workshop, keeper: Keeper | null): Outcome | null {
  const { state, problems } = readAutosave(keeper)
  if (state) openState(workshop, state)
  return problems.length > 0 ? { outcome: KEPT_FAILED, problems } : null
}

/** What came of the last link, and how often one was opened. */
export interface Opened {
  readonly outcome: Outcome | null
  readonly nonce: number
}

const QUALITIES = ['low', 'medium', 'high'] as const

/** Follows the address while the page is open: a way chosen by a link, or a link pasted over it. */
function followAddress(workshop: Workshop, opened: StoreApi<Opened>): void {
  addEventListener('hashchange', () => {
    const { way, link } = readAddress(location.hash)
    if (way) workshop.view.setState({ way })
    if (!link) return
    const outcome = openLink(workshop, link)
    opened.setState(({ nonce }) => ({ outcome, nonce: nonce + 1 }))
    workshop.view.setState({ sheet: outcome ? 'machines' : 'none' })
    history.replaceState(null, '', writeAddress(workshop.view.getState().way))
  })
}

export function openBench() {
  const keeper = browserKeeper()
  const { machine } = DEMO_MACHINES[0]
  const workshop = createWorkshop(machine, firstTheme(keeper))
  workshop.bench.setState({ pace: paceFor(machine) })
  const { way, link } = readAddress(location.hash)
  const keptOutcome = openKept(workshop, keeper)
  workshop.document.store.setState({ past: [] })
  const outcome = link ? openLink(workshop, link) : keptOutcome
  if (way) workshop.view.setState({ way })
  history.replaceState(null, '', writeAddress(workshop.view.getState().way))
  const tablet = matchMedia('(min-width: 768px) and (max-width: 1199px)').matches
  if (tablet) workshop.view.setState({ panel: 'none' })
  const asked = new URLSearchParams(location.search).get('quality')
  const quality = QUALITIES.find((each) => each === asked)
  if (quality) workshop.view.setState({ quality })
  if (outcome) workshop.view.setState({ sheet: 'machines' })
  const opened = createStore<Opened>(() => ({ outcome, nonce: 0 }))
  followAddress(workshop, opened)
  return { workshop, autosave: keepWorkshop(workshop, keeper), opened }
}

export type OpenBench = ReturnType<typeof openBench>
