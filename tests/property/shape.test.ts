import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { gearProblems } from '../../sim/gear/gear-problems.ts'
import { wheelMesh } from '../../sim/shape/wheel-mesh.ts'
import { wormMesh } from '../../sim/shape/worm-mesh.ts'
import { topology } from '../sim/shape/welded.ts'

const SEED = 20_261_125
/** Tangent of a lead angle of 30 degrees */
const STEEP = Math.tan(Math.PI / 6)
/** Widest helical wheel of use, in modules */
const WIDE = 20

const gearings: fc.Arbitrary<GearNumbers> = fc
  .record({
    profile: fc.constantFrom('ZA', 'ZN', 'ZI', 'ZK'),
    hand: fc.constantFrom('right', 'left'),
    wheelForm: fc.constantFrom('throated', 'helical'),
    depthRule: fc.constantFrom('axial', 'normal', 'mixed'),
    thinned: fc.constantFrom('worm', 'wheel'),
    wormStarts: fc.integer({ min: 1, max: 8 }),
    wheelTeeth: fc.integer({ min: 8, max: 120 }),
    axialModule: fc.constantFrom(0.5, 1, 1.25, 2, 4, 10),
    diameterQuotient: fc.double({ min: 5, max: 25, noNaN: true }),
    pressureAngle: fc.double({ min: 10, max: 30, noNaN: true }),
    friction: fc.constant(0.1),
    wheelModules: fc.double({ min: 2, max: 80, noNaN: true }),
    addendum: fc.double({ min: 0.5, max: 1.5, noNaN: true }),
    clearance: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
    boreModules: fc.double({ min: 0.5, max: 60, noNaN: true }),
    backlashModules: fc.oneof(
      fc.constant(0),
      fc.double({ min: 0, max: 0.2, noNaN: true }),
      fc.double({ min: 0.2, max: 5, noNaN: true }),
    ),
    discModules: fc.double({ min: 40, max: 400, noNaN: true }),
    centres: fc.record({
      kind: fc.constant('shift'),
      profileShift: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
    }),
  })
  .map(({ wheelModules, boreModules, discModules, backlashModules, ...rest }) => ({
    ...rest,
    wheelWidth: wheelModules * rest.axialModule,
    boreDiameter: boreModules * rest.axialModule,
    discDiameter: discModules * rest.axialModule,
    backlash: backlashModules * rest.axialModule,
  }))

/**
 * Part of the triangles that may be shaded from behind. Where the worm leaves no tooth a stub stands in, which
 * is shaded as the tooth that is not there; and few pieces shade roughly where the thread is steeper than any
 * handbook allows, or where the teeth of a wide helical wheel wind far round it.
 */
function mostInwardNormals(gearing: GearNumbers): number {
  const steep = gearing.wormStarts / gearing.diameterQuotient > STEEP
  const wide = gearing.wheelForm === 'helical' && gearing.wheelWidth > WIDE * gearing.axialModule
  if (wide || gearProblems(gearing).some(({ severity }) => severity === 'error')) return 1
  return steep ? 0.1 : 0.02
}

test(`500 random pairs, seed ${SEED}: worm and wheel are finite, closed, oriented and of bounded size`, () => {
  fc.assert(
    fc.property(gearings, fc.constantFrom('display', 'distant'), (gearing, detail) => {
      const worm = topology(wormMesh(gearing, detail))
      const wheel = topology(wheelMesh(gearing, detail))
      expect(worm).toMatchObject({ finite: true, faultyEdges: 0, euler: 2, pieces: 1 })
      expect(wheel).toMatchObject({ finite: true, faultyEdges: 0, euler: 0, pieces: 1 })
      expect(Math.min(worm.volume, wheel.volume)).toBeGreaterThan(0)
      const inward = Math.max(worm.inwardNormals, wheel.inwardNormals)
      expect(inward).toBeLessThanOrEqual(mostInwardNormals(gearing))
      expect(worm.triangles + 2 * wheel.triangles).toBeLessThan(detail === 'display' ? 60_000 : 20_000)
    }),
    { seed: SEED, numRuns: 500 },
  )
})

/** Fewer teeth make the same shapes of fewer triangles. */
const smallGearings = gearings.map((gearing) => ({ ...gearing, wheelTeeth: 8 + (gearing.wheelTeeth % 13) }))

test(`12 random pairs, seed ${SEED}: printed worm and wheel are closed, oriented and of one piece`, () => {
  fc.assert(
    fc.property(smallGearings, (gearing) => {
      const worm = topology(wormMesh(gearing, 'print'))
      const wheel = topology(wheelMesh(gearing, 'print'))
      expect(worm).toMatchObject({ finite: true, faultyEdges: 0, euler: 2, pieces: 1 })
      expect(wheel).toMatchObject({ finite: true, faultyEdges: 0, euler: 0, pieces: 1 })
    }),
    { seed: SEED, numRuns: 12 },
  )
})

test(`500 random pairs, seed ${SEED}: problems hold no NaN`, () => {
  fc.assert(
    fc.property(gearings, (gearing) => {
      for (const { message, path } of gearProblems(gearing)) {
        expect(message).not.toMatch(/NaN|Infinity|undefined/)
        expect(path).toMatch(/^gearing\.[\w.]+$/)
      }
    }),
    { seed: SEED, numRuns: 500 },
  )
})

const twice = (gearing: GearNumbers): GearNumbers => ({
  ...gearing,
  axialModule: 2 * gearing.axialModule,
  wheelWidth: 2 * gearing.wheelWidth,
  boreDiameter: 2 * gearing.boreDiameter,
  discDiameter: 2 * gearing.discDiameter,
  backlash: 2 * gearing.backlash,
})

test(`100 random pairs, seed ${SEED}: scaling every length scales the meshes and nothing else`, () => {
  fc.assert(
    fc.property(gearings, (gearing) => {
      const scaled = twice(gearing)
      for (const mesh of [wormMesh, wheelMesh]) {
        const small = mesh(gearing, 'distant')
        const large = mesh(scaled, 'distant')
        expect(large.indices.length).toBe(small.indices.length)
        const size = small.positions.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
        let worst = 0
        for (let i = 0; i < small.positions.length; i++) {
          worst = Math.max(worst, Math.abs(large.positions[i]! / 2 - small.positions[i]!))
        }
        expect(worst / size).toBeLessThan(1e-5)
      }
    }),
    { seed: SEED, numRuns: 100 },
  )
})
