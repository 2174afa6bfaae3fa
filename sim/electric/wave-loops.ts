/**
 * The mode of a network as numbers, so that one set of equations serves every mode. With e the source's emf, i the
 * motor's current, j the source's, v the capacitor's voltage and E the motor's emf:
 *
 *   (La + |series| Ls) di/dt = series e + tapped v - V - (Ra + |series| Rs) i - E,  V all constant drops on the way
 *   Ls dj/dt = e - Rs j - turn (V' + intoCapacitor v)   where the source runs by itself, otherwise j = series i
 *   C dv/dt = intoCapacitor turn j - tapped i - v/Rb
 *
 * Drops are signed by the sense of their current, never by its size, so that the equations stay smooth where a step
 * looks past the end of a mode and the power of each drop stays voltage times current.
 */
export interface Loops {
  series: -1 | 0 | 1
  /** Part of the capacitor's voltage that the motor's loop holds, and of the motor's current that it gives */
  tapped: number
  /** 1 where the source runs by itself */
  apart: 0 | 1
  intoCapacitor: 0 | 1
  /** 1 where the capacitor's voltage may change */
  charged: 0 | 1
  /** Constant drops in the motor's way [V] */
  brush: number
  diode: number
  triac: number
  switched: number
  freewheel: number
  /** Constant drops in the way of a source that runs by itself, for a current in the frame's sense [V] */
  ownDiode: number
  ownTriac: number
}

export const newLoops = (): Loops => ({
  series: 0,
  tapped: 0,
  apart: 0,
  intoCapacitor: 0,
  charged: 0,
  brush: 0,
  diode: 0,
  triac: 0,
  switched: 0,
  freewheel: 0,
  ownDiode: 0,
  ownTriac: 0,
})
