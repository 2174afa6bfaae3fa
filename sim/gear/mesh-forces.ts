/**
 * Forces in the meshes of one worm with a wheel on each side, and at the worm's bearings. Frame: worm along
 * z, turning about it; right wheel at +x, left wheel at -x, their axes along y. Each wheel takes its own
 * load; a worm and two wheels do not share torque by themselves.
 *
 *   Fn   normal force in a mesh [N]            alphaN  normal pressure angle [rad], in (0, pi/2)
 *   Fa1  axial force on the worm = tangential  g       lead angle [rad], in (0, pi/2)
 *        force Ft2 on the wheel [N]            mu      coefficient of friction, >= 0
 *   Ft1  tangential force on the worm [N]      r1, r2  reference radii [m]
 *   Fr   force that parts the axes [N]         T2      load torque on a wheel [N m]
 *
 * Components of one mesh: R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, 8th to
 * 10th ed., section 13-17, from memory. Signs on both sides, sums and reactions: statics, derived here.
 */

/** Which body drives the other; friction then acts against the sliding on the flank that carries. */
export type Driver = 'worm' | 'wheel'

const signedFriction = (mu: number, driver: Driver): number => (driver === 'worm' ? mu : -mu)

/** Fa1/Fn = cos alpha_n cos g -/+ mu sin g, upper sign where the worm drives. */
export const axialShare = (alphaN: number, g: number, mu: number, driver: Driver): number =>
  Math.cos(alphaN) * Math.cos(g) - signedFriction(mu, driver) * Math.sin(g)

/** Ft1/Fn = cos alpha_n sin g +/- mu cos g; negative for a driving wheel on a self-locking pair. */
export const tangentialShare = (alphaN: number, g: number, mu: number, driver: Driver): number =>
  Math.cos(alphaN) * Math.sin(g) + signedFriction(mu, driver) * Math.cos(g)

export interface MeshComponents {
  readonly normal: number
  /** On the worm, along its axis; on the wheel, round it */
  readonly axial: number
  /** On the worm, round it; on the wheel, along its axis */
  readonly tangential: number
  readonly radial: number
}

/** Components [N] of one mesh with the normal force Fn. */
export const meshComponents = (
  Fn: number,
  alphaN: number,
  g: number,
  mu: number,
  driver: Driver,
): MeshComponents => ({
  normal: Fn,
  axial: Fn * axialShare(alphaN, g, mu, driver),
  tangential: Fn * tangentialShare(alphaN, g, mu, driver),
  radial: Fn * Math.sin(alphaN),
})

/** Sliding speed [m/s] along the thread, from the worm's speed v1 at its reference circle: v1/cos g. */
export const slidingSpeed = (v1: number, g: number): number => v1 / Math.cos(g)

export type Vector = readonly [x: number, y: number, z: number]

export interface MeshLoad {
  /** Reference radii [m] */
  readonly r1: number
  readonly r2: number
  readonly alphaN: number
  readonly g: number
  readonly mu: number
  /** +1 right hand, -1 left hand */
  readonly hand: 1 | -1
  /** Sense in which the worm turns about +z */
  readonly wormSense: 1 | -1
  /** Torque with which each wheel resists the worm's turning [N m]; below 0 that wheel drives the worm */
  readonly rightTorque: number
  readonly leftTorque: number
}

export interface MeshForces {
  readonly right: MeshComponents
  readonly left: MeshComponents
  /** Forces [N] at the pitch points */
  readonly onWormFromRight: Vector
  readonly onWormFromLeft: Vector
  readonly onRightWheel: Vector
  readonly onLeftWheel: Vector
  /** Of both meshes on the worm [N], and their moment about the worm's middle [N m] */
  readonly wormForce: Vector
  readonly wormMoment: Vector
  /** Torque of the worm on each wheel about +y [N m] */
  readonly onRightWheelTorque: number
  readonly onLeftWheelTorque: number
}

// Plus zero, so that a force that is not there never reads as minus zero.
const opposite = ([x, y, z]: Vector): Vector => [0 - x, 0 - y, 0 - z]

/** Components in one mesh whose wheel resists with torque T2, or drives with it below 0. */
function componentsUnder(T2: number, { r2, alphaN, g, mu }: MeshLoad): MeshComponents {
  const driver = T2 < 0 ? 'wheel' : 'worm'
  return meshComponents(Math.abs(T2) / r2 / axialShare(alphaN, g, mu, driver), alphaN, g, mu, driver)
}

export function meshForces(load: MeshLoad): MeshForces {
  const { r1, r2, hand, wormSense, rightTorque, leftTorque } = load
  const right = componentsUnder(rightTorque, load)
  const left = componentsUnder(leftTorque, load)
  // Turning the other way, or being driven, loads the other flank: tangential and axial forces change sides.
  const sR = rightTorque < 0 ? -wormSense : wormSense
  const sL = leftTorque < 0 ? -wormSense : wormSense
  const fromRight: Vector = [-right.radial, -sR * right.tangential, sR * hand * right.axial]
  const fromLeft: Vector = [left.radial, sL * left.tangential, sL * hand * left.axial]
  return {
    right,
    left,
    onWormFromRight: fromRight,
    onWormFromLeft: fromLeft,
    onRightWheel: opposite(fromRight),
    onLeftWheel: opposite(fromLeft),
    wormForce: [fromRight[0] + fromLeft[0], fromRight[1] + fromLeft[1], fromRight[2] + fromLeft[2]],
    wormMoment: [0, r1 * (fromLeft[2] - fromRight[2]), r1 * (fromRight[1] - fromLeft[1])],
    onRightWheelTorque: -fromRight[2] * r2,
    onLeftWheelTorque: fromLeft[2] * r2,
  }
}

export interface BearingPlaces {
  /** Places of the two bearings along the worm's axis, from the line of centres [m]; not the same */
  readonly zA: number
  readonly zB: number
  /** The one that takes the thrust */
  readonly located: 'A' | 'B'
}

export interface BearingReactions {
  /** Force of the bearing on the shaft [N] */
  readonly A: Vector
  readonly B: Vector
}

/** Reactions of the worm's two bearings, whether the worm sits between them or overhangs both. */
export function bearingReactions(forces: MeshForces, { zA, zB, located }: BearingPlaces): BearingReactions {
  const [fx, fy, fz] = forces.wormForce
  const My = forces.wormMoment[1]
  const Bx = (zA * fx - My) / (zB - zA)
  const By = (zA * fy) / (zB - zA)
  return {
    A: [-fx - Bx, -fy - By, located === 'A' ? -fz : 0],
    B: [Bx, By, located === 'B' ? -fz : 0],
  }
}

/** Load of a bearing square to the shaft [N]. */
export const radialLoad = ([x, y]: Vector): number => Math.hypot(x, y)
