import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { type Play, followPlay, halfPlay, newPlay, settlePlay } from '../../../sim/drive/play.ts'
import {
  advanceTicks,
  advanceTurns,
  noTurns,
  ticksBetween,
  TICKS_PER_TURN,
} from '../../../sim/drive/turns.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { machineLayout } from '../../../sim/pose/layout.ts'
import {
  leftWheelAngle,
  newPoses,
  poseOffset,
  posePlan,
  rightWheelAngle,
  writePoses,
} from '../../../sim/pose/pose.ts'
import { bootCleaner, demoMachines } from '../../support/machines.ts'
import { near } from '../../support/near.ts'

const TURN = 2 * Math.PI
const layout = machineLayout(bootCleaner)
const { gears } = layout
const { backlash } = bootCleaner.gearing
/** Lost motion at the worm: jx/p [rad], and at the wheel: jx/r2 [rad] */
const lostAtWorm = backlash / gears.screwParameter
const lostAtWheel = backlash / gears.referenceRadiusWheel

function atRest(half = halfPlay(backlash, gears.lead)) {
  const turns = noTurns()
  const play = newPlay()
  settlePlay(play, turns, half)
  const turnTo = (worm: number): void => {
    const before = ticksBetween(noTurns(), turns) / TICKS_PER_TURN
    advanceTurns(turns, worm - before)
    followPlay(play, turns)
  }
  return { turns, play, turnTo, right: () => rightWheelAngle(layout, turns, play) }
}

describe('play of the wheels', () => {
  test('after a reversal the worm turns jx/p before the wheel moves, and then takes it along', () => {
    const { turnTo, right } = atRest()
    turnTo(3)
    const stood = right()
    const lost = lostAtWorm / TURN
    for (const part of [0.1, 0.5, 0.9, 0.999]) {
      turnTo(3 - part * lost)
      near(right(), stood, 1e-12)
    }
    turnTo(3 - lost - 0.25)
    // the right wheel turns against a right-hand worm that turns about +z
    near(right() - stood, (TURN * 0.25 * layout.starts) / layout.teeth, 1e-12)
  })

  test('is jx/r2 at the wheel: so far apart it stands at the same worm angle, come to from either side', () => {
    const { turnTo, right } = atRest()
    turnTo(2.5)
    const forwards = right()
    turnTo(4)
    turnTo(2.5)
    near(Math.abs(right() - forwards), lostAtWheel, 1e-12)
  })

  test('is crossed by each wheel by itself', () => {
    const { play, turns, turnTo } = atRest(0.02)
    turnTo(1)
    play.left = 0.01
    const [left, right] = [leftWheelAngle(layout, turns, play), rightWheelAngle(layout, turns, play)]
    turnTo(0.98)
    // the left wheel was 0.01 short of its other flank, the right one 0.04
    expect(play.left).toBe(0.02)
    near(play.right, 0, 1e-12)
    const moved = (leftWheelAngle(layout, turns, play) - left) * layout.leftSense
    near(moved, (-0.01 * TURN * layout.starts) / layout.teeth, 1e-12)
    near(rightWheelAngle(layout, turns, play), right, 1e-12)
  })

  test('turns wheel and brush of the pose by as much as it tells of their angle', () => {
    const { play, turns, turnTo } = atRest()
    turnTo(4.3)
    turnTo(4.29)
    const poses = writePoses(newPoses(), posePlan(layout), turns, 0, play)
    const angles = {
      leftWheel: leftWheelAngle(layout, turns, play),
      leftBrush: leftWheelAngle(layout, turns, play),
      rightWheel: rightWheelAngle(layout, turns, play),
      rightBrush: rightWheelAngle(layout, turns, play),
    }
    for (const part of ['leftWheel', 'leftBrush', 'rightWheel', 'rightBrush'] as const) {
      const at = poseOffset(part)
      // a pose is kept in single precision
      near(2 * Math.atan2(poses[at + 4]!, poses[at + 6]!), angles[part], 1e-6)
    }
  })

  test('never lets a wheel further than half of it from its exact place', () => {
    const { play, turnTo } = atRest()
    for (let n = 0; n < 2000; n++) {
      turnTo(Math.sin(n * 1.7) * (n % 7))
      expect(Math.abs(play.left)).toBeLessThanOrEqual(play.half)
      expect(play.right).toBe(play.left)
    }
  })

  test('none leaves lags that are exactly zero, and the same poses to the last bit', () => {
    const { play, turns, turnTo } = atRest(0)
    const plan = posePlan(layout)
    for (const worm of [0.3, -4.7, 12.9]) {
      turnTo(worm)
      expect(Object.is(play.left, 0) && Object.is(play.right, 0)).toBe(true)
      expect(writePoses(newPoses(), plan, turns, 0, play)).toEqual(writePoses(newPoses(), plan, turns, 0))
    }
  })

  test('leaves twenty turns to one exact: the wheels are back to the last bit, forwards and back', () => {
    const { play, turns } = atRest()
    const plan = posePlan(layout)
    const home = writePoses(newPoses(), plan, turns, 0, play)
    for (let turn = 0; turn < 20; turn++) {
      advanceTicks(turns, TICKS_PER_TURN)
      followPlay(play, turns)
    }
    expect(turns).toEqual({ turns: 20, ticks: 0, rest: 0 })
    expect(writePoses(newPoses(), plan, turns, 0, play)).toEqual(home)
    advanceTicks(turns, -40 * TICKS_PER_TURN)
    followPlay(play, turns)
    const back = writePoses(newPoses(), plan, turns, 0, play)
    advanceTicks(turns, -20 * TICKS_PER_TURN)
    followPlay(play, turns)
    expect(writePoses(newPoses(), plan, turns, 0, play)).toEqual(back)
  })

  test('leaves the marks of a machine set to zero within half of it from their pointers', () => {
    for (const machine of demoMachines) {
      const plan = machineLayout(machine)
      const play: Play = newPlay()
      settlePlay(play, noTurns(), compileDrive(machine).halfPlay)
      const { referenceRadiusWheel } = pairProportions(machine.gearing)
      const most = machine.gearing.backlash / referenceRadiusWheel / 2
      for (const angle of [leftWheelAngle(plan, noTurns(), play), rightWheelAngle(plan, noTurns(), play)]) {
        expect(Math.abs(angle)).toBeLessThanOrEqual(most * (1 + 1e-12))
        expect(Math.abs(angle)).toBeGreaterThan(0.99 * most)
      }
    }
  })
})
