/**
 * What a person sets while a machine runs. Mutable, so that the frame can keep one and change it in place.
 */
export interface DriveInput {
  /** Speed step, counted from 0 */
  setting: number
  /** Plugged in, battery connected, or hand on the crank */
  connected: boolean
  /** Polarity of the supply or way of cranking; a rectified supply knows only 1 */
  sense: 1 | -1
  /** Index in outputs.loads */
  leftLoad: number
  rightLoad: number
  jammed: 'none' | 'left' | 'right'
}

export const firstInput = (): DriveInput => ({
  setting: 0,
  connected: true,
  sense: 1,
  leftLoad: 0,
  rightLoad: 0,
  jammed: 'none',
})
