import { expect, test } from 'vitest'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { toothWidth } from '../../../sim/gear/wheel-section.ts'
import { blankRadius, spaceCutter } from '../../../sim/gear/wheel-space.ts'
import { flankPoint } from '../../../sim/gear/wheel-flank.ts'
import { wheelBody } from '../../../sim/shape/body.ts'
import { wheelDetail } from '../../../sim/shape/detail.ts'
import { wheelMesh } from '../../../sim/shape/wheel-mesh.ts'
import { wheelSurface } from '../../../sim/shape/wheel-surface.ts'
import { near } from '../../support/near.ts'
import { oneToTwenty, pairName, pairs } from '../gear/pairs.ts'
import { meshGaps } from './gap.ts'
import { topology } from './welded.ts'

const helical = (pair: GearNumbers): GearNumbers => ({ ...pair, profile: 'ZI', wheelForm: 'helical' })
const named = pairs.map((pair) => [pairName(pair), pair] as const)

test.each(named)(
  '%s: both wheels touch the worm and enter it nowhere, at 12 angles over a pitch',
  (_, pair) => {
    const surface = wheelSurface(pair, wheelDetail(pair.wheelTeeth, 'display'))
    for (const side of ['right', 'left'] as const) {
      expect(meshGaps(pair, surface, side).least).toBeGreaterThanOrEqual(-1e-6)
    }
  },
)

test.each(named)('%s: a fine wheel comes within 0.1 um of the worm at every angle', (_, pair) => {
  const fine = wheelSurface(pair, { planes: 16, flank: 60, fillet: 3, root: 1, land: 2, body: 1 })
  for (const side of ['right', 'left'] as const) {
    const { least, closest } = meshGaps(pair, fine, side)
    expect(least).toBeGreaterThanOrEqual(-1e-6)
    expect(closest).toBeLessThanOrEqual(1e-4)
  }
})

/** Twelve teeth have no involute where the worm's tip reaches, which is a problem that is told. */
const helicalPairs = pairs.filter(({ wheelTeeth }) => wheelTeeth > 12).map(helical)

test.each(helicalPairs.map((pair) => [pairName(pair), pair] as const))(
  '%s, helical: both wheels come within 1 um of the worm at every angle and enter it nowhere',
  (_, pair) => {
    const fine = wheelSurface(pair, { planes: 48, flank: 60, fillet: 3, root: 1, land: 2, body: 1 })
    for (const side of ['right', 'left'] as const) {
      const { least, closest } = meshGaps(pair, fine, side)
      expect(least).toBeGreaterThanOrEqual(-1e-6)
      expect(closest).toBeLessThan(0.001)
    }
  },
)

test('the gap test sees a wheel that is 1 um out of place, and a left wheel that is half a pitch out of phase', () => {
  const surface = wheelSurface(oneToTwenty, { planes: 12, flank: 40, fillet: 3, root: 1, land: 2, body: 1 })
  const micrometre = 0.001 / pairProportions(oneToTwenty).referenceRadiusWheel
  for (const side of ['right', 'left'] as const) {
    expect(meshGaps(oneToTwenty, surface, side, 12, micrometre).least).toBeLessThan(-0.0005)
    expect(meshGaps(oneToTwenty, surface, side, 12, -micrometre).least).toBeLessThan(-0.0005)
  }
  const halfPitch = Math.PI / oneToTwenty.wheelTeeth
  expect(meshGaps(oneToTwenty, surface, 'left', 12, halfPitch).least).toBeLessThan(-1.5)
})

const bothForms = [...named, ...pairs.map((pair) => [`${pairName(pair)}, helical`, helical(pair)] as const)]

test.each(bothForms)(
  '%s: the wheel is one closed ring at every level of detail, turned outside out',
  (_, pair) => {
    for (const detail of ['display', 'distant', 'print'] as const) {
      const found = topology(wheelMesh(pair, detail))
      expect(found).toMatchObject({ finite: true, faultyEdges: 0, euler: 0, pieces: 1, inwardNormals: 0 })
      expect(found.volume).toBeGreaterThan(0)
      expect(found.normalError).toBeLessThan(1e-6)
    }
  },
)

test('a helical wheel of 20 teeth has a plain cylinder at its tips and stands as deep as the hob cuts', () => {
  const pair = helical(oneToTwenty)
  const { throatRadiusWheel, rootRadiusWheel } = pairProportions(pair)
  const { sections } = wheelSurface(pair, wheelDetail(20, 'display'))
  for (const { radius } of sections) {
    near(Math.max(...radius), throatRadiusWheel, 1e-12)
    near(Math.min(...radius), rootRadiusWheel, 1e-12)
  }
})

test('backlash off the wheel widens every space by as much along the worm, and turns the normals with it', () => {
  const jx = 0.1
  for (const pair of [oneToTwenty, helical(oneToTwenty)]) {
    const level = wheelDetail(20, 'display')
    const full = wheelSurface(pair, level)
    const thin = wheelSurface({ ...pair, thinned: 'wheel', backlash: jx }, level)
    const half = jx / 2 / pairProportions(pair).referenceRadiusWheel
    const j = level.planes / 2
    for (const [i, sigma] of [[3, -1] as const, [full.points - 4, 1] as const]) {
      near(thin.sections[j]!.chi[i]! - full.sections[j]!.chi[i]!, sigma * half, 1e-12)
      const at = 3 * (j * full.columns + i)
      const angle = ({ normals }: typeof full) => Math.atan2(normals[at + 2]!, -normals[at]!)
      near(angle(thin) - angle(full), sigma * half, 1e-12)
    }
  }
})

test('the bore is as wide as asked, and as wide as the wheel can bear where that is more', () => {
  near(wheelBody(oneToTwenty).boreRadius, 4, 0)
  const { boreRadius, hubRadius, rimRadius } = wheelBody({ ...oneToTwenty, boreDiameter: 500 })
  expect(boreRadius).toBeLessThan(hubRadius)
  expect(hubRadius).toBeLessThan(rimRadius)
})

test('drawn wheel has the blank of the boot cleaner: outside 46 mm, throat 44 mm, face 12 mm', () => {
  const { positions } = wheelMesh(oneToTwenty, 'display')
  let outside = 0
  let face = 0
  for (let i = 0; i < positions.length; i += 3) {
    const R = Math.hypot(positions[i]!, positions[i + 2]!)
    outside = Math.max(outside, R)
    if (R > 18) face = Math.max(face, Math.abs(positions[i + 1]!))
  }
  const cutter = spaceCutter(oneToTwenty)
  near(outside, blankRadius(cutter, 6), 1e-5)
  near(face, 6, 1e-6)
  near(blankRadius(cutter, 0), 22, 1e-12)
  near(wheelBody(oneToTwenty).faceWidth, 12, 0)
})

test('display flanks of the boot cleaner lie within 20 um of the exact ones between their points', () => {
  const pair = oneToTwenty
  const surface = wheelSurface(pair, wheelDetail(20, 'display'))
  const fine = wheelSurface(pair, { planes: 12, flank: 128, fillet: 3, root: 2, land: 2, body: 2 })
  const { flank } = wheelDetail(20, 'display')
  let worst = 0
  for (let j = 0; j < surface.sections.length; j++) {
    const coarse = surface.sections[j]!
    const exact = fine.sections[j]!
    for (let i = 0; i < flank; i++) {
      for (let n = 0; n <= 16; n++) {
        const at = 16 * i + n
        const R = exact.radius[at]!
        const part = (R - coarse.radius[i]!) / (coarse.radius[i + 1]! - coarse.radius[i]!)
        const chi = coarse.chi[i]! + part * (coarse.chi[i + 1]! - coarse.chi[i]!)
        worst = Math.max(worst, Math.abs(chi - exact.chi[at]!) * R)
      }
    }
  }
  expect(worst).toBeGreaterThan(0)
  expect(worst).toBeLessThan(0.02)
})

test('shading normals of the flank are those of the surface: across both ways along it', () => {
  const pair = { ...oneToTwenty, wormStarts: 2, wheelTeeth: 30, profile: 'ZN' as const }
  const surface = wheelSurface(pair, { planes: 400, flank: 200, fillet: 3, root: 1, land: 2, body: 1 })
  const { sections, points, columns, normals } = surface
  const point = (j: number, i: number) => {
    const { radius, chi, y } = sections[j]!
    return [-radius[i]! * Math.cos(chi[i]!), y, radius[i]! * Math.sin(chi[i]!)] as const
  }
  for (const i of [40, 120, points - 121, points - 41]) {
    for (const j of [80, 200, 330]) {
      const at = 3 * (j * columns + i)
      const along = (from: readonly number[], to: readonly number[]) =>
        to.reduce((sum, x, d) => sum + (x - from[d]!) * normals[at + d]!, 0) /
        Math.hypot(...to.map((x, d) => x - from[d]!))
      near(along(point(j - 1, i), point(j + 1, i)), 0, 1e-4)
      near(along(point(j, i - 1), point(j, i + 1)), 0, 1e-4)
    }
  }
})

test('a wheel turned half round about a tooth space is itself, so the same part serves both sides', () => {
  for (const pair of pairs) {
    const { generation: g } = spaceCutter(pair)
    const r1 = pairProportions(pair).referenceRadiusWorm
    for (const [x, y] of [
      [r1 - 1, 2],
      [r1 - 0.5, -3],
    ] as const) {
      const here = flankPoint(g, 1, x, y)
      const there = flankPoint(g, -1, x, -y)
      near(there.radius, here.radius, 1e-12)
      near(there.chi, -here.chi, 1e-12)
    }
    const cutter = spaceCutter(pair)
    const R = pairProportions(pair).referenceRadiusWheel
    for (const y of [1, 3, 5]) near(toothWidth(cutter, -y, R), toothWidth(cutter, y, R), 1e-9)
  }
})
