/** The part of the address after '#', which is never sent to a server: the way, and perhaps a link's text. */
import { WAYS, type Way } from '../store/view.ts'

export interface Address {
  /** Null when the address names none that there is. */
  readonly way: Way | null
  /** Text for `readLink`; null when there is none. */
  readonly link: string | null
}

export function readAddress(hash: string): Address {
  const [, word = '', query = ''] = /^#?\/?([^?]*)\??(.*)$/s.exec(hash) ?? []
  const way = WAYS.find((each) => each.way === word)?.way ?? null
  return { way, link: new URLSearchParams(query).get('s') || null }
}

export const writeAddress = (way: Way, link?: string): string => (link ? `#/${way}?s=${link}` : `#/${way}`)
