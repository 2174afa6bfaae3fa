/**
 * Text packed to go into an address: checksum and raw deflate, written in base64url.
 * Deflate carries no checksum of its own, so without one a changed character could be read as another number.
 */
import { deflateSync } from 'fflate'
import { LINK_WORDS } from './link-words.ts'

export const CHECKSUM_BYTES = 4

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

export function toBase64Url(bytes: Uint8Array): string {
  let binary = ''
  for (const byte of bytes) binary += String.fromCharCode(byte)
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '')
}

export function packText(text: string): string {
  const body = deflateSync(new TextEncoder().encode(text), { level: 9, dictionary: LINK_WORDS })
  const packed = new Uint8Array(CHECKSUM_BYTES + body.length)
  new DataView(packed.buffer).setUint32(0, checksum(body))
  packed.set(body, CHECKSUM_BYTES)
  return toBase64Url(packed)
}
