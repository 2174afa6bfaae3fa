import { Matrix4, Quaternion, Vector3 } from 'three'
import { describe, expect, test } from 'vitest'
import { TICKS_PER_TURN, advanceTicks, advanceTurns, noTurns } from '../../../sim/drive/turns.ts'
import type { Gearing, Machine } from '../../../sim/machine/machine.ts'
import { machineLayout } from '../../../sim/pose/layout.ts'
import { PART_NAMES, type PartName } from '../../../sim/pose/parts.ts'
import { POSE_STRIDE, newPoses, poseOffset, posePlan, writePoses } from '../../../sim/pose/pose.ts'
import { bootCleaner, demoMachines } from '../../support/machines.ts'

const withGearing = (gearing: Partial<Gearing>): Machine => ({
  ...bootCleaner,
  gearing: { ...bootCleaner.gearing, ...gearing },
})

/** Pose of a part as three.js reads it. */
function matrixOf(poses: Float32Array, part: PartName): Matrix4 {
  const at = poseOffset(part)
  const turned = new Quaternion().fromArray(poses, at + 3)
  return new Matrix4().compose(new Vector3().fromArray(poses, at), turned, new Vector3(1, 1, 1))
}

/** Where a mark that lies at `home` on its part points in the machine, without the part's place. */
const markDirection = (poses: Float32Array, part: PartName, home: Vector3): Vector3 =>
  home.clone().transformDirection(matrixOf(poses, part))

const UP = new Vector3(0, 1, 0)
const TO_VIEWER = new Vector3(0, 0, 1)
/** Single precision of a coordinate near 1 */
const SINGLE = 2 ** -22

function posesAt(machine: Machine, wormTurns: number, apart = 0): Float32Array {
  const turns = noTurns()
  advanceTicks(turns, Math.round(wormTurns * TICKS_PER_TURN))
  return writePoses(newPoses(), posePlan(machineLayout(machine)), turns, apart)
}

describe('marks', () => {
  test('stand at their pointers at zero: the worm up, the wheels to the viewer', () => {
    for (const machine of demoMachines) {
      const poses = posesAt(machine, 0)
      expect(markDirection(poses, 'rotor', UP).distanceTo(UP)).toBe(0)
      expect(markDirection(poses, 'leftWheel', TO_VIEWER).distanceTo(TO_VIEWER)).toBe(0)
      expect(markDirection(poses, 'rightWheel', TO_VIEWER).distanceTo(TO_VIEWER)).toBe(0)
    }
  })

  test('are all back, to the last bit, after 20 worm turns of 1 start and 20 teeth', () => {
    expect(posesAt(bootCleaner, 20)).toEqual(posesAt(bootCleaner, 0))
  })

  test('are all back after 31 worm turns of 3 starts and 31 teeth, and no wheel is before', () => {
    const machine = withGearing({ wormStarts: 3, wheelTeeth: 31 })
    const home = posesAt(machine, 0)
    for (let turns = 1; turns < 31; turns++) expect(posesAt(machine, turns)).not.toEqual(home)
    expect(posesAt(machine, 31)).toEqual(home)
  })

  test('are where they were after a million wheel turns', () => {
    const turns = noTurns()
    advanceTurns(turns, 20_000_000.25)
    const far = writePoses(newPoses(), posePlan(machineLayout(bootCleaner)), turns, 0)
    const near = posesAt(bootCleaner, 0.25)
    for (let i = 0; i < far.length; i++) expect(Math.abs(far[i]! - near[i]!)).toBeLessThan(SINGLE)
  })
})

describe('senses', () => {
  test('a right-hand worm that turns +z takes the inner side of both wheels away from the viewer', () => {
    const poses = posesAt(bootCleaner, 0.1)
    const right = markDirection(poses, 'rightWheel', new Vector3(-1, 0, 0))
    const left = markDirection(poses, 'leftWheel', new Vector3(1, 0, 0))
    expect(right.z).toBeLessThan(0)
    expect(left.z).toBeLessThan(0)
  })

  test('a left-hand worm turns both wheels the other way by as much', () => {
    const left = withGearing({ hand: 'left' })
    for (const turns of [0.1, 3.7, -2.25]) {
      const [one, other] = [posesAt(bootCleaner, turns), posesAt(left, turns)]
      for (const part of ['leftWheel', 'rightWheel'] as const) {
        const at = poseOffset(part)
        expect(other[at + 4]).toBe(-one[at + 4]!)
        expect(other[at + 6]).toBe(one[at + 6])
      }
    }
  })

  test('the wheels mirror each other in the plane x = 0 at every angle, together and apart', () => {
    for (const machine of demoMachines) {
      for (const turns of [0.013, 1.5, 7.77, -12.34]) {
        for (const apart of [0, 0.3, 1]) {
          const poses = posesAt(machine, turns, apart)
          for (const [one, other] of [
            ['leftWheel', 'rightWheel'] as const,
            ['leftBrush', 'rightBrush'] as const,
          ]) {
            const [a, b] = [poseOffset(one), poseOffset(other)]
            const mirrored = [-1, 1, 1, 1, -1, -1, 1]
            for (let i = 0; i < POSE_STRIDE; i++)
              expect(poses[b + i]! * mirrored[i]!).toBeCloseTo(poses[a + i]!, 12)
          }
        }
      }
    }
  })

  test('a quarter turn of the worm takes its mark from up to the left, seen by the viewer', () => {
    const mark = markDirection(posesAt(bootCleaner, 0.25), 'rotor', UP)
    expect(mark.distanceTo(new Vector3(-1, 0, 0))).toBeLessThan(SINGLE)
  })
})

describe('the array', () => {
  test('holds unit quaternions and finite places for every part', () => {
    for (const machine of demoMachines) {
      for (const apart of [0, 0.5, 1]) {
        const poses = posesAt(machine, 123.456, apart)
        for (const part of PART_NAMES) {
          const at = poseOffset(part)
          const size = Math.hypot(poses[at + 3]!, poses[at + 4]!, poses[at + 5]!, poses[at + 6]!)
          expect(Math.abs(size - 1)).toBeLessThan(SINGLE)
          for (let i = 0; i < 3; i++) expect(Number.isFinite(poses[at + i])).toBe(true)
        }
      }
    }
  })

  test('is the one that was passed in, written over whole', () => {
    const out = newPoses().fill(NaN)
    const turns = noTurns()
    expect(writePoses(out, posePlan(machineLayout(bootCleaner)), turns, 0.4)).toBe(out)
    expect(out.every((value) => Number.isFinite(value))).toBe(true)
  })
})
