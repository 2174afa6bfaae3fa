/** What the person had on the stage, while a question or a lesson has a machine of its own there. */
import { createStore } from 'zustand/vanilla'
import type { WormTurns } from '../../sim/drive/turns.ts'
import type { Bench } from './bench.ts'
import type { Document } from './document.ts'
import type { View } from './view.ts'

export type Looks = Pick<
  View,
  | 'caseState'
  | 'motorCut'
  | 'apart'
  | 'view'
  | 'camera'
  | 'withoutLosses'
  | 'panel'
  | 'panelWide'
  | 'gearSigns'
  | 'lit'
  | 'plan'
>

export interface Aside {
  readonly document: Document
  readonly bench: Bench
  readonly looks: Looks
  readonly moment: WormTurns
}

/** Null while the stage shows the person's own. */
export const createAside = () => createStore<{ readonly held: Aside | null }>(() => ({ held: null }))
