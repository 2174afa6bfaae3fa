/** What the physics of the mesh says about a machine whose numbers are each in range. */
import { rounded } from '../gear/gear-problem.ts'
import { lockedInertia, selfLocking, wheelDrivingEfficiency } from '../gear/efficiency.ts'
import { leadAngle, pairProportions } from '../gear/proportions.ts'
import { radians } from '../quantity/convert.ts'
import type { Gearing, Outputs, Rotor } from './machine.ts'
import type { Problem } from './problem.ts'
import { toldNumber } from './told.ts'

/** A throated wheel as wide as the worm is thick would have teeth where there is no worm to cut them. */
export function widthProblems(gearing: Gearing): Problem[] {
  const { wheelWidth, wheelForm } = gearing
  const most = 2 * pairProportions(gearing).tipRadiusWorm
  if (wheelForm === 'helical' || wheelWidth < most) return []
  const got = `got ${rounded(wheelWidth)} mm`
  const message = `must be below ${rounded(most)} mm, the outside diameter of the worm, ${got}`
  return [{ path: 'gearing.wheelWidth', severity: 'error', message }]
}

/** A wheel put in by as many teeth as it has is back where it was. */
export function offsetProblems({ wheelTeeth }: Gearing, { toothOffset }: Outputs): Problem[] {
  if (toothOffset < wheelTeeth) return []
  const message =
    `should be below ${wheelTeeth}, the number of teeth, got ${toothOffset}: ` +
    `take ${toothOffset % wheelTeeth}, which is the same place`
  return [{ path: 'outputs.toothOffset', severity: 'warning', message }]
}

/** Whether the wheels can turn the worm back: they cannot where mu >= cos an tan g. */
export function lockingNotes(gearing: Gearing): Problem[] {
  const { wormStarts, diameterQuotient, pressureAngle, friction } = gearing
  const g = leadAngle(wormStarts, diameterQuotient)
  const alphaN = radians(pressureAngle)
  const locking = selfLocking(g, alphaN, friction)
  if (locking === 'back-drives') return []
  const limit = `the limit ${rounded(Math.cos(alphaN) * Math.tan(g))} of this worm`
  const value = toldNumber(friction)
  const message =
    locking === 'locks'
      ? `makes the pair self-locking: the wheels cannot turn the worm, since ${value} is not below ${limit}`
      : 'makes the pair nearly self-locking: the wheels can hardly turn the worm, ' +
        `since ${value} is just below ${limit}`
  return [{ path: 'gearing.friction', severity: 'note', message }]
}

/** More inertia behind wheels of a self-locking pair than the rotor outweighs leaves no definite motion. */
export function rotorProblems(gearing: Gearing, rotor: Rotor, outputs: Outputs): Problem[] {
  const { wormStarts, wheelTeeth, diameterQuotient, pressureAngle, friction } = gearing
  const etaB = wheelDrivingEfficiency(
    leadAngle(wormStarts, diameterQuotient),
    radians(pressureAngle),
    friction,
  )
  const least = lockedInertia(etaB, outputs.wheelInertia, wheelTeeth / wormStarts)
  if (rotor.inertia > least) return []
  const message =
    `must be above ${rounded(least)} kg cm2 for two wheels of this inertia behind a self-locking pair, ` +
    `got ${toldNumber(rotor.inertia)} kg cm2`
  return [{ path: 'rotor.inertia', severity: 'error', message }]
}
