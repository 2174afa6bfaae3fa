/** What every part of the presenter window works with besides the workshop that stands as the stage does. */
import { createContext, useContext } from 'react'
import { useStore } from 'zustand'
import type { StoreApi } from 'zustand/vanilla'
import type { PresenterEnd } from '../channel/presenter-end.ts'
import type { Clock } from './clock.ts'

export interface Presenter {
  readonly end: PresenterEnd
  readonly clock: StoreApi<{ readonly clock: Clock | null }>
}

const PresenterContext = createContext<Presenter | null>(null)
export const PresenterProvider = PresenterContext.Provider

export function usePresenter(): Presenter {
  const presenter = useContext(PresenterContext)
  if (!presenter) throw new Error('usePresenter is used outside PresenterProvider')
  return presenter
}

/** Whether there is a stage that does what is commanded. */
export const useConnected = (): boolean =>
  useStore(usePresenter().end.store, ({ stage }) => stage === 'connected')
