/** The saving of this workshop, as a panel shows it. */
import { useEffect } from 'react'
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'
import { type SavingDesk, type SavingState, savingOf } from './saving.ts'

export type Saving = SavingState & Pick<SavingDesk, 'save' | 'cancel'>

export function useSaving(): Saving {
  const desk = savingOf(useWorkshop())
  const { progress, outcome } = useStore(desk.store)
  useEffect(() => desk.watch(), [desk])
  return { progress, outcome, save: desk.save, cancel: desk.cancel }
}
