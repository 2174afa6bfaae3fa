/** Machines with the numbers of a question, to be run instead of worked out. */
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import type { Reading } from '../../sim/drive/reading.ts'
import type { Gearing, Load, Machine } from '../../sim/machine/machine.ts'
import { classroomModel } from './machines.ts'

export interface Counts {
  readonly z1: number
  readonly z2: number
}

const load = (name: string, passive: number): Load => ({ name, active: 0, passive, linear: 0, quadratic: 0 })

/** A hand-cranked pair in which nothing but the meshes can lose power; the first load is the left wheel's. */
export function crankedPair(gearing: Partial<Gearing>, left: number, right: number, speed = 60): Machine {
  const { rotor, outputs } = classroomModel
  return {
    ...classroomModel,
    control: { kind: 'crank', steps: [{ speed }] },
    rotor: { ...rotor, frictionTorque: 0, viscousTorque: 0, fanTorque: 0 },
    gearing: { ...classroomModel.gearing, ...gearing },
    outputs: {
      ...outputs,
      wheelInertia: 0,
      bearingTorque: 0,
      loads: [load('left', left), load('right', right)],
    },
  }
}

/** What can be read off a pair that is cranked steadily. */
export function crankedReading(gearing: Partial<Gearing>, left: number, right: number): Reading {
  const point = operatingPoint(compileDrive(crankedPair(gearing, left, right)), {
    ...firstInput(),
    rightLoad: 1,
  })
  if (!point) throw new Error('a cranked pair always settles')
  return point.reading
}

const found = new Map<string, number>()

/** Halves [low, high], at whose low end `isBelow` holds, down to the place from which on it does not. */
export function lastPlaceOf(low: number, high: number, isBelow: (place: number) => boolean): number {
  let from = low
  let to = high
  for (let middle = (from + to) / 2; middle > from && middle < to; middle = (from + to) / 2)
    if (isBelow(middle)) from = middle
    else to = middle
  return from
}

/** Gearing whose meshes pass on this part of the hand's power, found by trying frictions on the running pair. */
export function gearingOf({ z1, z2 }: Counts, efficiency: number): Partial<Gearing> {
  const counts = { wormStarts: z1, wheelTeeth: z2, diameterQuotient: 10 }
  const key = `${z1} ${efficiency}`
  let friction = found.get(key)
  if (friction === undefined) {
    const passesMore = (mu: number) =>
      crankedReading({ ...counts, friction: mu }, 1, 1).efficiency > efficiency
    friction = lastPlaceOf(0, 1, passesMore)
    found.set(key, friction)
  }
  return { ...counts, friction }
}
