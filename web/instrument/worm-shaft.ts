/** What passes the worm into both meshes, which the reading holds in parts. */
import type { Situation } from './situation.ts'

/** Power into both meshes [W] */
export function wormPower({ machine, reading, sense }: Situation): number {
  const { wormStarts, wheelTeeth } = machine.gearing
  const wheelSpeed = (reading.wormSpeed * sense * wormStarts) / wheelTeeth
  const losses = reading.meshLossLeft + reading.meshLossRight
  return losses + (reading.meshTorqueLeft + reading.meshTorqueRight) * wheelSpeed
}

/** Torque into both meshes [N m]; at rest it is known only where nothing pushes, as friction may carry the rest. */
export function wormTorque(situation: Situation): number {
  const { reading, sense } = situation
  if (reading.wormSpeed === 0) return reading.motorTorque === 0 ? 0 : Number.NaN
  return wormPower(situation) / (reading.wormSpeed * sense)
}

/** Power that the motor, or the hand, gives to the shaft [W] */
export const motorPower = ({ reading, sense }: Situation): number =>
  reading.motorTorque * reading.wormSpeed * sense
