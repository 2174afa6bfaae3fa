/**
 * What the page opens with: the boot cleaner, or what this browser kept, and over that the link in the address, so
 * that Undo brings back what a link took the place of.
 */
import { type StoreApi, createStore } from 'zustand/vanilla'
import { readAddress, writeAddress } from './file/address.ts'
import { keptBench } from './file/autosave.ts'
import { FIRST_MACHINE } from './file/first-machine.ts'
import { keepWorkshop } from './file/keep-workshop.ts'
import type { Outcome } from './file/OpenProblems.tsx'
import { browserKeeper } from './file/storage.ts'
import { firstTheme } from './file/theme.ts'
import { type Workshop, createWorkshop, paceFor } from './frame/workshop.ts'

const fetchReader = () => import('./file/open-text.ts')

/** What came of the last link, and how often one was opened. */
export interface Opened {
  readonly outcome: Outcome | null
  readonly nonce: number
}

const QUALITIES = ['low', 'medium', 'high'] as const

/** Follows the address while the page is open: a way chosen by a link, or a link pasted over it. */
function followAddress(workshop: Workshop, opened: StoreApi<Opened>): void {
  const follow = async () => {
    const { way, link } = readAddress(location.hash)
    if (way) workshop.view.setState({ way })
    if (!link) return
    const { openLink } = await fetchReader()
    const outcome = openLink(workshop, link)
    opened.setState(({ nonce }) => ({ outcome, nonce: nonce + 1 }))
    workshop.view.setState({ sheet: outcome ? 'machines' : 'none' })
    history.replaceState(null, '', writeAddress(workshop.view.getState().way))
  }
  addEventListener('hashchange', () => void follow())
}

export async function openBench() {
  const keeper = browserKeeper()
  const { way, link } = readAddress(location.hash)
  const reader = link || keptBench(keeper) !== null ? await fetchReader() : null
  const { machine } = FIRST_MACHINE
  const workshop = createWorkshop(machine, firstTheme(keeper))
  workshop.bench.setState({ pace: paceFor(machine) })
  const keptOutcome = reader?.openKept(workshop, keeper) ?? null
  workshop.document.store.setState({ past: [] })
  const outcome = link && reader ? reader.openLink(workshop, link) : keptOutcome
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

export type OpenBench = Awaited<ReturnType<typeof openBench>>
