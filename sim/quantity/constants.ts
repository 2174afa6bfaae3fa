/** One turn [rad] */
export const TURN = 2 * Math.PI

/** [s] */
export const MINUTE = 60
