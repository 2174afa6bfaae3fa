/** What a person has set in the drive's panels, kept while the page is open and another panel is looked at. */
import { useStore } from 'zustand'
import { type StoreApi, createStore } from 'zustand/vanilla'
import { type Workshop, useWorkshop } from '../frame/workshop.ts'
import type { Happening } from '../../sim/run/happenings.ts'
import type { Beside } from './TorqueBeside.tsx'
import type { LaneId } from './waves-lanes.ts'
import type { Look } from './waves-seen.ts'

/** Where two cursors stand, in parts of the span */
export type Parts = readonly [a: number, b: number]

interface Kept {
  readonly look: Look
  /** The lanes that are on, by all the lanes of a chain; one that is missing has its first ones */
  readonly lanes: Readonly<Record<string, readonly LaneId[]>>
  readonly cursors: Parts
  readonly happening: Happening | null
  readonly beside: Beside
  /** Speed at which torque is read [r/min]; null is where the machine settles */
  readonly readAt: number | null
}

const FIRST: Kept = {
  look: { periods: 2, of: 'mains' },
  lanes: {},
  cursors: [0.125, 0.375],
  happening: null,
  beside: 'current',
  readAt: null,
}

const STORES = new WeakMap<Workshop, StoreApi<Kept>>()

function storeOf(workshop: Workshop): StoreApi<Kept> {
  const store = STORES.get(workshop) ?? createStore(() => FIRST)
  STORES.set(workshop, store)
  return store
}

export function useKept<Name extends keyof Kept>(
  name: Name,
): readonly [Kept[Name], (value: Kept[Name]) => void] {
  const store = storeOf(useWorkshop())
  const value = useStore(store, (kept) => kept[name])
  return [value, (to) => store.setState((kept) => ({ ...kept, [name]: to }))]
}
