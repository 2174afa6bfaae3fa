/** The bearing pattern of one flank, unrolled: over it the face, up it the height of the tooth. */
import type { BearingPattern } from '../../sim/gear/bearing-pattern.ts'
import { COMPOUND } from '../material/compound.ts'
import { colourIn } from '../material/substances.ts'
import { fitCanvas } from '../instrument/canvas.ts'

/** Pieces that a mesh of the pattern's grid is cut into, each way */
const FINER = 5
const PAD = 12

export interface PatternColours {
  readonly ink: string
  readonly flank: string
  readonly coat: string
}

/** The same as on the stage: nylon, and compound on it. */
export const readPatternColours = (element: Element): PatternColours => {
  const theme = document.documentElement.dataset['theme'] === 'dark' ? 'dark' : 'light'
  const ink = getComputedStyle(element).getPropertyValue('--ink').trim()
  return { ink, flank: colourIn('nylon', theme), coat: COMPOUND }
}

/** Value of the grid between its points. */
function between(
  values: ArrayLike<number>,
  points: number,
  j: number,
  i: number,
  u: number,
  v: number,
): number {
  const a = j * points + i
  const near = values[a]! + (values[a + 1]! - values[a]!) * v
  const far = values[a + points]! + (values[a + points + 1]! - values[a + points]!) * v
  return near + (far - near) * u
}

interface Paper {
  readonly x: (y: number) => number
  readonly y: (radius: number) => number
}

function paperFor({ y, radius }: BearingPattern, width: number, height: number): Paper {
  const half = Math.max(...y.map(Math.abs))
  const high = Math.max(...radius)
  const low = Math.min(...radius)
  return {
    x: (at) => width / 2 + (at / half) * (width / 2 - PAD),
    y: (at) => height - PAD - ((at - low) / (high - low)) * (height - 2 * PAD),
  }
}

/** Edge of the flank: the tip over the face and the foot back again. */
function traceFlank(
  ctx: CanvasRenderingContext2D,
  { planes, points, y, radius }: BearingPattern,
  paper: Paper,
): void {
  ctx.beginPath()
  for (let j = 0; j < planes; j++) ctx.lineTo(paper.x(y[j]!), paper.y(radius[j * points]!))
  for (let j = planes - 1; j >= 0; j--) ctx.lineTo(paper.x(y[j]!), paper.y(radius[j * points + points - 1]!))
  ctx.closePath()
}

/** Fills what came nearer than the film, cut fine enough for a smooth edge: strips over the face, in runs up them. */
function fillMarked(
  ctx: CanvasRenderingContext2D,
  pattern: BearingPattern,
  paper: Paper,
  film: number,
): void {
  const { planes, points, y, radius, gap } = pattern
  const step = 1 / FINER
  const cells = (points - 1) * FINER
  const heightAt = (j: number, u: number, cell: number) => {
    const i = Math.min(points - 2, Math.floor(cell / FINER))
    return paper.y(between(radius, points, j, i, u, cell / FINER - i))
  }
  ctx.beginPath()
  for (let strip = 0; strip < (planes - 1) * FINER; strip++) {
    const j = Math.floor(strip / FINER)
    const u = (strip % FINER) / FINER
    const left = paper.x(y[j]! + (y[j + 1]! - y[j]!) * u)
    const right = paper.x(y[j]! + (y[j + 1]! - y[j]!) * (u + step))
    let from = -1
    for (let cell = 0; cell <= cells; cell++) {
      const v = (cell % FINER) / FINER + step / 2
      const marked =
        cell < cells && between(gap, points, j, Math.floor(cell / FINER), u + step / 2, v) <= film
      if (marked && from < 0) from = cell
      if (marked || from < 0) continue
      ctx.moveTo(left, heightAt(j, u, from))
      ctx.lineTo(right, heightAt(j, u + step, from))
      ctx.lineTo(right, heightAt(j, u + step, cell))
      ctx.lineTo(left, heightAt(j, u, cell))
      from = -1
    }
  }
  ctx.fill()
}

export function drawPattern(
  canvas: HTMLCanvasElement,
  pattern: BearingPattern,
  film: number,
  colours: PatternColours,
): void {
  const fitted = fitCanvas(canvas)
  if (!fitted) return
  const { ctx, width, height } = fitted
  const paper = paperFor(pattern, width, height)
  traceFlank(ctx, pattern, paper)
  ctx.fillStyle = colours.flank
  ctx.fill()
  ctx.fillStyle = colours.coat
  fillMarked(ctx, pattern, paper, film)
  traceFlank(ctx, pattern, paper)
  ctx.lineJoin = 'round'
  ctx.lineWidth = 1.5
  ctx.strokeStyle = colours.ink
  ctx.stroke()
}
