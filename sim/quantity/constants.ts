/** One turn [rad] */
export const TURN = 2 * Math.PI

/** [s] */
export const MINUTE = 60
export const HOUR = 60 * MINUTE

export const PER_CENT = 1e-2
