/** The one sentence that is spoken, politely, by the page's live region. */
import { createStore } from 'zustand/vanilla'

export interface Announcement {
  readonly text: string
  /** Changes with every announcement, so that the same sentence twice is spoken twice. */
  readonly nonce: number
}

export function createAnnouncer() {
  const store = createStore<Announcement>(() => ({ text: '', nonce: 0 }))
  return { store, say: (text: string) => store.setState((last) => ({ text, nonce: last.nonce + 1 })) }
}
