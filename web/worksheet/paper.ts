/** Sizes on paper [mm], and which blocks share a page. */
import type { Paper } from './order.ts'

export interface Size {
  readonly width: number
  readonly height: number
}

export const MARGIN = 15
export const PAPERS: Readonly<Record<Paper, Size>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
}

/** Inside the margins, less half a millimetre that keeps a page from running over by rounding. */
export const inside = (paper: Paper): Size => ({
  width: PAPERS[paper].width - 2 * MARGIN,
  height: PAPERS[paper].height - 2 * MARGIN - 0.5,
})

export interface Filling {
  /** Room for blocks on the first page, and on every other */
  readonly first: number
  readonly rest: number
  /** At most so many on one */
  readonly most: number
  /** Space between blocks */
  readonly gap: number
}

/**
 * Blocks in order, page by page, none of them cut: the numbers of the blocks on each page. A block higher than a page
 * has one to itself.
 */
export function pagesOf(
  heights: readonly number[],
  { first, rest, most, gap }: Filling,
): readonly (readonly number[])[] {
  const pages: number[][] = []
  let left = 0
  heights.forEach((height, block) => {
    const page = pages.at(-1)
    const needed = height + (page && page.length > 0 ? gap : 0)
    if (page && page.length < most && needed <= left) {
      page.push(block)
      left -= needed
      return
    }
    left = (pages.length === 0 ? first : rest) - height
    pages.push([block])
  })
  return pages
}

/** Lines that a text takes in a column of so many signs, some of them taken on its first line: words are not cut, nor what is glued. */
export function linesOf(text: string, signs: number, taken = 0): number {
  let lines = 1
  let used = taken
  for (const word of text.split(' ')) {
    if (used > taken && used + 1 + word.length > signs) {
      lines += 1
      used = word.length
    } else used += word.length + (used > taken ? 1 : 0)
  }
  return lines
}
