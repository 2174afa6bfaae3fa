/**
 * Parts of worm and wheel that do not touch each other, in proportion to the teeth (common practice). Lengths
 * in mm.
 */
import type { GearNumbers } from '../gear/gear-numbers.ts'
import { helicalTooth } from '../gear/helical-tooth.ts'
import { pairProportions } from '../gear/proportions.ts'
import { rimRadius, widestBore } from '../gear/rim.ts'
import { toothLimits } from '../gear/tooth-limits.ts'
import { rootRadius, spaceCutter } from '../gear/wheel-space.ts'
import { soundHalfFace } from '../gear/wheel-section.ts'

export interface WormBody {
  readonly threadLength: number
  readonly shaftRadius: number
  /** Plain shaft beyond the thread, on each side */
  readonly stubLength: number
}

export interface WheelBody {
  /** The width that has teeth; less than asked for where the teeth end sooner */
  readonly faceWidth: number
  readonly rimRadius: number
  readonly hubRadius: number
  readonly hubLength: number
  /** Of the hole, and of the output's shaft in it */
  readonly boreRadius: number
  readonly webThickness: number
}

const SHAFT_OF_ROOT = 0.82
const STUB_MODULES = 3
const HUB_OF_BORE = 1.9
/** Most of the room between bore and rim that the hub takes. */
const HUB_OF_ROOM = 0.6
const HUB_OF_FACE = 1.15
const WEB_OF_FACE = 0.4
/** Least room between rim and hub, in modules, for a web to be worth having. */
const WEB_ROOM = 1

export function wormBody(gearing: GearNumbers): WormBody {
  return {
    threadLength: pairProportions(gearing).threadLength,
    shaftRadius: SHAFT_OF_ROOT * toothLimits(gearing).wormRoot,
    stubLength: STUB_MODULES * gearing.axialModule,
  }
}

/** Radius under the teeth in the middle of the face, and the width over which there are teeth. */
function toothedRing(gearing: GearNumbers): { root: number; faceWidth: number } {
  if (gearing.wheelForm === 'helical') {
    return { root: helicalTooth(gearing).rootRadius, faceWidth: gearing.wheelWidth }
  }
  const cutter = spaceCutter(gearing)
  return { root: rootRadius(cutter, 0), faceWidth: 2 * soundHalfFace(cutter, gearing.wheelWidth) }
}

export function wheelBody(gearing: GearNumbers): WheelBody {
  const { axialModule: m } = gearing
  const { root, faceWidth } = toothedRing(gearing)
  const rim = rimRadius(root, m)
  // A wider bore is a problem that is told; the wheel is drawn with what it can bear.
  const boreRadius = Math.min(gearing.boreDiameter, widestBore(root, m)) / 2
  const hubRadius = Math.min(HUB_OF_BORE * boreRadius, boreRadius + HUB_OF_ROOM * (rim - boreRadius))
  const webbed = rim - hubRadius >= WEB_ROOM * m
  return {
    faceWidth,
    rimRadius: rim,
    hubRadius,
    hubLength: HUB_OF_FACE * faceWidth,
    boreRadius,
    webThickness: webbed ? WEB_OF_FACE * faceWidth : faceWidth,
  }
}

/**
 * Section of the body, radius and height: from the upper face inwards, down the bore and back out to the lower
 * face. Without a web there is no step between rim and hub.
 */
export function turnedOutline(body: WheelBody): (readonly [R: number, y: number])[] {
  const { rimRadius: rim, hubRadius: hub, boreRadius: bore } = body
  const [face, web, end] = [body.faceWidth / 2, body.webThickness / 2, body.hubLength / 2]
  const step: (readonly [number, number])[] = web < face ? [[rim, web]] : []
  const top: readonly (readonly [number, number])[] = [
    [rim, face],
    ...step,
    [hub, web],
    [hub, end],
    [bore, end],
  ]
  return [...top, ...[...top].reverse().map(([R, y]) => [R, -y] as const)]
}
