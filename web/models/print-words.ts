/** What the panel says of a print. */
import type { PrintMeasure } from './print-model.ts'
import type { What } from './print-order.ts'

/** A binary STL has 84 bytes before its triangles and 50 for each. */
const STL_HEAD = 84
const STL_TRIANGLE = 50

const THIN = '\u202f'
const SPACE = '\u00a0'
export const groupedCount = (count: number): string => String(count).replace(/(?=(\d{3})+$)(?<!^)/g, THIN)

const tenth = (value: number): string => value.toFixed(1)

export const sizeWords = ({ size }: PrintMeasure): string => `${size.map(tenth).join(' × ')}${SPACE}mm`

export const volumeWords = ({ volume }: PrintMeasure): string => `${tenth(volume / 1000)}${SPACE}cm³`

export const stlWords = ({ triangles }: PrintMeasure): string =>
  `${((STL_HEAD + STL_TRIANGLE * triangles) / 1e6).toFixed(1)}${SPACE}MB`

export const WHAT_WORDS: Readonly<Record<What, string>> = {
  worm: 'The worm with a stub of shaft at each end, standing up.',
  wheel: 'One wheel, lying on its hub. The machine takes two of these, the same part.',
  set: 'The worm and two wheels side by side as loose parts, apart from each other.',
}
