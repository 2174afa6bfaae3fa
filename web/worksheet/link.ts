/** The address that brings a sheet's questions to the screen. */
import { BANK } from '../../sim/question/bank.ts'
import { writeAddress } from '../file/address.ts'
import { plainState } from '../file/link-state.ts'
import { writeLink } from '../file/write-link.ts'
import type { Sheet } from './order.ts'

/** To the set in Predict, from its first question on; to the lesson; to the machine in Predict. Null: to nothing. */
export function sheetLink({ machine, seed, items, screen }: Sheet, page: string): string | null {
  if (screen === 'nothing') return null
  const lesson = typeof screen === 'string' ? null : screen
  const asked = items && { bank: BANK, seed, items, at: 0 }
  const way = lesson ? 'demonstrate' : 'predict'
  return page + writeAddress(way, writeLink({ ...plainState(machine, way), asked, lesson }))
}

/** As it is typed by hand: without the scheme, which browsers add. */
export const shortAddress = (page: string): string =>
  page
    .replace(/^https?:\/\//, '')
    .replace(/\?.*$/, '')
    .replace(/index\.html$/, '')
    .replace(/\/$/, '')
