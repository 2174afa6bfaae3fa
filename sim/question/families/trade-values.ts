/** Round numbers of the trade that questions about torque, friction and forces draw from. Part of the bank. */
import type { Level } from '../family.ts'

const WHOLE = [12, 15, 16, 18, 20, 24, 25, 28, 30, 32, 36, 40, 45, 48, 50, 60]
const ODD = [13, 17, 19, 23, 25, 27, 29, 31, 35, 37, 41, 43, 47, 49, 53, 59]

/** Starts of the worm: one to begin with. */
export const startsAt = (level: Level): readonly number[] => (level === 1 ? [1] : [2, 3, 4])

/** Teeth of a wheel, so that the ratio comes out whole up to level 2 and does not at level 3. */
export const teethAt = (level: Level, z1: number): readonly number[] =>
  level === 3 ? ODD.filter((z2) => z2 % z1 !== 0) : WHOLE.filter((z2) => z2 % z1 === 0)

const FEW_TORQUES = [0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5]
const MORE_TORQUES = [0.015, 0.025, 0.035, 0.045, 0.065, 0.075, 0.12, 0.18, 0.24, 0.35]

/** Torque of a small motor at the worm [N m] */
export const motorTorques = (level: Level): readonly number[] =>
  level === 1 ? FEW_TORQUES : [...FEW_TORQUES, ...MORE_TORQUES]

/** Torque that a brush takes [N m] */
export const WHEEL_TORQUES = [0.1, 0.12, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.5, 0.6, 0.8, 1]

/** Part of the power that a mesh passes on */
export const MESH_EFFICIENCIES = [0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95]

/** Diameter quotient of the worm */
export const QUOTIENTS = [8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18]

/** Normal pressure angle [deg] */
export const pressureAnglesAt = (level: Level): readonly number[] =>
  level < 3 ? [15, 20, 25] : [14.5, 17.5, 20, 22.5]
