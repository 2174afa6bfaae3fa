/** How far the parts stand apart when case and wheels are off and the rest is still on: so the exercise takes them out. */
export const WHEELS_OFF = 0.3
