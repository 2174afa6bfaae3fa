/** The address that brings a sheet's questions to the screen. */
import { BANK } from '../../sim/question/bank.ts'
import { writeAddress } from '../file/address.ts'
import { plainState } from '../file/link-state.ts'
import { writeLink } from '../file/write-link.ts'
import type { Sheet } from './order.ts'

/** The set in Predict, from its first question on; or the machine in Predict, where the questions are about that. */
export function sheetLink({ machine, seed, items }: Sheet, page: string): string {
  const asked = items && { bank: BANK, seed, items, at: 0 }
  return page + writeAddress('predict', writeLink({ ...plainState(machine, 'predict'), asked }))
}

/** As it is typed by hand: without the scheme, which browsers add. */
export const shortAddress = (page: string): string =>
  page
    .replace(/^https?:\/\//, '')
    .replace(/index\.html$/, '')
    .replace(/\/$/, '')
