/** The draft of the open editor, for its parts. */
import { createContext, useContext } from 'react'
import { useStore } from 'zustand'
import type { Draft, DraftStore } from './editor-draft.ts'

const DraftContext = createContext<DraftStore | null>(null)
export const DraftProvider = DraftContext.Provider

export function useDraftStore(): DraftStore {
  const draft = useContext(DraftContext)
  if (!draft) throw new Error('useDraftStore is used outside DraftProvider')
  return draft
}

export const useDraft = <T>(select: (draft: Draft) => T): T => useStore(useDraftStore().store, select)
