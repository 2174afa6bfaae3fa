/** Whether Predict practised when the page was left, so that a reload goes on with it. */
import { type Keeper, keep, kept } from './storage.ts'

export const ASKS_KEY = 'counterturn.asks'

export const keepPractising = (keeper: Keeper | null, practises: boolean): void =>
  void keep(keeper, ASKS_KEY, practises ? 'practice' : '')

export const practisedLast = (keeper: Keeper | null): boolean => kept(keeper, ASKS_KEY) === 'practice'
