/**
 * The state of the bench as the text of a link, to the last bit.
 * State -> what differs from a demo machine in plain settings -> JSON -> packed text.
 */
import { DEMO_MACHINES } from './demo-machines.ts'
import { type Json, differencesBetween, jsonText } from './difference.ts'
import { type LinkState, plainState } from './link-state.ts'
import { checksum, packText } from './pack-text.ts'
import { LINK_VERSION } from './plain-link.ts'

/** Characters of a link that are read, and that can still be pasted anywhere. */
export const MOST_LINK = 4000

/** Tells a demo machine from the same one with other numbers, should it be corrected one day. */
export const fingerprint = (machine: object): number =>
  checksum(new TextEncoder().encode(jsonText(machine as Json)))

export function writeLink(state: LinkState): string {
  const links = DEMO_MACHINES.map(({ id, machine }) => {
    const set = differencesBetween(plainState(machine), state)
    return packText(jsonText({ v: LINK_VERSION, base: id, of: fingerprint(machine), set }))
  })
  return links.reduce((best, each) => (each.length < best.length ? each : best))
}
