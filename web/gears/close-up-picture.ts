/** Draws the close-up as it is at this moment. Nothing is made anew in a frame. */
import type { Flank } from '../../sim/gear/wheel-flank.ts'
import {
  type CloseUp,
  type ContactPlace,
  type MeshPlace,
  PIXELS_A_MM,
  drawnTimes,
  findContact,
  gapOn,
} from './close-up.ts'
import { fitCanvas, tokensOf } from '../instrument/canvas.ts'

export interface CloseUpColours {
  readonly ink: string
  readonly faint: string
  readonly panel: string
  readonly lane: string
  readonly flow: string
  readonly control: string
  readonly look: string
  readonly font: string
}

/** Pixels of the canvas, and the way from millimetres to them. */
export interface CloseUpPen {
  readonly ctx: CanvasRenderingContext2D
  readonly colours: CloseUpColours
  readonly width: number
  readonly height: number
  /** [px/mm] */
  readonly scale: number
  /** +1 with the wheel on the right */
  readonly way: 1 | -1
  /** Where the pitch point is drawn */
  readonly pitchX: number
  readonly pitchY: number
  /** Length of the scale bar [mm] */
  readonly bar: number
  readonly barText: string
}

/** What fits into the height, in pitches */
const PITCHES = 1.85
/** A point of contact this near to the plane, in pitches, counts as in it (our choice). */
const NEAR_PLANE = 0.03
const QUARTER = Math.PI / 2
const DOT = 5.5
const BESIDE = 20
const BARS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20] as const
const NO_DASH: number[] = []
const CENTRE_DASH = [9, 3, 2, 3]
const IDLE_DASH = [3, 4]

export function closeUpPen(
  canvas: HTMLCanvasElement,
  way: 1 | -1,
  axialPitch: number,
  colours: CloseUpColours,
): CloseUpPen | null {
  const fitted = fitCanvas(canvas)
  if (!fitted) return null
  const { ctx, width, height } = fitted
  const scale = drawnTimes(axialPitch, height, PITCHES) * PIXELS_A_MM
  const bar = BARS.findLast((length) => length * scale <= 0.3 * width) ?? BARS[0]
  return {
    ctx,
    colours,
    width,
    height,
    scale,
    way,
    pitchX: width / 2,
    pitchY: height / 2,
    bar,
    barText: `${bar} mm`,
  }
}

export const readCloseUpColours = (element: Element): CloseUpColours => {
  const token = tokensOf(element)
  return {
    ink: token('--ink'),
    faint: token('--ink-2'),
    panel: token('--panel'),
    lane: token('--panel-2'),
    flow: token('--flow'),
    control: token('--control'),
    look: token('--look'),
    font: `600 15px ${token('--num')}`,
  }
}

const pitchPoint = (of: CloseUp): number => of.centreDistance - of.wheelRadius
const toX = (pen: CloseUpPen, of: CloseUp, x: number): number =>
  pen.pitchX + pen.way * (x - pitchPoint(of)) * pen.scale
const toY = (pen: CloseUpPen, z: number): number => pen.pitchY + z * pen.scale
const outside = (pen: CloseUpPen, wheel: boolean): number =>
  wheel === pen.way > 0 ? pen.width + BESIDE : -BESIDE

function drawWheel(pen: CloseUpPen, of: CloseUp, place: MeshPlace): void {
  const { ctx, colours } = pen
  const { space, toothPitch, centreDistance: a } = of
  const turned = place.wheel / of.wheelRadius
  const middle = turned - toothPitch * Math.round(turned / toothPitch)
  const most = Math.floor(QUARTER / toothPitch)
  const spaces = Math.min(most, Math.ceil(pen.height / 2 / pen.scale / (of.wheelRadius * toothPitch)) + 2)
  ctx.beginPath()
  ctx.moveTo(outside(pen, true), -BESIDE)
  for (let j = -spaces; j <= spaces; j++) {
    // A turn by w moves chi, which is counted from -x, on by w.
    const cos = Math.cos(middle + j * toothPitch)
    const sin = Math.sin(middle + j * toothPitch)
    for (let i = 0; i < space.length; i += 2) {
      const x = space[i]!
      const z = space[i + 1]!
      ctx.lineTo(toX(pen, of, a + x * cos + z * sin), toY(pen, z * cos - x * sin))
    }
  }
  ctx.lineTo(outside(pen, true), pen.height + BESIDE)
  ctx.closePath()
  ctx.fillStyle = colours.lane
  ctx.fill()
  ctx.stroke()
}

/** Each side of the thread stands off the tooth by its gap, drawn `times` as wide as it is. */
function drawThread(pen: CloseUpPen, of: CloseUp, place: MeshPlace, times: number): void {
  const { ctx, colours } = pen
  const { thread, axialPitch: px, backlash } = of
  const middle = place.wheel - px * Math.round(place.wheel / px)
  const low = middle + times * gapOn(-1, place.play, backlash)
  const high = middle - times * gapOn(1, place.play, backlash)
  const threads = Math.ceil(pen.height / 2 / pen.scale / px) + 2
  const half = thread.length / 2
  ctx.beginPath()
  ctx.moveTo(outside(pen, false), -BESIDE)
  for (let k = -threads; k <= threads; k++) {
    for (let i = 0; i < thread.length; i += 2) {
      const shift = (i < half ? low : high) + k * px
      ctx.lineTo(toX(pen, of, thread[i]!), toY(pen, thread[i + 1]! + shift))
    }
  }
  ctx.lineTo(outside(pen, false), pen.height + BESIDE)
  ctx.closePath()
  ctx.fillStyle = colours.flow
  ctx.fill()
  ctx.stroke()
}

/** Pitch circle of the wheel, pitch line of the thread, and the point in which they touch. */
function drawPitch(pen: CloseUpPen, of: CloseUp): void {
  const { ctx, colours, pitchX, pitchY } = pen
  ctx.lineWidth = 1
  ctx.strokeStyle = colours.control
  ctx.setLineDash(CENTRE_DASH)
  ctx.beginPath()
  ctx.moveTo(pitchX, 0)
  ctx.lineTo(pitchX, pen.height)
  ctx.stroke()
  ctx.beginPath()
  ctx.arc(toX(pen, of, of.centreDistance), pitchY, of.wheelRadius * pen.scale, 0, 2 * Math.PI)
  ctx.stroke()
  ctx.setLineDash(NO_DASH)
  ctx.strokeStyle = colours.ink
  ctx.beginPath()
  ctx.moveTo(pitchX - 6, pitchY)
  ctx.lineTo(pitchX + 6, pitchY)
  ctx.moveTo(pitchX, pitchY - 6)
  ctx.lineTo(pitchX, pitchY + 6)
  ctx.stroke()
}

function drawPath(pen: CloseUpPen, of: CloseUp, flank: Flank, carries: boolean): void {
  const { ctx, colours } = pen
  const { x, z } = of.paths[flank < 0 ? 0 : 1]
  ctx.beginPath()
  for (let i = 0; i < x.length; i++) ctx.lineTo(toX(pen, of, x[i]!), toY(pen, z[i]!))
  ctx.lineWidth = carries ? 2 : 1.2
  ctx.strokeStyle = carries ? colours.ink : colours.faint
  ctx.setLineDash(carries ? NO_DASH : IDLE_DASH)
  ctx.stroke()
  ctx.setLineDash(NO_DASH)
}

/** A dot where the carrying flank touches; a ring where it touches outside this plane. */
function drawContacts(pen: CloseUpPen, of: CloseUp, place: MeshPlace, flank: Flank, at: ContactPlace): void {
  const { ctx, colours } = pen
  const path = of.paths[flank < 0 ? 0 : 1]
  const px = of.axialPitch
  const first = Math.ceil((path.shift[0]! - place.wheel) / px)
  ctx.lineWidth = 1.5
  ctx.strokeStyle = colours.ink
  for (let k = first; findContact(at, path, place.wheel + k * px); k++) {
    const here = Math.abs(at.y - of.plane) < NEAR_PLANE * px
    ctx.beginPath()
    ctx.arc(toX(pen, of, at.x), toY(pen, at.z), DOT, 0, 2 * Math.PI)
    ctx.fillStyle = here ? colours.look : colours.panel
    ctx.fill()
    ctx.stroke()
  }
}

function drawBar(pen: CloseUpPen): void {
  const { ctx, colours, height, bar, barText, scale } = pen
  const length = bar * scale
  const left = pen.way > 0 ? 10 : pen.width - 10 - length
  ctx.lineWidth = 1.5
  ctx.strokeStyle = colours.ink
  ctx.beginPath()
  ctx.moveTo(left, height - 16)
  ctx.lineTo(left, height - 8)
  ctx.moveTo(left, height - 12)
  ctx.lineTo(left + length, height - 12)
  ctx.moveTo(left + length, height - 16)
  ctx.lineTo(left + length, height - 8)
  ctx.stroke()
  ctx.font = colours.font
  ctx.textAlign = 'center'
  ctx.fillStyle = colours.ink
  ctx.fillText(barText, left + length / 2, height - 20)
}

const touch: ContactPlace = { x: 0, y: 0, z: 0 }

export function drawCloseUp(
  pen: CloseUpPen,
  of: CloseUp,
  place: MeshPlace,
  carrying: Flank | 0,
  times: number,
): void {
  const { ctx, colours } = pen
  ctx.clearRect(0, 0, pen.width, pen.height)
  ctx.lineJoin = 'round'
  ctx.lineWidth = 1.5
  ctx.strokeStyle = colours.ink
  drawWheel(pen, of, place)
  drawThread(pen, of, place, times)
  drawPitch(pen, of)
  drawPath(pen, of, 1, carrying === 1)
  drawPath(pen, of, -1, carrying === -1)
  if (carrying !== 0) drawContacts(pen, of, place, carrying, touch)
  drawBar(pen)
}
