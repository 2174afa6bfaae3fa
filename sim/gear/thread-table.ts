/**
 * A thread form kept as a table, where a direct answer is dear. The nodes are even in u = sqrt of the height
 * above the least radius, since there a flank may end in an edge of regression, h ~ (r - least)^(3/2); between
 * them h is the cubic with the exact h and h' at its ends (Hermite).
 */
import type { ThreadForm } from './thread-form.ts'

const CELLS = 64

export interface Node {
  readonly h: number
  /** dh/dr */
  readonly slope: number
}

export function tabledForm(least: number, most: number, nodeAt: (r: number) => Node): ThreadForm {
  const span = most - least
  const h = new Float64Array(CELLS + 1)
  /** dh/du times the width of a cell */
  const climb = new Float64Array(CELLS + 1)
  for (let i = 0; i <= CELLS; i++) {
    const u = i / CELLS
    const node = nodeAt(least + span * u * u)
    h[i] = node.h
    climb[i] = (node.slope * 2 * span * u) / CELLS
  }
  const atMost = nodeAt(most).slope
  const inside = (r: number) => CELLS * Math.sqrt(Math.min(1, Math.max(0, (r - least) / span)))

  return {
    leastRadius: least,
    greatestRadius: most,
    halfThickness: (r) => {
      const place = inside(r)
      const i = Math.min(CELLS - 1, Math.floor(place))
      const t = place - i
      const t2 = t * t
      const rise = h[i + 1]! - h[i]!
      const bend = climb[i]! + climb[i + 1]! - 2 * rise
      const within = h[i]! + climb[i]! * t + (rise - climb[i]! - bend) * t2 + bend * t2 * t
      // above the table the flank goes on straight
      return r > most ? within + atMost * (r - most) : within
    },
    slope: (r) => {
      if (r <= least) return 0
      if (r >= most) return atMost
      const place = inside(r)
      const i = Math.min(CELLS - 1, Math.floor(place))
      const t = place - i
      const rise = h[i + 1]! - h[i]!
      const bend = climb[i]! + climb[i + 1]! - 2 * rise
      const perCell = climb[i]! + 2 * (rise - climb[i]! - bend) * t + 3 * bend * t * t
      return (perCell * CELLS * CELLS) / (2 * span * place)
    },
  }
}
