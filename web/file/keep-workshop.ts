/** Lets the autosave and the theme follow the open page. */
import type { Workshop } from '../frame/workshop.ts'
import { type Autosave, createAutosave } from './autosave.ts'
import type { Keeper } from './storage.ts'
import { keepTheme } from './theme.ts'
import { plainLink } from './plain-link.ts'
import { ownState } from './workshop-state.ts'

/** What writes the bench as a link, fetched when there is something to keep and the picture is up; plainly until then. */
function createWriter({ view }: Workshop, came: () => void) {
  let write: ((workshop: Workshop) => string) | null = null
  const fetch = async () => {
    write = (await import('./link-for.ts')).wholeLink
    came()
  }
  return (workshop: Workshop): string => {
    const { pictureReady, plan } = view.getState()
    // What cannot be fetched now is asked for again with the next change.
    if (!write && (pictureReady || plan !== 'no')) fetch().catch(() => undefined)
    return write ? write(workshop) : plainLink(ownState(workshop))
  }
}

/** Writes a moment after an edit, a click, or the end of a motion, and as the page is left. */
export function keepWorkshop(workshop: Workshop, keeper: Keeper | null): Autosave {
  const { document, bench, view, readout, announcer, predict } = workshop
  const write = createWriter(workshop, () => autosave.changed())
  const autosave = createAutosave({
    keeper,
    text: () => write(workshop),
    page: window,
    tell: announcer.say,
  })
  document.store.subscribe(autosave.changed)
  bench.subscribe(autosave.changed)
  predict.subscribe(autosave.changed)
  view.subscribe((now, before) => {
    autosave.changed()
    if (now.theme !== before.theme) keepTheme(keeper, now.theme)
  })
  readout.subscribe((now, before) => {
    if (now.motion !== before.motion) autosave.changed()
  })
  return autosave
}
