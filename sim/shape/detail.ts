/**
 * How finely worm and wheels are drawn: fewer pieces a tooth the more teeth there are, so that the whole
 * keeps its size.
 */
import type { SectionDetail } from '../gear/wheel-section.ts'

/** From far, on the stage, and for a print or a comparison with the exact surface. */
export type Detail = 'distant' | 'display' | 'print'

export interface WheelDetail extends SectionDetail {
  /** Slices over the face width */
  readonly planes: number
  /** Pieces of the tooth's land, at least 2 */
  readonly land: number
  /** Pieces of the body a tooth pitch */
  readonly body: number
}

export interface WormDetail {
  readonly flank: number
  readonly columns: number
}

interface Level {
  readonly teethUpTo: number
  readonly wheel: WheelDetail
  readonly worm: WormDetail
}

/**
 * Triangles of worm and two wheels stay under 60 000 for display and under 20 000 from far, up to 120 teeth.
 * A print is equally fine at any number of teeth: at most 481 000 triangles at 1/20.
 */
const LEVELS: Readonly<Record<Detail, readonly Level[]>> = {
  display: [
    level(24, [12, 8, 3, 2, 2, 2], [4, 72]),
    level(45, [10, 6, 3, 1, 2, 1], [4, 64]),
    level(60, [8, 5, 2, 1, 2, 1], [4, 64]),
    level(90, [6, 4, 2, 1, 2, 1], [4, 48]),
    level(Infinity, [6, 3, 1, 1, 2, 1], [3, 48]),
  ],
  distant: [
    level(24, [6, 4, 2, 2, 2, 1], [3, 36]),
    level(40, [5, 3, 1, 1, 2, 1], [2, 32]),
    level(60, [4, 2, 1, 1, 2, 1], [2, 32]),
    level(90, [2, 2, 1, 1, 2, 1], [2, 32]),
    level(Infinity, [2, 1, 1, 1, 2, 1], [2, 20]),
  ],
  print: [level(Infinity, [48, 28, 10, 4, 4, 4], [16, 360])],
}

function level(teethUpTo: number, wheel: readonly number[], worm: readonly number[]): Level {
  const [planes = 0, flank = 0, fillet = 0, root = 0, land = 0, body = 0] = wheel
  const [wormFlank = 0, columns = 0] = worm
  return {
    teethUpTo,
    wheel: { planes, flank, fillet, root, land, body },
    worm: { flank: wormFlank, columns },
  }
}

const levelFor = (wheelTeeth: number, detail: Detail): Level =>
  LEVELS[detail].find(({ teethUpTo }) => wheelTeeth <= teethUpTo)!

export const wheelDetail = (wheelTeeth: number, detail: Detail): WheelDetail =>
  levelFor(wheelTeeth, detail).wheel

export const wormDetail = (wheelTeeth: number, detail: Detail): WormDetail =>
  levelFor(wheelTeeth, detail).worm
