/**
 * A wheel that does not stand where it should, and how far it can turn until one point of its flank touches
 * the worm. Nothing here assumes that the flanks still fit: the wheel's point is moved as a rigid body and
 * compared with the analytic thread. Frame of the right mesh.
 */
import type { GearNumbers, Side } from './gear-numbers.ts'
import type { ThreadForm } from './thread-form.ts'
import { threadForm } from './thread-profile.ts'
import { pairProportions } from './proportions.ts'
import { toothLimits } from './tooth-limits.ts'
import type { Flank } from './wheel-flank.ts'
import { handSign } from './wheel-motion.ts'

/** In space, of a wheel on either side. */
export interface Misplacement {
  /** Axes further apart by [mm] */
  readonly centre: number
  /** Wheel moved along its axis, +y [mm] */
  readonly along: number
  /** Worm moved along its axis, +z [mm] */
  readonly axial: number
  /** Wheel's axis turned about +x, at the middle of the wheel [rad] */
  readonly tilt: number
}

export const IN_PLACE: Misplacement = { centre: 0, along: 0, axial: 0, tilt: 0 }

export interface MisplacedMesh {
  readonly form: ThreadForm
  readonly wormTip: number
  readonly sigma: Flank
  readonly centreDistance: number
  readonly wheelRadius: number
  readonly signedParameter: number
  readonly along: number
  readonly axial: number
  readonly tiltCos: number
  readonly tiltSin: number
  /** How much further the wheel stands for the same shift, to first order [rad] */
  readonly ahead: number
}

/** The left mesh is the right one after half a turn about the worm's axis, which turns y and x round. */
export function misplacedMesh(
  gearing: GearNumbers,
  side: Side,
  sigma: Flank,
  off: Misplacement,
): MisplacedMesh {
  const pair = pairProportions(gearing)
  const turn = side === 'left' ? -1 : 1
  const r2 = pair.referenceRadiusWheel
  const signedParameter = handSign(gearing.hand) * pair.screwParameter
  const along = turn * off.along
  return {
    form: threadForm(gearing),
    wormTip: toothLimits({ ...gearing, backlash: 0 }).wormTip,
    sigma,
    centreDistance: pair.centreDistance + off.centre,
    wheelRadius: r2,
    signedParameter,
    along,
    axial: off.axial,
    tiltCos: Math.cos(turn * off.tilt),
    tiltSin: Math.sin(turn * off.tilt),
    ahead: (off.axial + (signedParameter * along) / pair.referenceRadiusWorm) / r2,
  }
}

/** Steps at which a point's turn is exact far below a nanometre, for points close to touching. */
export const CLOSE_STEPS = 3

/**
 * How far [rad] the wheel can turn onto the worm's flank, beyond where it stands in an ideal mesh, until its
 * point (R, chi, y) touches; negative when it must turn back. Infinite beyond the worm's tip.
 *
 * s - shift of the full thread along z [mm];  steps - of approach; 1 is enough to see which points are near
 */
export function freeTurn(
  m: MisplacedMesh,
  R: number,
  chi: number,
  y: number,
  s: number,
  steps: number,
): number {
  const { sigma, wheelRadius: r2, signedParameter: P } = m
  const start = chi + s / r2
  let turn = m.ahead
  for (let i = 0; i < steps; i++) {
    const c = start + turn
    const height = R * Math.sin(c)
    const x = m.centreDistance - R * Math.cos(c)
    const across = y * m.tiltCos - height * m.tiltSin + m.along
    const z = y * m.tiltSin + height * m.tiltCos - m.axial
    const r = Math.sqrt(x * x + across * across)
    if (r > m.wormTip) return Infinity
    // By the law of gearing a turn of the wheel moves a touching point by r2 against the thread's way.
    turn -= (z - P * Math.atan2(across, x) - s - sigma * m.form.halfThickness(r)) / r2
  }
  return -sigma * turn
}
