/** A carbon brush with its spring, pressed on the commutator from the right or from the left. */
import type { Commutator } from './commutator.ts'
import type { Pen } from './commutator-pen.ts'

/** Radii of the ring of bars, of the brush's end and of its holder, in half the height of the drawing */
export const RING = 0.4
const BRUSH = 0.52
const HOLDER = 0.63
const QUARTER = Math.PI / 2

/** `sign` - +1 where the current comes from this brush, -1 where it goes to it, 0 for neither. */
export function drawBrush(
  { ctx, colours }: Pen,
  unit: number,
  { arc }: Commutator,
  side: 1 | -1,
  flow: number,
): void {
  const half = Math.min(RING * Math.sin(Math.min(arc / 2, QUARTER)), RING) * unit
  const face = RING * Math.cos(Math.min(arc / 2, QUARTER)) * unit
  ctx.fillStyle = colours.ink
  ctx.beginPath()
  ctx.moveTo(side * face, -half)
  ctx.lineTo(side * BRUSH * unit, -half)
  ctx.lineTo(side * BRUSH * unit, half)
  ctx.lineTo(side * face, half)
  if (side > 0) ctx.arc(0, 0, (RING + 0.008) * unit, arc / 2, -arc / 2, true)
  else ctx.arc(0, 0, (RING + 0.008) * unit, Math.PI - arc / 2, Math.PI + arc / 2)
  ctx.fill()
  drawSpring(ctx, side * BRUSH * unit, side * HOLDER * unit, 0.7 * half, colours.ink)
  ctx.beginPath()
  ctx.moveTo(side * HOLDER * unit, -half - 3)
  ctx.lineTo(side * HOLDER * unit, half + 3)
  ctx.lineWidth = 3
  ctx.stroke()
  if (flow === 0) return
  ctx.fillStyle = colours.ink
  ctx.font = colours.sign
  ctx.fillText(flow > 0 ? '\u2212' : '+', side * 0.5 * unit, half + 11)
}

const COILS = 3.5

function drawSpring(
  ctx: CanvasRenderingContext2D,
  from: number,
  to: number,
  half: number,
  ink: string,
): void {
  ctx.strokeStyle = ink
  ctx.lineWidth = 1.6
  ctx.beginPath()
  ctx.moveTo(from, 0)
  const steps = 2 * COILS
  for (let i = 1; i < steps; i++)
    ctx.lineTo(from + ((to - from) * i) / steps, (i % 2 === 0 ? 1 : -1) * Math.min(half, 7))
  ctx.lineTo(to, 0)
  ctx.stroke()
}
