/** The lines, or the points of a plain wheel, where thread and teeth touch at this moment. */
import type { Play } from '../../../sim/drive/play.ts'
import { wormFraction } from '../../../sim/drive/turns.ts'
import {
  type ContactField,
  contactField,
  newContactCounts,
  newContactPoints,
  writeContactLines,
} from '../../../sim/gear/contact-field.ts'
import type { GearNumbers, Side } from '../../../sim/gear/gear-numbers.ts'
import type { Flank } from '../../../sim/gear/wheel-flank.ts'
import { handSign } from '../../../sim/gear/wheel-motion.ts'
import type { Sign } from '../sign.ts'
import { pixelsPerMillimetre } from './scale.ts'
import { type LinePaint, linePaint, thickLines } from './thick-lines.ts'
import { INK, LOOK_HERE } from '../../material/sign-colours.ts'

/** Width of a line and of a point, in modules, and the least and greatest on the screen [px] */
const LINE = { modules: 0.2, least: 3, most: 8 }
const POINT = { modules: 0.5, least: 9, most: 18 }
/** A point is the shortest segment that has a direction [mm]. */
const POINT_LENGTH = 1e-3

const SIDES: readonly Side[] = ['left', 'right']

/**
 * Sense of the worm in which it last pushed a wheel: +1 or -1, 0 while the wheel lies free within its play. Without
 * play it is the sense in which the worm turns.
 */
function pushes(play: Play, side: Side, sense: 1 | -1): 1 | -1 | 0 {
  if (play.half === 0) return sense
  const ahead = side === 'left' ? play.left : play.right
  return ahead <= -play.half ? 1 : ahead >= play.half ? -1 : 0
}

interface FlankPen {
  readonly field: ContactField
  readonly points: Float32Array
  readonly counts: Uint16Array
}

function flankPen(gearing: GearNumbers, sigma: Flank): FlankPen {
  const field = contactField(gearing, sigma)
  return { field, points: newContactPoints(field), counts: newContactCounts(field) }
}

/** Writes the polylines of one mesh as segments from number `at` on, and returns the next free number. */
function writeSegments(segments: Float32Array, { field, points, counts }: FlankPen, at: number): number {
  let next = at
  for (let slot = 0; slot < counts.length; slot++) {
    const count = counts[slot]!
    const begin = 3 * slot * field.stride
    if (count === 1) {
      for (let axis = 0; axis < 3; axis++)
        segments[6 * next + axis] = segments[6 * next + 3 + axis] = points[begin + axis]!
      segments[6 * next + 3]! += POINT_LENGTH
      next++
    }
    for (let i = 0; i + 1 < count; i++) {
      for (let axis = 0; axis < 6; axis++) segments[6 * next + axis] = points[begin + 3 * i + axis]!
      next++
    }
  }
  return next
}

export const contactPaint = (): LinePaint => linePaint(LOOK_HERE, INK)

export function contactSign(gearing: GearNumbers, paint: LinePaint): Sign {
  const pens = { plus: flankPen(gearing, 1), minus: flankPen(gearing, -1) }
  const most = Math.max(pens.plus.points.length, pens.minus.points.length) / 3
  const lines = thickLines(2 * most, paint)
  const { modules, least, most: widest } = gearing.wheelForm === 'helical' ? POINT : LINE
  const angle = new Float64Array(1)
  const hand = handSign(gearing.hand)
  return {
    object: lines.group,
    paint({ frame, rig, apart }) {
      let count = 0
      angle[0] = 2 * Math.PI * wormFraction(frame.turns)
      for (let n = 0; n < SIDES.length; n++) {
        const side = SIDES[n]!
        const pushed = pushes(frame.play, side, frame.sense)
        if (pushed === 0) continue
        const pen = pushed * hand > 0 ? pens.minus : pens.plus
        writeContactLines(pen.points, pen.counts, pen.field, side, angle)
        count = writeSegments(lines.segments, pen, count)
      }
      const width = modules * gearing.axialModule * pixelsPerMillimetre(rig)
      lines.setWidth(Math.min(widest, Math.max(least, width)))
      lines.show(apart === 0 ? count : 0)
    },
    dispose: () => lines.dispose(),
  }
}
