/**
 * Thread ZN: straight in the plane square to the thread at mid space on the reference cylinder. Name of the
 * profile after ISO/TR 10828, from memory; this explicit form is derived here.
 */
import type { ThreadForm } from './thread-form.ts'

/** Keeps off the point where the straight side turns back and the slope has no bound. */
const ABOVE_TURNING_POINT = 1.002
const NEWTON_STEPS = 12

/** tau solves r1 cot g sin tau + p tau = px/4: the place of the blade's reference point beside mid space. */
function bladeAngle(px: number, r1: number, p: number, g: number): number {
  const k = r1 / Math.tan(g)
  let tau = px / 4 / (k + p)
  for (let i = 0; i < NEWTON_STEPS; i++) {
    tau -= (k * Math.sin(tau) + p * tau - px / 4) / (k * Math.cos(tau) + p)
  }
  return tau
}

export function normalForm(px: number, r1: number, p: number, g: number, alphaN: number): ThreadForm {
  const tau = bladeAngle(px, r1, p, g)
  const s = Math.sin(g)
  const B = Math.tan(alphaN)
  const A = (r1 * Math.sin(tau)) / s - B * r1 * Math.cos(tau)
  const Q = 1 + s * s * B * B
  const leastRadius = (ABOVE_TURNING_POINT * s * Math.abs(A)) / Math.sqrt(Q)
  const middle = -s * s * A * B
  const constant = middle * middle - Q * s * s * A * A
  const across = (r: number) => (middle + Math.sqrt(Math.max(0, constant + Q * r * r))) / Q
  return {
    leastRadius,
    greatestRadius: Infinity,
    halfThickness: (r) => {
      const X = across(Math.max(r, leastRadius))
      const eta = A + B * X
      return px / 2 - (eta * Math.cos(g) + p * Math.atan2(eta * s, X))
    },
    slope: (r) => {
      if (r <= leastRadius) return 0
      const X = across(r)
      const eta = A + B * X
      const u = eta * s
      const along = B * Math.cos(g) + (p * (B * s * X - u)) / (X * X + u * u)
      return (-along * r) / (X + s * s * eta * B)
    },
  }
}
