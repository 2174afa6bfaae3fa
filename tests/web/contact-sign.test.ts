/** The sign for contact on the stage: on which flanks it is drawn, and when it is not. */
import { expect, test } from 'vitest'
import type { Play } from '../../sim/drive/play.ts'
import { noTurns } from '../../sim/drive/turns.ts'
import { machineLayout } from '../../sim/pose/layout.ts'
import { createCameraRig } from '../../web/scene/camera-rig.ts'
import { newMovingParts } from '../../web/scene/moving-parts.ts'
import type { Moment } from '../../web/scene/sign.ts'
import { contactPaint, contactSign } from '../../web/scene/signs/contact.ts'
import { showsLines } from '../../web/store/shown-signs.ts'
import { IDEAL, NO_SIGNS } from '../../web/store/view.ts'
import { bootCleaner } from '../support/machines.ts'

const layout = machineLayout(bootCleaner)
const rig = createCameraRig(layout, { left: 0, top: 0, right: 0, bottom: 0 })

function moment(play: Omit<Play, 'from'>, sense: 1 | -1 = 1, change: Partial<Moment> = {}): Moment {
  const frame = {
    turns: noTurns(),
    play: { ...play, from: noTurns() },
    wormTurnsPerSecond: 0,
    sense,
    modelTime: 0,
    pace: 1,
    needsFrame: false,
    anchors: {},
    advance: () => undefined,
    placed: () => undefined,
  }
  return {
    frame,
    parts: newMovingParts(),
    rig,
    apart: 0,
    caseState: 'clear',
    reducedMotion: false,
    ...change,
  }
}

/** Ends of the segments that are shown, x y z each, by side. */
function shownAt(when: Moment) {
  const sign = contactSign(bootCleaner.gearing, contactPaint())
  sign.paint(when)
  const [first] = sign.object.children as unknown as {
    geometry: { instanceCount: number; attributes: { instanceStart: { data: { array: Float32Array } } } }
  }[]
  const { instanceCount, attributes } = first!.geometry
  const numbers = Array.from(attributes.instanceStart.data.array.subarray(0, 6 * instanceCount))
  const ends = Array.from({ length: 2 * instanceCount }, (_, n) => numbers.slice(3 * n, 3 * n + 3))
  sign.dispose()
  const visible = sign.object.visible
  return {
    visible,
    left: ends.filter(([x = 0]) => x < 0),
    right: ends.filter(([x = 0]) => x > 0),
  }
}

const rigid = { left: 0, right: 0, half: 0 }

test('both meshes show lines that lie between root and tip of the thread', () => {
  const { visible, left, right } = shownAt(moment(rigid))
  expect(visible).toBe(true)
  for (const ends of [left, right]) {
    expect(ends.length).toBeGreaterThan(10)
    for (const [x = 0, y = 0] of ends) {
      const r = Math.hypot(x, y)
      expect(r).toBeGreaterThan(layout.gears.rootRadiusWorm - 1e-3)
      expect(r).toBeLessThan(layout.gears.tipRadiusWorm + 1e-3)
    }
  }
})

test('turning back puts the lines on the other flanks', () => {
  const middle = (ends: number[][]) => ends.reduce((sum, [, , z = 0]) => sum + z, 0) / ends.length
  const on = shownAt(moment(rigid)).right
  const back = shownAt(moment(rigid, -1)).right
  expect(Math.abs(middle(on) - middle(back))).toBeGreaterThan(0.1 * layout.gears.axialPitch)
})

test('a wheel that lies free within its play shows no line, and the other one goes on', () => {
  const { visible, left, right } = shownAt(moment({ left: 0.001, right: -0.01, half: 0.01 }))
  expect(visible).toBe(true)
  expect(left).toEqual([])
  expect(right.length).toBeGreaterThan(10)
})

test('the side of its play on which a wheel lies tells the flank, whichever way the worm turned last', () => {
  const pushed = { left: -0.01, right: -0.01, half: 0.01 }
  expect(shownAt(moment(pushed, -1))).toEqual(shownAt(moment(pushed, 1)))
})

test('nothing is shown while the parts are apart', () => {
  expect(shownAt(moment(rigid, 1, { apart: 0.4 })).visible).toBe(false)
})

test('the lines of the ideal setting are not drawn beside the compound of another one', () => {
  const both = { ...NO_SIGNS, contact: true, compound: true }
  const off = { ...IDEAL, tilt: 0.1 }
  expect(showsLines(both, { ...IDEAL })).toBe(true)
  expect(showsLines(both, off)).toBe(false)
  expect(showsLines({ ...both, compound: false }, off)).toBe(true)
  expect(showsLines({ ...both, contact: false }, IDEAL)).toBe(false)
})

test('a sign that is replaced leaves its paint, whose programs the next one goes on with', () => {
  const paint = contactPaint()
  let released = 0
  for (const material of paint.materials) material.addEventListener('dispose', () => released++)
  contactSign(bootCleaner.gearing, paint).dispose()
  expect(released).toBe(0)
  paint.dispose()
  expect(released).toBe(paint.materials.length)
})
