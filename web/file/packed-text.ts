/**
 * Text packed to go into an address, and back: checksum and raw deflate, written in base64url.
 * Deflate carries no checksum of its own, so without one a changed character could be read as another number.
 */
import { deflateSync, inflateSync } from 'fflate'
import { LINK_WORDS } from './link-words.ts'

/** Bytes that a text may have once it is unpacked: a short one can be made to swell a thousandfold. */
export const MOST_UNPACKED = 65_536

const CHECKSUM_BYTES = 4

/**
 * CRC-32 of some bytes, which finds every single changed character.
 * Source: ITU-T Recommendation V.42, 8.1.1.6.2 (polynomial written in reverse; from memory).
 */
export function checksum(bytes: Uint8Array): number {
  let crc = 0xffffffff
  for (const byte of bytes) {
    crc ^= byte
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1
  }
  return (crc ^ 0xffffffff) >>> 0
}

function toBase64Url(bytes: Uint8Array): string {
  let binary = ''
  for (const byte of bytes) binary += String.fromCharCode(byte)
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '')
}

/** Null when the text is not exactly what `toBase64Url` writes. */
function fromBase64Url(text: string): Uint8Array | null {
  if (!/^[A-Za-z0-9_-]*$/.test(text) || text.length % 4 === 1) return null
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'))
  const bytes = Uint8Array.from(binary, (character) => character.charCodeAt(0))
  return toBase64Url(bytes) === text ? bytes : null
}

export function packText(text: string): string {
  const body = deflateSync(new TextEncoder().encode(text), { level: 9, dictionary: LINK_WORDS })
  const packed = new Uint8Array(CHECKSUM_BYTES + body.length)
  new DataView(packed.buffer).setUint32(0, checksum(body))
  packed.set(body, CHECKSUM_BYTES)
  return toBase64Url(packed)
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
