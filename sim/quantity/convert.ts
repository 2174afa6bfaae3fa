import { MINUTE, TURN } from './constants.ts'

/** Degrees to radians. */
export const radians = (degrees: number): number => (degrees * TURN) / 360

/** Radians to degrees. */
export const degrees = (radians: number): number => (radians * 360) / TURN

/** Speed of turning: r/min to rad/s. */
export const radPerSecond = (rpm: number): number => (rpm * TURN) / MINUTE

/** Speed of turning: rad/s to r/min. */
export const rpm = (radPerSecond: number): number => (radPerSecond * MINUTE) / TURN
