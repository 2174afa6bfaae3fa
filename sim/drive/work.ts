import type { BridgeWork } from '../electric/bridge-circuit.ts'
import { newBridgeWork } from '../electric/bridge-circuit.ts'
import type { CurrentCycle } from '../electric/cycle.ts'
import { newCycle } from '../electric/cycle.ts'

/**
 * Numbers in passing, owned by one compiled drive so that the frame needs no new memory. All in the commanded
 * frame: positive is the way the supply, or the hand, drives the worm.
 */
export interface Work {
  /** Worm speed [rad/s] */
  speed: number
  /** Whether the supply reaches the drive: plugged in, and no protection open */
  live: boolean
  /** Whether period means are solved at the very speed, not looked up between speeds */
  exact: boolean
  /** Whether the torque is given for a stretch of time, not worked out */
  held: boolean
  /** Voltage of a smoothing capacitor that the supply does not reach [V], what it takes up then [W] */
  capacitorVoltage: number
  capacitorPower: number
  /** Mean current out of that capacitor while the torque is held [A] */
  capacitorCurrent: number
  /** Voltage beyond all that opposes a current from or to that capacitor [V] */
  surplus: number
  /** By how much dry friction is more than in running */
  stiction: number
  /** Worm acceleration [rad/s2] */
  acceleration: number
  /** Sense of motion: 1, -1, or 0 at rest */
  motion: number
  /** Time left in the step [s] */
  remaining: number
  /** Stretch of time at hand [s], the speed at its start [rad/s], the angle turned in it [rad] */
  span: number
  from: number
  turned: number
  /** Acceleration at the start of the stretch [rad/s2] */
  push: number
  /** Largest size of speed in question [rad/s], and a bound of the settling rate up to there [1/s] */
  reach: number
  rate: number
  /** Speed gained in an implicit step, what that misses its equation by; both of a gain too small [rad/s] */
  gain: number
  miss: number
  nearGain: number
  nearMiss: number
  /** Torque of motor or hand on the worm shaft [N m] */
  torque: number
  /** Part of its limit at which dry friction holds: -1 about to turn backward, 1 about to turn forward */
  hold: number
  /** Friction and fan of the worm shaft [N m] */
  rotorDrag: number
  readonly left: WheelWork
  readonly right: WheelWork
  readonly cycle: CurrentCycle
  readonly bridge: BridgeWork
}

/** One wheel; torques at the wheel, positive against forward motion. */
export interface WheelWork {
  /** With what a jam holds it, 0 where none does [N m] */
  jam: number
  /** Torque of what the wheel is given to do [N m] */
  load: number
  /** Load with bearing friction, without inertia [N m] */
  drag: number
  /** Torque through the mesh: drag and inertia [N m] */
  mesh: number
  /** What that asks of the worm [N m] */
  wormTorque: number
  /** Torque at the worm at which this wheel would start, forward and backward [N m] */
  forwardStart: number
  backwardStart: number
}

const newWheelWork = (): WheelWork => ({
  jam: 0,
  load: 0,
  drag: 0,
  mesh: 0,
  wormTorque: 0,
  forwardStart: 0,
  backwardStart: 0,
})

export const newWork = (): Work => ({
  speed: 0,
  live: true,
  exact: false,
  held: false,
  capacitorVoltage: 0,
  capacitorPower: 0,
  capacitorCurrent: 0,
  surplus: 0,
  stiction: 1,
  acceleration: 0,
  motion: 0,
  remaining: 0,
  span: 0,
  from: 0,
  turned: 0,
  push: 0,
  reach: 0,
  rate: 0,
  gain: 0,
  miss: 0,
  nearGain: 0,
  nearMiss: 0,
  torque: 0,
  hold: 0,
  rotorDrag: 0,
  left: newWheelWork(),
  right: newWheelWork(),
  cycle: newCycle(),
  bridge: newBridgeWork(),
})
