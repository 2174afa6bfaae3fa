/** The bars under the right brush, rolled out flat: a positive turn moves them to the right. */
import { type Commutator, coilPart } from './commutator.ts'
import { type Pen, arrowHead } from './commutator-pen.ts'
import type { CommutatorMoment } from './commutator-picture.ts'

/** Bars that are to be seen, and the most of the width that the brush may take */
const BARS = 4.6
const MOST_BRUSH = 0.62
const GAP = 2
const LEAST = 0.02
const THIN = 1.4
const THICK = 5
/** From one bar to the next, from which on arrows grow with it [px] */
const ROOMY_PITCH = 46

/** Heights, as parts of the whole */
const TOP = 0.02
const HOLDER = 0.05
const BRUSH = 0.2
const RING = 0.46
const UNDER = 0.62
const COIL = 0.84

/** Pixels to a radian: what the strip moves for a turn of the shaft. */
export const stripScale = (width: number, { pitch, arc }: Commutator): number =>
  Math.min(width / BARS / pitch, (MOST_BRUSH * width) / arc)

export function drawStrip(pen: Pen, commutator: Commutator, at: CommutatorMoment, signs: boolean): void {
  const { ctx, width, height } = pen
  const scale = stripScale(width, commutator)
  ctx.clearRect(0, 0, width, height)
  ctx.save()
  ctx.translate(width / 2, 0)
  drawBars(pen, commutator, at, scale)
  drawCoils(pen, commutator, at, scale)
  drawBrush(pen, commutator, scale, signs ? at.flow : 0)
  ctx.restore()
}

/** The coil that stands nearest to the left edge. */
const firstCoil = (half: number, pitch: number, angle: number): number =>
  Math.floor((-half - angle) / pitch) - 1

function drawBars(pen: Pen, { bars, pitch }: Commutator, at: CommutatorMoment, scale: number): void {
  const { ctx, colours, width, height } = pen
  const [top, bottom] = [RING * height, UNDER * height]
  ctx.lineWidth = 1.2
  ctx.strokeStyle = colours.ink
  if (!at.bars) {
    ctx.fillStyle = colours.flow
    ctx.fillRect(-width / 2, top, width, bottom - top)
    ctx.strokeRect(-width, top, 2 * width, bottom - top)
    return
  }
  const half = width / 2 / scale
  for (let bar = firstCoil(half, pitch, at.angle); at.angle + bar * pitch < half; bar++) {
    const left = (at.angle + bar * pitch) * scale
    const own = ((bar % bars) + bars) % bars
    ctx.fillStyle = at.followed && (own === 0 || own === bars - 1) ? colours.control : colours.flow
    ctx.fillRect(left + GAP / 2, top, pitch * scale - GAP, bottom - top)
    ctx.strokeRect(left + GAP / 2, top, pitch * scale - GAP, bottom - top)
  }
}

function drawCoils(pen: Pen, commutator: Commutator, at: CommutatorMoment, scale: number): void {
  const { width } = pen
  const { bars, pitch } = commutator
  const half = width / 2 / scale
  const from = at.bars ? at.angle : pitch / 2
  for (let coil = firstCoil(half, pitch, from); from + (coil - 1) * pitch < half; coil++) {
    const angle = from + coil * pitch
    const part = at.flow === 0 ? 0 : coilPart(commutator, angle, at.flow)
    const followed = at.bars && at.followed && coil % bars === 0
    drawCoil(pen, angle * scale, pitch * scale, part, followed, at.bars)
  }
}

/** From the middle of one bar down, across, and up to the middle of the next; as thick as its current is strong. */
function drawCoil(
  { ctx, colours, height }: Pen,
  x: number,
  pitch: number,
  part: number,
  followed: boolean,
  sharp: boolean,
): void {
  const reach = pitch / 2 - 3.5
  const [top, bottom] = [UNDER * height, COIL * height]
  const round = Math.min(8, reach / 2)
  ctx.strokeStyle = followed ? colours.ink : sharp ? colours.faint : colours.control
  ctx.fillStyle = ctx.strokeStyle
  ctx.lineWidth = THIN + (THICK - THIN) * Math.abs(part) * (followed ? 1 : 0.6)
  ctx.beginPath()
  ctx.moveTo(x - reach, top)
  ctx.lineTo(x - reach, bottom - round)
  ctx.quadraticCurveTo(x - reach, bottom, x - reach + round, bottom)
  ctx.lineTo(x + reach - round, bottom)
  ctx.quadraticCurveTo(x + reach, bottom, x + reach, bottom - round)
  ctx.lineTo(x + reach, top)
  ctx.stroke()
  if (Math.abs(part) < LEAST) return
  const size = (followed ? 8 : 7) * (0.5 + 0.5 * Math.abs(part)) * Math.max(1, pitch / ROOMY_PITCH)
  arrowHead(ctx, x, bottom, part > 0 ? 0 : Math.PI, size)
}

function drawBrush({ ctx, colours, height }: Pen, { arc }: Commutator, scale: number, flow: number): void {
  const half = (arc / 2) * scale
  const [top, bottom] = [BRUSH * height, RING * height - 1]
  ctx.fillStyle = colours.ink
  ctx.fillRect(-half, top, 2 * half, bottom - top)
  ctx.strokeStyle = colours.ink
  ctx.lineWidth = 1.8
  const [from, to] = [HOLDER * height, top]
  ctx.beginPath()
  ctx.moveTo(0, from)
  for (let i = 1; i < 8; i++)
    ctx.lineTo((i % 2 === 0 ? 1 : -1) * Math.min(0.6 * half, 12), from + ((to - from) * i) / 8)
  ctx.lineTo(0, to)
  ctx.stroke()
  ctx.fillRect(-half - 4, TOP * height, 2 * half + 8, 3)
  if (flow === 0) return
  ctx.fillStyle = colours.panel
  ctx.font = colours.sign
  ctx.textAlign = 'center'
  ctx.textBaseline = 'middle'
  ctx.fillText(flow > 0 ? '\u2212' : '+', 0, (top + bottom) / 2)
}
