/** Forces on the worm from both meshes, at its bearings, and as arrows for the stage. */
import {
  type BearingReactions,
  type MeshForces,
  type Vector,
  bearingReactions,
  meshForces,
} from '../../sim/gear/mesh-forces.ts'
import { handSign } from '../../sim/gear/wheel-motion.ts'
import { pairProportions } from '../../sim/gear/proportions.ts'
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import type { Load, Outputs } from '../../sim/machine/machine.ts'
import { figure, quantityText } from '../instrument/reading-text.ts'
import type { ForceArrow, ForceLoads, Support } from '../store/view.ts'

const MM = 1000

/** Torque in each mesh with which the wheel resists [N m]. */
export interface MeshTorques {
  readonly left: number
  readonly right: number
}

/** How the same total is shared: evenly, 5 to 7, or all of it on the right wheel. */
const RIGHT_SHARE: Readonly<Record<Exclude<ForceLoads, 'bench'>, number>> = {
  equal: 1 / 2,
  unequal: 7 / 12,
  one: 1,
}

export function sharedTorques(set: MeshTorques, loads: ForceLoads): MeshTorques {
  if (loads === 'bench') return set
  const total = set.left + set.right
  const right = RIGHT_SHARE[loads] * total
  return { left: total - right, right }
}

/** What a load asks of its mesh as it begins to turn [N m]: where steady running is not computed. */
export const startingTorque = ({ active, passive }: Load, { bearingTorque }: Outputs): number =>
  active + passive + bearingTorque

/** Places of the bearings along the worm's axis [mm]. */
export interface BearingsAt {
  readonly front: number
  readonly rear: number
}

/** Overhung, both stand behind the wheels, the second as far again from the first. */
export const bearingsAt = (support: Support, { front, rear }: BearingsAt): BearingsAt =>
  support === 'between' ? { front, rear } : { front: rear, rear: 2 * rear }

export interface WormForces {
  readonly mesh: MeshForces
  readonly bearings: BearingReactions
  /** [mm] */
  readonly at: BearingsAt
  /** Reference radius of the worm [mm] */
  readonly radius: number
}

/** The front bearing is the one that takes the thrust. */
export function wormForces(
  gearing: GearNumbers,
  torques: MeshTorques,
  wormSense: 1 | -1,
  at: BearingsAt,
): WormForces {
  const pair = pairProportions(gearing)
  const mesh = meshForces({
    r1: pair.referenceRadiusWorm / MM,
    r2: pair.referenceRadiusWheel / MM,
    alphaN: pair.normalPressureAngle,
    g: pair.leadAngle,
    mu: gearing.friction,
    hand: handSign(gearing.hand),
    wormSense,
    rightTorque: torques.right,
    leftTorque: torques.left,
  })
  const bearings = bearingReactions(mesh, { zA: at.front / MM, zB: at.rear / MM, located: 'A' })
  return { mesh, bearings, at, radius: pair.referenceRadiusWorm }
}

/** A force below this part of the largest is rounding. */
const NEGLIGIBLE = 1e-9

const axis = (n: 0 | 1 | 2, size: number): Vector => [
  n === 0 ? size : 0,
  n === 1 ? size : 0,
  n === 2 ? size : 0,
]

/** Along the worm and round it the meshes add; sideways they cancel as far as they are equal. */
const KINDS: readonly ForceArrow['kind'][] = ['cancels', 'adds', 'adds']

function arrowsOf(at: Vector, force: Vector, kinds: readonly ForceArrow['kind'][], by = ''): ForceArrow[] {
  return ([0, 1, 2] as const).map((n) => ({
    at,
    vector: axis(n, force[n]),
    label: by + quantityText(Math.abs(force[n]), 'N'),
    kind: kinds[n]!,
  }))
}

const sizeOf = ({ vector }: ForceArrow): number => Math.hypot(...vector)

/** Every force on the worm, axis by axis, in the places where it acts. */
export function forceArrows({ mesh, bearings, at, radius }: WormForces): readonly ForceArrow[] {
  const bearing: readonly ForceArrow['kind'][] = ['bearing', 'bearing', 'bearing']
  const all = [
    ...arrowsOf([radius, 0, 0], mesh.onWormFromRight, KINDS),
    ...arrowsOf([-radius, 0, 0], mesh.onWormFromLeft, KINDS),
    ...arrowsOf([0, 0, at.front], bearings.A, bearing, 'A '),
    ...arrowsOf([0, 0, at.rear], bearings.B, bearing, 'B '),
  ]
  const largest = Math.max(...all.map(sizeOf))
  return all.filter((arrow) => sizeOf(arrow) > NEGLIGIBLE * largest)
}

/**
 * What both meshes push along the worm together: it takes the place of nothing, so it stands before the shaft. The
 * load of one mesh alone is its own sum.
 *
 * end - of the shaft, at the front [mm]
 */
export function thrustArrows({ mesh }: WormForces, end: number): readonly ForceArrow[] {
  if (mesh.left.axial === 0 || mesh.right.axial === 0) return []
  const thrust = mesh.wormForce[2]
  const label = `Together ${quantityText(Math.abs(thrust), 'N')}`
  return [{ at: [0, 0, end], vector: axis(2, thrust), label, kind: 'sum' }]
}

export interface ForceRow {
  readonly name: string
  readonly unit: 'N' | 'N mm'
  readonly does: 'cancel' | 'add'
  readonly right: number
  readonly left: number
  readonly sum: number
}

/** What each mesh does to the worm, and what is left of it: + is to the right, up, towards the viewer. */
export function forceRows({ mesh, radius }: WormForces): readonly ForceRow[] {
  const { onWormFromRight: right, onWormFromLeft: left, wormForce, wormMoment } = mesh
  const force = (name: string, n: 0 | 1 | 2, does: ForceRow['does']): ForceRow => ({
    name,
    unit: 'N',
    does,
    right: right[n],
    left: left[n],
    sum: wormForce[n],
  })
  return [
    force('Sideways', 0, 'cancel'),
    force('Up and down', 1, 'cancel'),
    {
      name: 'Tilting',
      unit: 'N mm',
      does: 'cancel',
      right: -right[2] * radius,
      left: left[2] * radius,
      sum: MM * wormMoment[1],
    },
    force('Along', 2, 'add'),
    {
      name: 'Turning',
      unit: 'N mm',
      does: 'add',
      right: right[1] * radius,
      left: -left[1] * radius,
      sum: MM * wormMoment[2],
    },
  ]
}

/** What is less than this part of what stands beside it is told as nothing. */
export const NOTICED = 5e-4

/** A number among others of which `largest` is the greatest: no more digits than that one has. */
export const besideText = (value: number, largest: number): string =>
  Math.abs(value) < NOTICED * largest ? '0' : figure(value)

export function headWords({ mesh }: WormForces): string {
  const { left, right, wormForce } = mesh
  if (wormForce[2] === 0) return 'No load on the wheels, so no forces in the meshes.'
  const thrust = quantityText(Math.abs(wormForce[2]), 'N')
  const way = wormForce[2] < 0 ? 'to the back' : 'to the front'
  if (left.axial === 0 || right.axial === 0) {
    const only = left.axial === 0 ? 'right' : 'left'
    return `Only the ${only} mesh pushes the worm ${way}, with ${thrust}. Nothing meets it sideways.`
  }
  const both = `Both meshes push the worm ${way}: ${thrust} together.`
  const equal = Math.abs(wormForce[0]) < NOTICED * (right.radial + left.radial)
  return equal ? `${both} Sideways they cancel.` : `${both} Sideways only the difference is left.`
}

/** Why one bearing is not enough. */
export function oneBearingWords({ mesh, radius }: WormForces): string {
  const [fx, fy] = mesh.wormForce
  const tilt = MM * Math.abs(mesh.wormMoment[1])
  if (tilt <= NOTICED * radius * (mesh.left.axial + mesh.right.axial))
    return 'With equal loads nothing is left that tilts the worm. Unequal loads leave a moment, and one bearing alone cannot take a moment: it needs two, some way apart.'
  return `One bearing alone cannot take a moment. These loads leave ${figure(tilt)} N mm that tilt the worm, and ${quantityText(Math.hypot(fx, fy), 'N')} across it. Two bearings some way apart hold it with a pair of forces.`
}
