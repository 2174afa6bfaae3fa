/**
 * A sequence of whole numbers that depends on a text alone, so that the same key asks the same question on every
 * machine. The text is hashed by FNV-1a with 32 bits (Fowler, Noll, Vo); the numbers come from a 32 bit mixing
 * generator, its two multipliers from memory.
 */

const FNV_BASIS = 0x811c9dc5
const FNV_PRIME = 0x01000193
const STEP = 0x9e3779b9
const TWO_TO_32 = 2 ** 32

/** UTF-8 bytes of a text; a lone half of a surrogate pair counts as U+FFFD. */
function utf8(text: string): number[] {
  const bytes: number[] = []
  for (const sign of text) {
    const given = sign.codePointAt(0)!
    const code = given >= 0xd800 && given <= 0xdfff ? 0xfffd : given
    if (code < 0x80) bytes.push(code)
    else if (code < 0x800) bytes.push(0xc0 | (code >> 6), 0x80 | (code & 63))
    else if (code < 0x10000) bytes.push(0xe0 | (code >> 12), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63))
    else {
      const high = 0xf0 | (code >> 18)
      bytes.push(high, 0x80 | ((code >> 12) & 63), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63))
    }
  }
  return bytes
}

/** FNV-1a of the UTF-8 bytes, a whole number in [0, 2^32). */
export const hash32 = (text: string): number =>
  utf8(text).reduce((hash, byte) => Math.imul(hash ^ byte, FNV_PRIME) >>> 0, FNV_BASIS)

/** Gives the next whole number in [0, n). */
export type Draw = (n: number) => number

/** The numbers of [0, 2^32) that follow from a text. */
export function numbersFrom(text: string): () => number {
  let a = hash32(text)
  return () => {
    a = (a + STEP) >>> 0
    let t = a ^ (a >>> 16)
    t = Math.imul(t, 0x21f0aaad)
    t ^= t >>> 15
    t = Math.imul(t, 0x735a2d97)
    return (t ^ (t >>> 15)) >>> 0
  }
}

export function drawFrom(text: string): Draw {
  const next = numbersFrom(text)
  return (n) => Math.floor((next() * n) / TWO_TO_32)
}
