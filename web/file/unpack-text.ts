/** Text that `packText` packed, or why it cannot be read. */
import { inflateSync } from 'fflate'
import { LINK_WORDS } from './link-words.ts'
import { CHECKSUM_BYTES, checksum, toBase64Url } from './pack-text.ts'

/** Bytes that a text may have once it is unpacked: a short one can be made to swell a thousandfold. */
export const MOST_UNPACKED = 65_536

/** Null when the text is not exactly what `toBase64Url` writes. */
function fromBase64Url(text: string): Uint8Array | null {
  if (!/^[A-Za-z0-9_-]*$/.test(text) || text.length % 4 === 1) return null
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'))
  const bytes = Uint8Array.from(binary, (character) => character.charCodeAt(0))
  return toBase64Url(bytes) === text ? bytes : null
}

export type Unpacked = { readonly text: string } | { readonly reason: string }

export function unpackText(packed: string): Unpacked {
  const bytes = fromBase64Url(packed)
  if (!bytes)
    return { reason: 'must be letters, digits, - and _ just as they were copied, got something else' }
  if (bytes.length <= CHECKSUM_BYTES) return { reason: `must be longer, got ${packed.length} characters` }
  const body = bytes.subarray(CHECKSUM_BYTES)
  if (checksum(body) !== new DataView(bytes.buffer).getUint32(0))
    return { reason: 'must agree with its checksum, but a character was changed or lost' }
  try {
    const unpacked = inflateSync(body, { out: new Uint8Array(MOST_UNPACKED + 1), dictionary: LINK_WORDS })
    if (unpacked.length > MOST_UNPACKED)
      return { reason: `must unpack to at most ${MOST_UNPACKED} bytes, got more` }
    return { text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(unpacked) }
  } catch {
    return { reason: 'must be deflated text, got something else' }
  }
}
