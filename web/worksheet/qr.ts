/** A text as a QR code (ISO/IEC 18004), with error correction M: 15 % of it may be damaged. */
import { encode } from 'uqr'

export interface QrPicture {
  /** Squares from side to side */
  readonly size: number
  /** All dark squares as one path, a unit for a square */
  readonly path: string
}

/** Null where the text is too long for any code. */
export function qrPicture(text: string): QrPicture | null {
  if (new TextEncoder().encode(text).length > 1000) return null
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
