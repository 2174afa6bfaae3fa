import { expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { TICKS_PER_TURN, wheelFraction, wholeWheelTurns, wormTurnsValue } from '../../sim/drive/turns.ts'
import { handTicks } from '../../web/frame/turning.ts'
import { createFrame, setCuts } from '../../web/frame/frame-state.ts'
import {
  advanceModel,
  beginDrag,
  changeDrive,
  dragTo,
  endDrag,
  hold,
  placeAt,
  runFrame,
  turnByDrive,
  turnByDriveFor,
  turnByHand,
  zero,
} from '../../web/frame/frame.ts'
import { bootCleaner } from '../support/machines.ts'

const newFrame = () => createFrame(compileDrive(bootCleaner), { ...firstInput(), setting: 4 })

/** Draws at a steady rate [Hz] for some seconds. */
function draw(frame: ReturnType<typeof newFrame>, rate: number, seconds: number): void {
  for (let n = 0; n < rate * seconds; n++) runFrame(frame, 1 / rate)
}

test('the same run drawn at 30, 60 and 120 pictures a second ends at the same place to the last bit', () => {
  const places = [30, 60, 120].map((rate) => {
    const frame = newFrame()
    frame.pace = 4
    turnByDrive(frame)
    draw(frame, rate, 2)
    hold(frame)
    return { ...frame.state.turns }
  })
  expect(places[1]).toEqual(places[0])
  expect(places[2]).toEqual(places[0])
  expect(places[0]!.turns).toBeGreaterThan(10)
})

test('a hand turn ends exactly on its angle whatever the frame rate', () => {
  for (const rate of [3, 7.3, 24, 61.7, 144]) {
    const frame = newFrame()
    turnByHand(frame, handTicks('turn', 1, 20))
    draw(frame, rate, 2)
    expect(frame.motion).toBe('still')
    expect(frame.state.turns).toEqual({ turns: 1, ticks: 0, rest: 0 })
  }
})

test('sums of degrees, teeth, quarters and wheel turns are exact, both ways', () => {
  for (const [z1, z2] of [
    [1, 20],
    [3, 31],
    [7, 45],
    [8, 120],
  ] as const) {
    const frame = newFrame()
    setCuts(frame, true)
    for (let n = 0; n < 360; n++) turnByHand(frame, handTicks('degree', z1, z2))
    expect(frame.state.turns).toEqual({ turns: 1, ticks: 0, rest: 0 })
    for (let n = 0; n < z1; n++) turnByHand(frame, -handTicks('tooth', z1, z2))
    expect(frame.state.turns).toEqual({ turns: 0, ticks: 0, rest: 0 })
    turnByHand(frame, -5 * handTicks('wheel', z1, z2))
    expect(wholeWheelTurns(frame.state.turns, z1, z2)).toBe(-5)
    expect(wheelFraction(frame.state.turns, z1, z2)).toBe(0)
  }
})

test('steps that are added while a hand turn is under way are all made', () => {
  const frame = newFrame()
  for (let n = 0; n < 5; n++) {
    turnByHand(frame, TICKS_PER_TURN)
    runFrame(frame, 0.11)
  }
  draw(frame, 60, 4)
  expect(frame.state.turns).toEqual({ turns: 5, ticks: 0, rest: 0 })
})

test('a count run stops on the mark with no speed left', () => {
  const frame = newFrame()
  turnByDriveFor(frame, 20 * TICKS_PER_TURN)
  draw(frame, 60, 3)
  expect(frame.motion).toBe('still')
  expect(frame.state.turns).toEqual({ turns: 20, ticks: 0, rest: 0 })
  expect(frame.state.speed).toBe(0)
})

test('after a million turns of running the wheels still stand in the exact ratio to the worm', () => {
  const frame = newFrame()
  placeAt(frame, 999_990, 0, 0)
  turnByDrive(frame)
  advanceModel(frame, 1)
  const { turns } = frame.state
  expect(turns.turns).toBeGreaterThan(1_000_000)
  const teeth = BigInt(turns.turns) * 3n
  expect(wholeWheelTurns(turns, 3, 31)).toBe(Number(teeth / 31n + (teeth % 31n) / 31n))
  expect(wormTurnsValue(turns)).toBeCloseTo(turns.turns + turns.ticks / TICKS_PER_TURN, 6)
})

test('running settles at the operating point', () => {
  const frame = newFrame()
  turnByDrive(frame)
  advanceModel(frame, 4)
  const steady = operatingPoint(frame.drive, frame.input)!
  expect(Math.abs(frame.state.speed / steady.speed - 1)).toBeLessThan(1e-6)
})

test('unplugged while it runs it coasts, and is still when it has come to rest', () => {
  const frame = newFrame()
  turnByDrive(frame)
  advanceModel(frame, 2)
  frame.input.connected = false
  advanceModel(frame, 0.1)
  expect(frame.motion).toBe('running')
  advanceModel(frame, 5)
  expect(frame.motion).toBe('still')
})

test('a drag lets go on a whole degree', () => {
  const frame = newFrame()
  beginDrag(frame)
  dragTo(frame, 1.25037)
  endDrag(frame)
  expect(frame.state.turns).toEqual({ turns: 1, ticks: TICKS_PER_TURN / 4, rest: 0 })
})

test('zero brings marks and counts to their beginning and holds the machine', () => {
  const frame = newFrame()
  turnByDrive(frame)
  advanceModel(frame, 1)
  zero(frame)
  expect(frame.state.turns).toEqual({ turns: 0, ticks: 0, rest: 0 })
  expect(frame.motion).toBe('still')
})

test('the wheels wait through their play when a hand or a finger turns the worm back', () => {
  const frame = newFrame()
  const { halfPlay } = frame.drive
  expect(halfPlay).toBeGreaterThan(0)
  turnByHand(frame, TICKS_PER_TURN)
  draw(frame, 60, 2)
  expect([frame.play.left, frame.play.right]).toEqual([-halfPlay, -halfPlay])
  beginDrag(frame)
  dragTo(frame, -halfPlay)
  expect(Math.abs(frame.play.left)).toBeLessThan(1e-12)
  dragTo(frame, -0.5)
  expect(frame.play.right).toBe(halfPlay)
  endDrag(frame)
  turnByDrive(frame)
  draw(frame, 60, 1)
  expect(frame.play.left).toBe(-halfPlay)
})

test('a worm that is set somewhere, and a drive with other backlash, leave the wheels on the driving flank', () => {
  const frame = newFrame()
  setCuts(frame, true)
  turnByHand(frame, -TICKS_PER_TURN)
  expect(frame.play.left).toBe(frame.drive.halfPlay)
  placeAt(frame, 7, 0, 0)
  expect(frame.play.left).toBe(-frame.drive.halfPlay)
  const tight = { ...bootCleaner, gearing: { ...bootCleaner.gearing, backlash: 0 } }
  changeDrive(frame, compileDrive(tight))
  turnByHand(frame, -TICKS_PER_TURN)
  expect([frame.play.left, frame.play.right]).toEqual([0, 0])
  expect(frame.state.turns).toEqual({ turns: 6, ticks: 0, rest: 0 })
})
