/**
 * What a drawing is made of, on paper in mm with y down, and how it becomes SVG. Line widths after ISO 128, from
 * memory, the group of 0.35 mm.
 */
import type { Flat } from './flat.ts'
import { xmlText } from './xml.ts'

export type Weight = 'thick' | 'thin' | 'centre' | 'hatch'

export type Mark =
  | { readonly kind: 'stroke'; readonly weight: Weight; readonly d: string }
  | { readonly kind: 'fill'; readonly d: string }
  | Label
  | Group

export interface Label {
  readonly kind: 'label'
  readonly x: number
  readonly y: number
  /** An index begins with '_' and ends with the word: 'd_a1' */
  readonly text: string
  readonly size: number
  readonly anchor: 'start' | 'middle' | 'end'
  /** Read from the right */
  readonly upright?: boolean
  readonly bold?: boolean
}

export interface Group {
  readonly kind: 'group'
  readonly x: number
  readonly y: number
  readonly marks: readonly Mark[]
}

const STROKES: Readonly<Record<Weight, { readonly width: number; readonly dashes?: string }>> = {
  thick: { width: 0.35 },
  thin: { width: 0.18 },
  centre: { width: 0.18, dashes: '5 0.8 0.6 0.8' },
  hatch: { width: 0.13 },
}
/** Height of letters of a dimension, and of a heading [mm]; as the size of the type. */
export const TEXT = 3.2
export const HEADING = 4
export const FONT = "Num, 'Barlow Semi Condensed', 'Arial Narrow', Arial, sans-serif"

const fixed = (value: number): string => String(Math.round(value * 1000) / 1000)

export const place = (x: number, y: number, marks: readonly Mark[]): Group => ({ kind: 'group', x, y, marks })

/** A line through points that are already on paper. */
export const pathOf = (points: readonly Flat[], closed = false): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${fixed(x)} ${fixed(y)}`).join('') + (closed ? 'Z' : '')

export const stroke = (weight: Weight, ...lines: readonly (readonly Flat[])[]): Mark => ({
  kind: 'stroke',
  weight,
  d: lines.map((line) => pathOf(line)).join(''),
})

export const outline = (weight: Weight, area: readonly Flat[]): Mark => ({
  kind: 'stroke',
  weight,
  d: pathOf(area, true),
})

export const circle = (weight: Weight, radius: number): Mark => ({
  kind: 'stroke',
  weight,
  d: `M${fixed(-radius)} 0A${fixed(radius)} ${fixed(radius)} 0 1 1 ${fixed(radius)} 0A${fixed(radius)} ${fixed(radius)} 0 1 1 ${fixed(-radius)} 0Z`,
})

export const label = (x: number, y: number, text: string, more: Partial<Label> = {}): Label => ({
  kind: 'label',
  x,
  y,
  text,
  size: TEXT,
  anchor: 'middle',
  ...more,
})

/** A text cut where its indices begin and end: every second piece is an index. */
export const indexPieces = (text: string): readonly string[] => text.split(/_([\p{L}\p{N}]+)/u)

/** How far an index hangs below the line, and how large it is, in parts of the letters. */
const INDEX_DROP = 0.22
const INDEX_SIZE = 0.72

function labelSvg({ x, y, text, size, anchor, upright, bold }: Label): string {
  const drop = fixed(INDEX_DROP * size)
  const pieces = indexPieces(text).map((piece, i) => {
    if (i % 2 === 1)
      return `<tspan dy="${drop}" font-size="${fixed(INDEX_SIZE * size)}">${xmlText(piece)}</tspan>`
    return i === 0 ? xmlText(piece) : `<tspan dy="-${drop}">${xmlText(piece)}</tspan>`
  })
  const turned = upright ? ` transform="rotate(-90 ${fixed(x)} ${fixed(y)})"` : ''
  const weight = bold ? ' font-weight="700"' : ''
  return (
    `<text x="${fixed(x)}" y="${fixed(y)}" font-size="${fixed(size)}" text-anchor="${anchor}"${weight}${turned}>` +
    `${pieces.join('')}</text>`
  )
}

function markSvg(mark: Mark): string {
  if (mark.kind === 'label') return labelSvg(mark)
  if (mark.kind === 'fill') return `<path d="${mark.d}" fill="#000" stroke="none"/>`
  if (mark.kind === 'group') {
    return `<g transform="translate(${fixed(mark.x)} ${fixed(mark.y)})">${mark.marks.map(markSvg).join('')}</g>`
  }
  const { width, dashes } = STROKES[mark.weight]
  const pattern = dashes ? ` stroke-dasharray="${dashes}"` : ''
  return `<path d="${mark.d}" stroke-width="${width}"${pattern}/>`
}

export interface Drawing {
  readonly title: string
  readonly width: number
  readonly height: number
  readonly marks: readonly Mark[]
}

/** What stands in the svg element: black lines, no fill, on no ground. */
export const innerSvg = ({ title, marks }: Drawing): string =>
  `<title>${xmlText(title)}</title>` +
  `<g fill="none" stroke="#000" stroke-linejoin="round" stroke-linecap="round">${marks
    .map(markSvg)
    .join('')
    .replaceAll('<text ', '<text fill="#000" stroke="none" ')}</g>`

/** A file of its own: one unit is one millimetre. */
export function svgFile(drawing: Drawing): string {
  const [width, height] = [fixed(drawing.width), fixed(drawing.height)]
  return (
    '<?xml version="1.0" encoding="UTF-8"?>\n' +
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" ` +
    `viewBox="0 0 ${width} ${height}" font-family="${xmlText(FONT)}">${innerSvg(drawing)}</svg>\n`
  )
}
