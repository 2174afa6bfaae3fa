/** Forces in both meshes and at the worm's bearings, for a reading. */
import {
  type BearingReactions,
  bearingReactions,
  type MeshComponents,
  type MeshForces,
  meshForces,
  radialLoad,
  slidingSpeed,
} from '../../sim/gear/mesh-forces.ts'
import { leadAngle } from '../../sim/gear/proportions.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { machineLayout } from '../../sim/pose/layout.ts'
import { radians } from '../../sim/quantity/convert.ts'
import type { Situation } from './situation.ts'

const METRE = 1000

/** At rest it turns in no sense, and the one in which it is driven stands for it. */
const turningSense = ({ reading, sense }: Situation): 1 | -1 =>
  reading.wormSpeed === 0 ? sense : reading.wormSpeed < 0 ? -1 : 1

const wormRadius = ({ gearing }: Machine): number =>
  (gearing.axialModule * gearing.diameterQuotient) / 2 / METRE

/** Speed at which thread and teeth slide on each other at the reference circle [m/s] */
export const threadSliding = ({ machine, reading }: Situation): number =>
  slidingSpeed(
    Math.abs(reading.wormSpeed) * wormRadius(machine),
    leadAngle(machine.gearing.wormStarts, machine.gearing.diameterQuotient),
  )

function forcesOf(situation: Situation): MeshForces {
  const { machine, reading, sense } = situation
  const { gearing } = machine
  const wormSense = turningSense(situation)
  const resists = wormSense * sense
  return meshForces({
    r1: wormRadius(machine),
    r2: (gearing.axialModule * gearing.wheelTeeth) / 2 / METRE,
    alphaN: radians(gearing.pressureAngle),
    g: leadAngle(gearing.wormStarts, gearing.diameterQuotient),
    mu: gearing.friction,
    hand: gearing.hand === 'right' ? 1 : -1,
    wormSense,
    rightTorque: resists * reading.meshTorqueRight,
    leftTorque: resists * reading.meshTorqueLeft,
  })
}

/** Whether friction carries a part that nobody knows: only axial forces then follow from the torques. */
const undecided = ({ reading }: Situation): boolean =>
  reading.wormSpeed === 0 && (reading.meshTorqueLeft !== 0 || reading.meshTorqueRight !== 0)

/**
 * Push along the worm from both meshes [N], above 0 where the wheels resist the sense in which it is driven.
 */
export function wormThrust(situation: Situation): number {
  const hand = situation.machine.gearing.hand === 'right' ? 1 : -1
  return forcesOf(situation).wormForce[2] * hand * situation.sense
}

/** One force in one mesh [N]; axial and tangential are below 0 where the torque in the mesh is. */
export function meshForce(
  situation: Situation,
  side: 'left' | 'right',
  force: Exclude<keyof MeshComponents, 'normal'>,
): number {
  if (force !== 'axial' && undecided(situation)) return Number.NaN
  const { meshTorqueLeft, meshTorqueRight } = situation.reading
  const torque = side === 'left' ? meshTorqueLeft : meshTorqueRight
  const size = forcesOf(situation)[side][force]
  return force === 'radial' || torque >= 0 ? size : -size
}

/**
 * Distance of both bearings from the line of centres [m]; a drawing takes a while, so each machine is drawn
 * once.
 */
const bearingDistances = new WeakMap<Machine, number>()

function bearingDistance(machine: Machine): number {
  const known = bearingDistances.get(machine)
  if (known !== undefined) return known
  const distance = machineLayout(machine).shaft.frontBearing / METRE
  bearingDistances.set(machine, distance)
  return distance
}

function reactionsOf(situation: Situation): BearingReactions {
  const zA = bearingDistance(situation.machine)
  return bearingReactions(forcesOf(situation), { zA, zB: -zA, located: 'A' })
}

/**
 * Load of a bearing square to the shaft [N], from the meshes alone; NaN where friction holds the worm at
 * rest.
 */
export function sideLoad(situation: Situation, bearing: 'front' | 'rear'): number {
  if (undecided(situation)) return Number.NaN
  const { A, B } = reactionsOf(situation)
  return radialLoad(bearing === 'front' ? A : B)
}
