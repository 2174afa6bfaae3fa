/** A text as a QR code (ISO/IEC 18004), with error correction M: 15 % of it may be damaged. */
import { encode } from 'uqr'

export interface QrPicture {
  /** Squares from side to side */
  readonly size: number
  /** All dark squares as one path, a unit for a square */
  readonly path: string
}

/** More bytes than this make squares too small for a telephone to read from paper. */
const MOST_BYTES = 800

/** Null where the text is too long. */
export function qrPicture(text: string): QrPicture | null {
  if (new TextEncoder().encode(text).length > MOST_BYTES) return null
  const { size, data } = encode(text, { ecc: 'M', border: 0 })
  let path = ''
  data.forEach((row, y) => {
    for (let x = 0; x < size; x++) {
      let end = x
      while (end < size && row[end]) end++
      if (end === x) continue
      path += `M${x} ${y}h${end - x}v1h${x - end}z`
      x = end
    }
  })
  return { size, path }
}
