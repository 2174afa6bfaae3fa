/** The machine on the bench, with undo. One entry in the past for each gesture, however many edits it makes. */
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { Machine } from '../../sim/machine/machine.ts'

export interface Document {
  readonly machine: Machine
  readonly past: readonly Machine[]
  readonly future: readonly Machine[]
  /** The machine as it was when the open gesture began; null when none is open. */
  readonly gestureStart: Machine | null
}

const MOST_UNDO = 200

/** An edit of the gesture that is still open counts too. */
export const canUndo = ({ machine, past, gestureStart }: Document): boolean =>
  past.length > 0 || (gestureStart !== null && gestureStart !== machine)

export const canRedo = ({ future }: Document): boolean => future.length > 0

export function createDocument(machine: Machine) {
  const store = createStore<Document>(() => ({ machine, past: [], future: [], gestureStart: null }))
  const remember = (past: readonly Machine[], entry: Machine) => [...past, entry].slice(-MOST_UNDO)
  return {
    store,
    edit(change: (machine: Machine) => Machine): void {
      const state = store.getState()
      const next = change(state.machine)
      if (next === state.machine) return
      if (state.gestureStart) store.setState({ machine: next })
      else store.setState({ machine: next, past: remember(state.past, state.machine), future: [] })
    },
    beginGesture(): void {
      const { machine: now, gestureStart } = store.getState()
      if (!gestureStart) store.setState({ gestureStart: now })
    },
    endGesture(): void {
      const { machine: now, gestureStart, past } = store.getState()
      if (!gestureStart) return
      if (gestureStart === now) store.setState({ gestureStart: null })
      else store.setState({ gestureStart: null, past: remember(past, gestureStart), future: [] })
    },
    undo(): void {
      this.endGesture()
      const { machine: now, past, future } = store.getState()
      const before = past.at(-1)
      if (before) store.setState({ machine: before, past: past.slice(0, -1), future: [now, ...future] })
    },
    redo(): void {
      this.endGesture()
      const { machine: now, past, future } = store.getState()
      const after = future[0]
      if (after) store.setState({ machine: after, past: [...past, now], future: future.slice(1) })
    },
  }
}

export type DocumentStore = ReturnType<typeof createDocument>

export const useDocument = <T>(document: DocumentStore, select: (document: Document) => T): T =>
  useStore(document.store, select)
