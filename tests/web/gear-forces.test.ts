import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { radialLoad } from '../../sim/gear/mesh-forces.ts'
import {
  bearingsAt,
  forceArrows,
  forceRows,
  headWords,
  oneBearingWords,
  sharedTorques,
  thrustArrows,
  wormForces,
} from '../../web/gears/forces.ts'
import { ForcePicture } from '../../web/gears/ForcePicture.tsx'
import { bootCleaner } from '../support/machines.ts'
import { near } from '../support/near.ts'

/** 1/20, module 2, q 10, 20 degrees, right hand, 1200 N mm on both wheels together. */
const gearing = {
  ...bootCleaner.gearing,
  hand: 'right',
  wormStarts: 1,
  wheelTeeth: 20,
  axialModule: 2,
  diameterQuotient: 10,
  pressureAngle: 20,
  friction: 0.09,
} as const
const evenly = { left: 0.6, right: 0.6 }
const between = { front: 30, rear: -30 }
const overhung = { front: -25, rear: -55 }

// Worked by hand from the same statics; tolerance: half of the last digit.
test.each([
  { loads: 'equal', at: between, front: 0, rear: 0, digit: 0.0005 },
  { loads: 'unequal', at: between, front: 3.65, rear: 1.0, digit: 0.005 },
  { loads: 'unequal', at: overhung, front: 10.73, rear: 6.62, digit: 0.005 },
  { loads: 'one', at: between, front: 21.9, rear: 6.03, digit: 0.05 },
  { loads: 'one', at: overhung, front: 64.4, rear: 39.7, digit: 0.05 },
] as const)('$loads loads, bearings at $at.front and $at.rear mm', ({ loads, at, front, rear, digit }) => {
  const forces = wormForces(gearing, sharedTorques(evenly, loads), 1, at)
  near(radialLoad(forces.bearings.A), front, digit)
  near(radialLoad(forces.bearings.B), rear, digit)
  near(forces.mesh.wormForce[2], 60, 1e-9)
  near(-1000 * forces.mesh.wormMoment[2], 118.6, 0.005)
})

test('the table tells thrust and torque as sums, and of the rest what is left', () => {
  const rows = (loads: 'equal' | 'unequal') =>
    forceRows(wormForces(gearing, sharedTorques(evenly, loads), 1, between))
  for (const { does, sum, left, right } of [...rows('equal'), ...rows('unequal')]) {
    near(sum, left + right, 1e-9)
    expect(Math.sign(left) === Math.sign(right)).toBe(does === 'add')
  }
  for (const { does, sum } of rows('equal').filter((row) => row.does === 'cancel')) {
    expect(does).toBe('cancel')
    near(sum, 0, 1e-9)
  }
  // 700 and 500 N mm: Fa1 35 and 25 N at 10 mm
  near(rows('unequal').find(({ name }) => name === 'Tilting')!.sum, -100, 1e-9)
})

test.each(['equal', 'unequal', 'one'] as const)('the arrows of the stage are in balance, %s', (loads) => {
  for (const at of [between, overhung]) {
    const arrows = forceArrows(wormForces(gearing, sharedTorques(evenly, loads), 1, at))
    for (const n of [0, 1, 2] as const) {
      near(
        arrows.reduce((sum, { vector }) => sum + vector[n], 0),
        0,
        1e-9,
      )
    }
    const moment = arrows.reduce((sum, { at: [x, , z], vector: [fx, , fz] }) => sum + z * fx - x * fz, 0)
    near(moment, 0, 1e-9)
    expect(
      arrows.every(({ vector, label }) => vector.some((part) => part !== 0) && label.endsWith(' N')),
    ).toBe(true)
  }
})

test('what cancels stands against its like, what adds goes the same way', () => {
  const arrows = forceArrows(wormForces(gearing, evenly, 1, between))
  const meshes = arrows.filter(({ kind }) => kind !== 'bearing')
  expect(meshes).toHaveLength(6)
  const sideways = meshes.filter(({ kind }) => kind === 'cancels')
  near(sideways[0]!.vector[0] + sideways[1]!.vector[0], 0, 1e-12)
  const along = meshes.filter(({ vector }) => vector[2] !== 0)
  expect(along.map(({ vector }) => vector[2])).toEqual([30, 30].map((force) => expect.closeTo(force, 9)))
  // With equal loads the bearings have nothing to do but to take the thrust.
  expect(arrows.filter(({ kind }) => kind === 'bearing').map(({ vector }) => vector[2])).toEqual([
    expect.closeTo(-60, 9),
  ])
})

test('both meshes together push before the end of the shaft; one alone is its own sum', () => {
  const arrows = (loads: 'equal' | 'unequal' | 'one') =>
    thrustArrows(wormForces(gearing, sharedTorques(evenly, loads), 1, between), 40)
  for (const loads of ['equal', 'unequal'] as const)
    expect(arrows(loads)).toEqual([
      { at: [0, 0, 40], vector: [0, 0, expect.closeTo(60, 9)], label: 'Together 60.0 N', kind: 'sum' },
    ])
  expect(arrows('one')).toEqual([])
})

test.each([
  { hand: 'right', rises: true },
  { hand: 'left', rises: false },
] as const)('the drawn threads of a $hand-hand worm lie as they do from above', ({ hand, rises }) => {
  const forces = wormForces({ ...gearing, hand }, evenly, 1, between)
  const drawn = renderToStaticMarkup(createElement(ForcePicture, { forces, hand }))
  const threads = /<g class="force-worm">.*?<\/g>/.exec(drawn)?.[0] ?? ''
  const lines = [...threads.matchAll(/d="M[\d.]+ ([\d.]+)L[\d.]+ ([\d.]+)"/g)]
  expect(lines).toHaveLength(4)
  for (const [, left, right] of lines) expect(Number(right) < Number(left)).toBe(rises)
})

test('the words follow the loads', () => {
  const words = (loads: 'equal' | 'unequal' | 'one') =>
    wormForces(gearing, sharedTorques(evenly, loads), 1, between)
  expect(headWords(words('equal'))).toBe(
    'Both meshes push the worm to the front: 60.0 N together. Sideways they cancel.',
  )
  expect(headWords(words('one'))).toMatch(/^Only the right mesh/)
  expect(headWords(wormForces({ ...gearing, hand: 'left' }, evenly, 1, between))).toMatch(/to the back/)
  expect(headWords(wormForces(gearing, { left: 0, right: 0 }, 1, between))).toMatch(/^No load/)
  expect(oneBearingWords(words('equal'))).toMatch(/^With equal loads nothing is left/)
  expect(oneBearingWords(words('unequal'))).toContain('100 N mm')
})

test('overhung, both bearings stand behind the wheels', () => {
  expect(bearingsAt('between', between)).toEqual(between)
  expect(bearingsAt('overhung', between)).toEqual({ front: -30, rear: -60 })
})
