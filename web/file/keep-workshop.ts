/** Lets the autosave and the theme follow the open page. */
import type { Workshop } from '../frame/workshop.ts'
import { type Autosave, createAutosave } from './autosave.ts'
import { writeLink } from './write-link.ts'
import type { Keeper } from './storage.ts'
import { keepTheme } from './theme.ts'
import { stateOf } from './workshop-state.ts'

/** Writes a moment after an edit, a click, or the end of a motion, and as the page is left. */
export function keepWorkshop(workshop: Workshop, keeper: Keeper | null): Autosave {
  const { document, bench, view, readout, announcer } = workshop
  const autosave = createAutosave({
    keeper,
    text: () => writeLink(stateOf(workshop)),
    page: window,
    tell: announcer.say,
  })
  document.store.subscribe(autosave.changed)
  bench.subscribe(autosave.changed)
  view.subscribe((now, before) => {
    autosave.changed()
    if (now.theme !== before.theme) keepTheme(keeper, now.theme)
  })
  readout.subscribe((now, before) => {
    if (now.motion !== before.motion) autosave.changed()
  })
  return autosave
}
