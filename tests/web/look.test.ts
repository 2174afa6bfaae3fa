/** From where the stage looks when something is shown that wants to be seen from near. */
import { Vector3 } from 'three'
import { expect, test } from 'vitest'
import type { Side } from '../../sim/gear/gear-numbers.ts'
import { machineLayout } from '../../sim/pose/layout.ts'
import { createWorkshop } from '../../web/frame/workshop.ts'
import { openPanel } from '../../web/panel/panels.ts'
import { lookFrom, lookOn } from '../../web/panel/stage-look.ts'
import { createCameraRig, goToView, isClose } from '../../web/scene/camera-rig.ts'
import { fitPoints } from '../../web/scene/fit-points.ts'
import { type Look, NOTHING_SPECIAL, pushesAlong } from '../../web/scene/views.ts'
import { bootCleaner } from '../support/machines.ts'

const free = { left: 372, top: 80, right: 372, bottom: 0 }

function standing(look: Look, hand: 'right' | 'left' = 'right') {
  const layout = machineLayout({ ...bootCleaner, gearing: { ...bootCleaner.gearing, hand } })
  const rig = createCameraRig(layout, free)
  rig.width = 1440
  rig.height = 640
  rig.look = look
  goToView(rig, look.forces === null ? 'mesh' : 'worm', true)
  return { layout, rig }
}

const handed = (['right', 'left'] as const).flatMap((hand) =>
  (['right', 'left'] as const).flatMap((side) => ([1, -1] as const).map((sense) => ({ hand, side, sense }))),
)

test.each(handed)('compound is looked at from its own side: $hand hand, $side wheel, $sense', (chosen) => {
  const { hand, side, sense } = chosen
  const flanks = pushesAlong(sense, hand)
  const look: Look = { side, flanks, forces: null, lit: null }
  const { layout, rig } = standing(look, hand)
  const own = side === 'left' ? -1 : 1
  const axis = new Vector3(own * layout.gears.centreDistance, 0, 0)
  const points = fitPoints(layout, 'flanks', look)
  const tooth = points.reduce((sum, point) => sum.add(point), new Vector3()).divideScalar(points.length)
  // The wheel turns about +y; a flank that is driven faces back from where its tooth goes.
  const turns = (side === 'left' ? layout.leftSense : layout.rightSense) * sense
  const faces = new Vector3(0, turns, 0).cross(tooth.clone().sub(axis)).normalize().negate()
  const toEye = rig.camera.position.clone().sub(tooth).normalize()
  expect(faces.dot(toEye)).toBeGreaterThan(Math.cos((62 * Math.PI) / 180))
  // And the tooth is on this side of its wheel.
  expect(tooth.clone().sub(axis).dot(toEye)).toBeGreaterThan(0)
})

test.each(['left', 'right'] as const)(
  'the mesh of the %s wheel is the one that is looked into',
  (side: Side) => {
    const { rig } = standing({ side, flanks: 0, forces: null, lit: null })
    expect(Math.sign(rig.now.target.x)).toBe(side === 'left' ? -1 : 1)
  },
)

test('near the gears the pointers and the senses of turning stand back, and elsewhere they do not', () => {
  const { rig } = standing({ ...NOTHING_SPECIAL, forces: 'between' })
  expect(isClose(rig)).toBe(true)
  rig.look = NOTHING_SPECIAL
  expect(isClose(rig)).toBe(false)
  goToView(rig, 'gears', true)
  expect(isClose(rig)).toBe(false)
})

test('Forces goes near and back again, but never takes the eye from where a person has put it', () => {
  const workshop = createWorkshop(bootCleaner, 'light')
  const { view } = workshop
  openPanel(workshop, 'forces')
  expect(view.getState().view).toEqual({ name: 'worm', nonce: 1 })
  openPanel(workshop, 'forces')
  expect(view.getState().view.nonce).toBe(1)
  openPanel(workshop, 'contact')
  expect(view.getState().view).toEqual({ name: 'gears', nonce: 2 })
  view.setState({ camera: { position: [1, 2, 3], target: [0, 0, 0], field: 26 } })
  openPanel(workshop, 'forces')
  expect(view.getState().view.nonce).toBe(2)
  view.setState({ camera: null, view: { name: 'motor', nonce: 3 } })
  openPanel(workshop, 'figures')
  openPanel(workshop, 'forces')
  expect(view.getState().view).toEqual({ name: 'motor', nonce: 3 })
})

test('a close look puts the parts together, opens the case and leaves the plan; Forces does none of that', () => {
  const { view } = createWorkshop(bootCleaner, 'light')
  view.setState({ apart: 1, caseState: 'closed', plan: 'chosen' })
  expect(lookFrom(view.getState(), 'mesh')).toMatchObject({ apart: 0, caseState: 'clear', plan: 'no' })
  expect(lookOn(view.getState(), 'gears', 'worm')).toEqual({})
  view.setState({ plan: 'no-webgl' })
  expect(lookFrom(view.getState(), 'mesh').plan).toBe('no-webgl')
})
