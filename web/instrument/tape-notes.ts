/** What is written between the marks of the tape: how many worm turns a wheel turn took, how far a flag is off, taps. */
import type { WormTurns } from '../../sim/drive/turns.ts'
import { matchTaps, passesUntil } from './taps.ts'
import { type MixedTurns, mixedTurns } from './mixed.ts'
import { lastWheelTurn } from './tape-marks.ts'
import { type TapeWindow, tapeX, toothX } from './tape-layout.ts'
import { type Pen, haloText, wordFont } from './tape-pen.ts'

/** A counted turn: where it ends, and how far apart what is counted goes by [worm turns]. */
export interface Trial {
  readonly end: number
  readonly every: number
}

/** Letters are never under 14 px, not even these. */
const smallFigures = (word: number): number => Math.max(14, 0.76 * word)

/** Width of "10 1/3 worm turns" with the fraction set small, the one figure above the other. */
function mixedWidth(pen: Pen, { whole, top, bottom }: MixedTurns, after: string): number {
  const { ctx, sizes } = pen
  ctx.font = wordFont(pen, sizes.word)
  const plain = ctx.measureText(`${whole}`).width + ctx.measureText(after).width
  if (top === 0) return plain
  ctx.font = wordFont(pen, smallFigures(sizes.word))
  return plain + ctx.measureText(`${top}/${bottom}`).width + 3
}

function drawMixed(
  pen: Pen,
  { whole, top, bottom }: MixedTurns,
  after: string,
  left: number,
  y: number,
): void {
  const { ctx, colours, sizes } = pen
  const { word } = sizes
  const small = smallFigures(word)
  let x = left
  const put = (text: string, size: number, lift: number) => {
    ctx.font = wordFont(pen, size)
    haloText(pen, text, x, y - lift, colours.lane)
    x += ctx.measureText(text).width
  }
  ctx.fillStyle = colours.ink
  ctx.textAlign = 'left'
  put(`${whole}`, word, 0)
  if (top > 0) {
    x += 2
    put(`${top}`, small, 0.26 * word)
    put('/', small, 0.06 * word)
    put(`${bottom}`, small, -0.12 * word)
    x += 1
  }
  put(after, word, 0)
}

interface Arrow {
  readonly from: number
  readonly to: number
  readonly y: number
  /** Room left free for words in the middle */
  readonly gap: number
  readonly bothEnds: boolean
}

function drawArrow({ ctx, colours }: Pen, { from, to, y, gap, bothEnds }: Arrow): void {
  const middle = (from + to) / 2
  const way = to > from ? 1 : -1
  ctx.strokeStyle = ctx.fillStyle = colours.ink
  ctx.lineWidth = 1.4
  ctx.beginPath()
  ctx.moveTo(from, y)
  ctx.lineTo(middle - (way * gap) / 2, y)
  ctx.moveTo(middle + (way * gap) / 2, y)
  ctx.lineTo(to - 4 * way, y)
  ctx.stroke()
  ctx.beginPath()
  ctx.moveTo(to, y)
  ctx.lineTo(to - 9 * way, y - 4)
  ctx.lineTo(to - 9 * way, y + 4)
  if (bothEnds) {
    ctx.moveTo(from, y)
    ctx.lineTo(from + 9 * way, y - 4)
    ctx.lineTo(from + 9 * way, y + 4)
  }
  ctx.fill()
}

/** "20 worm turns" between the last two wheel marks. */
export function drawWheelTurn(pen: Pen, tape: TapeWindow, turns: WormTurns, z1: number, z2: number): void {
  const between = lastWheelTurn(turns, z1, z2)
  if (!between) return
  const { lane, top, wheel } = pen.sizes
  const left = toothX(tape, between[0], z1)
  const from = Math.max(10, left + 0.42 * lane + 0.6 * wheel * String(Math.abs(between[0] / z2)).length)
  const to = toothX(tape, between[1], z1) - 0.3 * lane
  const mixed = mixedTurns(z2, z1)
  const after = mixed.whole === 1 && mixed.top === 0 ? ' worm turn' : ' worm turns'
  const words = mixedWidth(pen, mixed, after)
  if (to - from < words + 50) return
  const y = top + 0.4 * lane
  drawArrow(pen, { from, to, y, gap: words + 20, bothEnds: left > 0 })
  drawMixed(pen, mixed, after, (from + to - words) / 2, y + 0.34 * pen.sizes.word)
}

/** "8 too few" from the flag to where the turn ended, or "3 too many" back to the flag. */
export function drawMiss(pen: Pen, tape: TapeWindow, flag: number, end: number): void {
  const miss = flag - end
  const flagX = tapeX(tape, 0, flag)
  const markX = tapeX(tape, 0, end)
  const { lane, top, word, wheel } = pen.sizes
  const few = miss < 0
  const from = few ? flagX + pen.flagWidth + 8 : flagX - 8
  const to = few ? markX - 0.3 * lane : markX + 0.42 * lane + 0.6 * wheel
  const size = Number(Math.abs(miss).toFixed(2))
  const text = `${size} too ${few ? 'few' : 'many'}`
  pen.ctx.font = wordFont(pen, word)
  const gap = pen.ctx.measureText(text).width + 20
  if (size === 0 || (few ? to - from : from - to) < gap + 24) return
  const y = top + 0.4 * lane
  drawArrow(pen, { from, to, y, gap, bothEnds: false })
  pen.ctx.textAlign = 'center'
  haloText(pen, text, (from + to) / 2, y + 0.34 * word, pen.colours.lane)
}

/** Pole of the prediction's flag, down to the worm's scale. */
export function drawPole(pen: Pen, tape: TapeWindow, flag: number): void {
  const { ctx, colours, sizes } = pen
  const x = tapeX(tape, 0, flag)
  ctx.strokeStyle = colours.ink
  ctx.lineWidth = 2
  ctx.setLineDash([4, 3])
  ctx.beginPath()
  ctx.moveTo(x, sizes.top + sizes.lane / 2 - 18)
  ctx.lineTo(x, sizes.top + 2 * sizes.lane)
  ctx.stroke()
  ctx.setLineDash([])
}

/** A small wedge at each "Mark passed", a ring where a pass was missed. */
export function drawTaps(pen: Pen, tape: TapeWindow, taps: readonly number[], { end, every }: Trial): void {
  if (taps.length === 0) return
  const { ctx, colours, sizes } = pen
  const y = sizes.top + sizes.lane
  ctx.fillStyle = colours.ink
  for (const tap of taps) {
    const x = tapeX(tape, 0, tap)
    ctx.beginPath()
    ctx.moveTo(x - 5, y)
    ctx.lineTo(x + 5, y)
    ctx.lineTo(x, y + 8)
    ctx.fill()
  }
  ctx.lineWidth = 1.8
  ctx.strokeStyle = colours.ink
  ctx.fillStyle = colours.panel
  for (const pass of matchTaps(taps, passesUntil(end, every), every).missed) {
    ctx.beginPath()
    ctx.arc(tapeX(tape, 0, pass * every), y + 5, 4, 0, 2 * Math.PI)
    ctx.fill()
    ctx.stroke()
  }
}
