/** The address that brings a sheet's questions to the screen. */
import { writeAddress } from '../file/address.ts'
import { plainState } from '../file/link-state.ts'
import { writeLink } from '../file/write-link.ts'
import type { Sheet } from './order.ts'

/** To the set in Predict, from its first question on; to the lesson. Null: to nothing. */
export function sheetLink({ machine, screen }: Sheet, page: string): string | null {
  if (!screen) return null
  const [asked, lesson] = 'items' in screen ? [screen, null] : [null, screen]
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
