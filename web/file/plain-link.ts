/**
 * A link before what packs it has been fetched: the same words in plain JSON, with all of the state instead of what
 * differs, so that nothing is lost however soon the page is left. It is read like any other, and packed later.
 */
import type { LinkState } from './link-state.ts'

export const LINK_VERSION = 3

export const isPlainLink = (link: string): boolean => link.startsWith('{')

export const plainLink = (state: LinkState): string =>
  JSON.stringify({ v: LINK_VERSION, base: 'boot-cleaner', set: state })
