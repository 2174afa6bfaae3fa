import type { Machine } from '../../sim/machine/machine.ts'
import { radians } from '../../sim/quantity/convert.ts'
import { classroomModel } from './machines.ts'

export interface GearedCrank {
  /** Turns of the worm for one of a wheel; whole */
  readonly ratio: number
  /** Of the mesh, worm driving */
  readonly efficiency?: number
  /** At the worm [kg m2] */
  readonly inertia?: number
  /** Both wheels together [kg m2], [N m] */
  readonly wheelInertia?: number
  readonly torque?: number
  /** [r/min] */
  readonly speed: number
}

/**
 * A textbook's geared load, half of it on each wheel, turned by a hand that tells the torque it takes. Nothing is lost
 * but in the mesh, whose friction is the one that gives the efficiency asked for.
 */
export function gearedCrank(given: GearedCrank): Machine {
  const { ratio, efficiency = 1, inertia = 0, wheelInertia = 0, torque = 0, speed } = given
  const { gearing, outputs } = classroomModel
  const t = gearing.wormStarts / gearing.diameterQuotient
  const cosine = Math.cos(radians(gearing.pressureAngle))
  // efficiency = (cosine - mu t)/(cosine + mu/t), solved for mu
  const friction = (cosine * (1 - efficiency)) / (t + efficiency / t)
  return {
    ...classroomModel,
    control: { kind: 'crank', steps: [{ speed }] },
    rotor: {
      ...classroomModel.rotor,
      inertia: 1e4 * inertia,
      frictionTorque: 0,
      viscousTorque: 0,
    },
    gearing: { ...gearing, wheelTeeth: ratio * gearing.wormStarts, friction },
    outputs: {
      ...outputs,
      wheelInertia: (1e4 * wheelInertia) / 2,
      bearingTorque: 0,
      loads: [{ name: 'Load', active: 0, passive: torque / 2, linear: 0, quadratic: 0 }],
    },
  }
}
