/** Points of a curve as an SVG path, thinned to what the pixels can show. */
import { type Scale, toPixel } from './scale.ts'

const rounded = (pixel: number): string => pixel.toFixed(1)

/**
 * Where more than two samples fall on one pixel, the least and the most of them stand for all, so that no peak is
 * lost. A value that is not a number breaks the line.
 */
export function linePath(x: ArrayLike<number>, y: ArrayLike<number>, across: Scale, up: Scale): string {
  const parts: string[] = []
  let pen = 'M'
  let column = Number.NaN
  let least = 0
  let most = 0
  const flush = () => {
    if (least !== most)
      parts.push(`L${rounded(column)} ${rounded(least)}`, `L${rounded(column)} ${rounded(most)}`)
  }
  for (let i = 0; i < x.length; i++) {
    const px = toPixel(across, x[i]!)
    const py = toPixel(up, y[i]!)
    if (!Number.isFinite(px) || !Number.isFinite(py)) {
      pen = 'M'
      continue
    }
    if (pen === 'L' && Math.abs(px - column) < 0.25) {
      least = Math.min(least, py)
      most = Math.max(most, py)
      if (i + 1 === x.length) flush()
      continue
    }
    if (pen === 'L') flush()
    parts.push(`${pen}${rounded(px)} ${rounded(py)}`)
    pen = 'L'
    column = px
    least = most = py
  }
  return parts.join('')
}
