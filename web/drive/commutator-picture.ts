/** The commutator seen from the worm, with brushes, armature and poles. Nothing is made anew in a frame. */
import { type Commutator, coilPart } from './commutator.ts'
import { RING, drawBrush } from './commutator-brush.ts'
import { type Pen, arrowHead } from './commutator-pen.ts'

/** What is drawn: where the followed coil is, and how it stands with power and with the eye. */
export interface CommutatorMoment {
  /** Of the followed coil from the right brush [rad] */
  angle: number
  /** Sense of the armature's current; 0 without current */
  flow: 1 | -1 | 0
  /** Sense in which the shaft last turned */
  sense: 1 | -1
  /** Bars one by one, or the ring that the eye makes of them */
  bars: boolean
  /** Whether the followed coil can be followed */
  followed: boolean
}

export interface RoundContent {
  readonly commutator: Commutator
  /** Letters of the left and of the right pole */
  readonly poles: readonly [string, string]
  /** A direct current has a brush that it comes from. */
  readonly signs: boolean
}

/** Radii, in half the height */
const SHAFT = 0.13
const HOLE = 0.2
const SLOTS = 0.74
const POLE = { inner: 0.84, outer: 0.99, half: 0.8 }
const QUARTER = Math.PI / 2
const GAP = 1.6
/** A coil with less than this part of its current has none worth an arrow. */
const LEAST = 0.02
const LEAD_POINTS = 14

export function drawRound(pen: Pen, { commutator, poles, signs }: RoundContent, at: CommutatorMoment): void {
  const { ctx, width, height } = pen
  const unit = Math.min(width, height) / 2
  ctx.clearRect(0, 0, width, height)
  ctx.save()
  ctx.translate(width / 2, height / 2)
  drawPoles(pen, unit, poles)
  drawConductors(pen, unit, commutator, at)
  if (at.followed && at.bars) {
    drawLead(pen, unit, commutator, at, 1)
    drawLead(pen, unit, commutator, at, -1)
  }
  drawRing(pen, unit, commutator, at)
  drawBrush(pen, unit, commutator, 1, signs ? at.flow : 0)
  drawBrush(pen, unit, commutator, -1, signs ? -at.flow : 0)
  drawTurning(pen, unit, at.sense)
  ctx.restore()
}

/** A ring sector between two angles of ours, which go the other way than those of the canvas. */
function sector(ctx: CanvasRenderingContext2D, inner: number, outer: number, from: number, to: number): void {
  ctx.beginPath()
  ctx.arc(0, 0, outer, -from, -to, true)
  ctx.arc(0, 0, inner, -to, -from)
  ctx.closePath()
}

function circle(ctx: CanvasRenderingContext2D, radius: number): void {
  ctx.beginPath()
  ctx.arc(0, 0, radius, 0, 2 * Math.PI)
}

function drawPoles({ ctx, colours }: Pen, unit: number, poles: readonly [string, string]): void {
  ctx.lineWidth = 1.2
  ctx.strokeStyle = colours.control
  ctx.font = colours.words
  ctx.textAlign = 'center'
  ctx.textBaseline = 'middle'
  for (let n = 0; n < 2; n++) {
    const middle = n === 0 ? Math.PI : 0
    sector(ctx, POLE.inner * unit, POLE.outer * unit, middle - POLE.half, middle + POLE.half)
    ctx.fillStyle = colours.flow
    ctx.fill()
    ctx.stroke()
    ctx.fillStyle = colours.ink
    ctx.fillText(poles[n]!, ((POLE.inner + POLE.outer) / 2) * unit * Math.cos(middle), 0.5)
  }
}

/** Current towards the eye is a point, away from it a cross: the tip and the feathers of an arrow. */
function drawConductors(pen: Pen, unit: number, commutator: Commutator, at: CommutatorMoment): void {
  const { ctx, colours } = pen
  const { bars, pitch } = commutator
  const radius = SLOTS * unit
  const size = Math.max(3, Math.min(0.078 * unit, 0.42 * pitch * radius))
  const from = at.bars ? at.angle : 0
  for (let coil = 0; coil < bars; coil++) {
    const angle = from + coil * pitch
    const part = at.flow === 0 ? 0 : coilPart(commutator, angle, at.flow)
    const followed = at.followed && at.bars && coil === 0
    ctx.strokeStyle = at.bars ? colours.ink : colours.control
    ctx.fillStyle = ctx.strokeStyle
    drawConductor(ctx, colours.panel, radius, angle + QUARTER, size, part, followed)
    if (followed) drawConductor(ctx, colours.panel, radius, angle - QUARTER, size, -part, true)
  }
}

function drawConductor(
  ctx: CanvasRenderingContext2D,
  ground: string,
  radius: number,
  angle: number,
  size: number,
  part: number,
  followed: boolean,
): void {
  const x = radius * Math.cos(angle)
  const y = -radius * Math.sin(angle)
  const ink = ctx.strokeStyle
  ctx.beginPath()
  ctx.arc(x, y, followed ? size + 1.6 : size, 0, 2 * Math.PI)
  ctx.fillStyle = ground
  ctx.fill()
  ctx.lineWidth = followed ? 3 : 1.2
  ctx.stroke()
  ctx.fillStyle = ink
  const reach = size * Math.abs(part)
  if (Math.abs(part) < LEAST) return
  ctx.beginPath()
  if (part > 0) {
    ctx.arc(x, y, 0.42 * reach, 0, 2 * Math.PI)
    ctx.fill()
    return
  }
  const arm = 0.62 * reach
  ctx.moveTo(x - arm, y - arm)
  ctx.lineTo(x + arm, y + arm)
  ctx.moveTo(x + arm, y - arm)
  ctx.lineTo(x - arm, y + arm)
  ctx.lineWidth = 1.8
  ctx.stroke()
}

/** From one bar of the followed coil out to the side that is a quarter turn on, or back. */
function drawLead(
  { ctx, colours }: Pen,
  unit: number,
  { pitch }: Commutator,
  at: CommutatorMoment,
  side: 1 | -1,
): void {
  const begin = at.angle + (side * pitch) / 2
  const end = at.angle + side * QUARTER
  ctx.strokeStyle = colours.ink
  ctx.lineWidth = 2.2
  ctx.beginPath()
  for (let i = 0; i <= LEAD_POINTS; i++) {
    const t = i / LEAD_POINTS
    const radius = unit * (RING + (SLOTS - 0.095 - RING) * t)
    const angle = begin + (end - begin) * t * t * (3 - 2 * t)
    if (i === 0) ctx.moveTo(radius * Math.cos(angle), -radius * Math.sin(angle))
    else ctx.lineTo(radius * Math.cos(angle), -radius * Math.sin(angle))
  }
  ctx.stroke()
}

function drawRing({ ctx, colours }: Pen, unit: number, commutator: Commutator, at: CommutatorMoment): void {
  const { bars, pitch } = commutator
  ctx.strokeStyle = colours.ink
  ctx.lineWidth = 1.2
  if (!at.bars) {
    sector(ctx, HOLE * unit, RING * unit, 0, 2 * Math.PI - 1e-3)
    ctx.fillStyle = colours.flow
    ctx.fill()
    circle(ctx, HOLE * unit)
    ctx.stroke()
    circle(ctx, RING * unit)
    ctx.stroke()
  }
  for (let bar = 0; at.bars && bar < bars; bar++) {
    const from = at.angle + bar * pitch
    const gap = Math.min(GAP / 2 / unit / HOLE, pitch / 6)
    sector(ctx, HOLE * unit, RING * unit, from + gap, from + pitch - gap)
    const joined = at.followed && (bar === 0 || bar === bars - 1)
    ctx.fillStyle = joined ? colours.control : colours.flow
    ctx.fill()
    ctx.stroke()
  }
  circle(ctx, SHAFT * unit)
  ctx.fillStyle = colours.panel
  ctx.fill()
  ctx.stroke()
}

/** The way the shaft turns, round its end. */
function drawTurning({ ctx, colours }: Pen, unit: number, sense: 1 | -1): void {
  const radius = 0.075 * unit
  ctx.strokeStyle = colours.ink
  ctx.lineWidth = 1.8
  ctx.beginPath()
  ctx.arc(
    0,
    0,
    radius,
    sense > 0 ? 2.4 : Math.PI - 2.4,
    sense > 0 ? -0.9 - Math.PI : -0.9 + 2 * Math.PI,
    sense > 0,
  )
  ctx.stroke()
  const end = sense > 0 ? -0.9 - Math.PI : -0.9 + 2 * Math.PI
  ctx.fillStyle = colours.ink
  arrowHead(ctx, radius * Math.cos(end), radius * Math.sin(end), end - (sense * Math.PI) / 2, 4.5)
}
