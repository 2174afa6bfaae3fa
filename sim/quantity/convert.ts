import { MINUTE, TURN } from './constants.ts'

/** Degrees to radians. */
export const radians = (inDegrees: number): number => (inDegrees * TURN) / 360

/** Radians to degrees. */
export const degrees = (inRadians: number): number => (inRadians * 360) / TURN

/** Speed of turning: r/min to rad/s. */
export const radPerSecond = (inRpm: number): number => (inRpm * TURN) / MINUTE

/** Speed of turning: rad/s to r/min. */
export const rpm = (inRadPerSecond: number): number => (inRadPerSecond * MINUTE) / TURN
