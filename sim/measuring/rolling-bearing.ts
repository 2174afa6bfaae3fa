/**
 * Life of rolling bearings. Sources: ISO 281; R. G. Budynas & J. K. Nisbett, Shigley's Mechanical Engineering Design,
 * chapter 11 (from memory). Loads and ratings in any one unit of force.
 */

/** Exponent of the life of ball bearings; of roller bearings 10/3. */
const BALLS = 3
const MILLION = 1e6

/**
 * Life that nine bearings of ten reach, in millions of turns: L10 = (C/P)^a.
 *
 * C - basic dynamic rating, > 0
 * P - equivalent load, > 0
 */
export const ratingLife = (C: number, P: number, a = BALLS): number => (C / P) ** a

/** Seconds that a life of so many million turns lasts at n [turn/s]. */
export const lifeTime = (L10: number, n: number): number => (L10 * MILLION) / n

/** Rating that carries P for so many million turns. */
export const ratingFor = (P: number, L10: number, a = BALLS): number => P * L10 ** (1 / a)

/** One part of a duty: a load, and turns made under it (or anything in proportion). */
export interface DutyPart {
  readonly load: number
  readonly turns: number
}

/** Steady load that wears as much: Pm = (sum n P^3/sum n)^(1/3). */
export function cubicMeanLoad(parts: readonly DutyPart[]): number {
  const turns = parts.reduce((sum, part) => sum + part.turns, 0)
  const cubes = parts.reduce((sum, part) => sum + part.turns * part.load ** BALLS, 0)
  return Math.cbrt(cubes / turns)
}

/** Radial factor of a deep-groove ball bearing above e. */
const RADIAL_FACTOR = 0.56

/**
 * Deep-groove ball bearings of one row: Fa/C0, e, Y. ISO 281 in its older form, as in Shigley, Table 11-1; the rows of
 * 0.084, 0.11, 0.17 and 0.28 were seen in print, the others are from memory.
 */
const THRUST_TABLE: readonly (readonly [part: number, e: number, Y: number])[] = [
  [0.014, 0.19, 2.3],
  [0.021, 0.21, 2.15],
  [0.028, 0.22, 1.99],
  [0.042, 0.24, 1.85],
  [0.056, 0.26, 1.71],
  [0.07, 0.27, 1.63],
  [0.084, 0.28, 1.55],
  [0.11, 0.3, 1.45],
  [0.17, 0.34, 1.31],
  [0.28, 0.38, 1.15],
  [0.42, 0.42, 1.04],
  [0.56, 0.44, 1],
]

/** e and Y for a part Fa/C0, between rows in proportion, beyond the ends as at the ends. */
export function thrustFactors(part: number): { readonly e: number; readonly Y: number } {
  let row = 1
  while (row < THRUST_TABLE.length - 1 && part > THRUST_TABLE[row]![0]) row++
  const [below, lowE, lowY] = THRUST_TABLE[row - 1]!
  const [above, highE, highY] = THRUST_TABLE[row]!
  const way = Math.min(1, Math.max(0, (part - below) / (above - below)))
  return { e: lowE + way * (highE - lowE), Y: lowY + way * (highY - lowY) }
}

/** Loads on a bearing, all >= 0. */
export interface BearingLoad {
  readonly radial: number
  readonly axial: number
  /** V: 1 where the inner ring turns, 1.2 where the outer does */
  readonly rotation: number
}

/** P = X V Fr + Y Fa with factors given. */
export const combinedLoad = (load: BearingLoad, X: number, Y: number): number =>
  X * load.rotation * load.radial + Y * load.axial

/**
 * Equivalent load of a deep-groove ball bearing of static rating C0: the radial load alone up to Fa/(V Fr) = e, above it
 * X V Fr + Y Fa, and never below V Fr.
 */
export function equivalentLoad(load: BearingLoad, C0: number): number {
  const radial = load.rotation * load.radial
  const { e, Y } = thrustFactors(load.axial / C0)
  return load.axial <= e * radial ? radial : Math.max(radial, combinedLoad(load, RADIAL_FACTOR, Y))
}

/** Life of one bearing of a make, in L10 lives: at least x0, spread theta and b. */
export interface WeibullLife {
  readonly x0: number
  readonly theta: number
  readonly b: number
}

/** Deep-groove and angular-contact ball bearings; Shigley, Table 11-6, manufacturer 2. */
const BALL_BEARING_LIVES: WeibullLife = { x0: 0.02, theta: 4.459, b: 1.483 }

/** Part of the bearings that still run after x of their L10 lives: exp(-((x - x0)/(theta - x0))^b). */
export const reliability = (x: number, { x0, theta, b }: WeibullLife = BALL_BEARING_LIVES): number =>
  x <= x0 ? 1 : Math.exp(-(((x - x0) / (theta - x0)) ** b))

/**
 * Friction torque mu P d/2 of a rolling bearing.
 *
 * mu - friction coefficient at the bore
 * P  - load [N]
 * d  - bore [m]
 */
export const bearingFriction = (mu: number, P: number, d: number): number => (mu * P * d) / 2
