/** What is saved for printing, read back by a reader that shares nothing with the writers. */
import { strFromU8, unzipSync } from 'fflate'
import loadManifold from 'manifold-3d'
import { describe, expect, test } from 'vitest'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { threadForm } from '../../../sim/gear/thread-profile.ts'
import { toothLimits } from '../../../sim/gear/tooth-limits.ts'
import { wheelBody, wormBody } from '../../../sim/shape/body.ts'
import { type Answer, answer } from '../../../web/models/answer.ts'
import { begin } from '../../../web/models/model-client.ts'
import {
  type MeshFormat,
  type PrintOrder,
  boreLimits,
  clearanceLimits,
  firstChanges,
  printGearing,
} from '../../../web/models/print-order.ts'
import { oneToTwenty, pairName, pairs } from '../../sim/gear/pairs.ts'
import { bootCleaner, demoMachines } from '../../support/machines.ts'
import { near, relativelyNear } from '../../support/near.ts'
import { type Solid, readBack, solidOf } from './read-back.ts'

const quiet = () => {}
const printed: GearNumbers = printGearing(oneToTwenty, { clearance: 0.2, bore: 6, thinned: 'worm' })
const order: PrintOrder = {
  machineName: 'Boot & <cleaner>',
  gearing: printed,
  what: 'set',
  fineness: 'display',
}

function saved(given: Partial<PrintOrder>, format: MeshFormat): Answer & { readonly bytes: Uint8Array } {
  const made = answer({ order: { ...order, ...given }, format }, quiet)
  return { ...made, bytes: made.file! }
}

const { Manifold, Mesh } = await loadManifold().then((wasm) => {
  wasm.setup()
  return wasm
})

/** Volume by the solid kernel, which refuses a mesh that is not one. */
function kernelVolume(positions: Float64Array, indices: Uint32Array): number {
  const solid = new Manifold(
    new Mesh({ numProp: 3, vertProperties: Float32Array.from(positions), triVerts: indices }),
  )
  expect(solid.status()).toBe('NoError')
  return solid.volume()
}

/**
 * The worm's cross-section is the same everywhere along the thread: core, and the thread's part 2h(r)/px of
 * each circle, thinner by the backlash; by Simpson's rule.
 */
function wormVolume(gearing: GearNumbers): number {
  const { axialPitch } = pairProportions(gearing)
  const { wormRoot, wormTip } = toothLimits(gearing)
  const { halfThickness } = threadForm(gearing)
  const { threadLength, shaftRadius, stubLength } = wormBody(gearing)
  const off = gearing.thinned === 'worm' ? gearing.backlash / 2 : 0
  const strips = 2000
  const step = (wormTip - wormRoot) / strips
  let section = Math.PI * wormRoot ** 2
  for (let i = 0; i <= strips; i++) {
    const r = wormRoot + i * step
    const weight = (i === 0 || i === strips ? 1 : i % 2 === 1 ? 4 : 2) * (step / 3)
    section += weight * 2 * Math.PI * r * ((2 * (halfThickness(r) - off)) / axialPitch)
  }
  return section * threadLength + 2 * stubLength * Math.PI * shaftRadius ** 2
}

const boxOf = ({ least, most }: Solid): number[] => most.map((high, axis) => high - least[axis]!)

describe.each(['stl', '3mf'] as const)('%s', (format) => {
  test.each(pairs.map((pair) => ({ name: pairName(pair), pair })))(
    'of the worm $name is closed and holds the analytic volume',
    ({ pair }) => {
      const gearing = printGearing(pair, { ...firstChanges(pair), thinned: 'worm' })
      const { bytes, measure } = saved({ gearing, what: 'worm' }, format)
      const { bodies, warnings } = readBack(bytes, format)
      const solid = solidOf(bodies[0]!)
      expect({
        warnings,
        bodies: bodies.length,
        pieces: solid.pieces,
        faultyEdges: solid.faultyEdges,
      }).toEqual({
        warnings: 0,
        bodies: 1,
        pieces: 1,
        faultyEdges: 0,
      })
      relativelyNear(solid.volume, wormVolume(gearing), 0.005)
      relativelyNear(solid.volume, measure.volume, 1e-5)
      relativelyNear(kernelVolume(bodies[0]!.positions, bodies[0]!.indices), solid.volume, 1e-5)
    },
  )

  test.each(pairs.map((pair) => ({ name: pairName(pair), pair })))(
    'of the wheel $name is closed and valid to the reader itself',
    ({ pair }) => {
      const { bytes, measure } = saved({ gearing: pair, what: 'wheel' }, format)
      const [body] = readBack(bytes, format).bodies
      const solid = solidOf(body!)
      expect(body).toMatchObject({ manifoldAndOriented: true, valid: true })
      expect([solid.pieces, solid.faultyEdges]).toEqual([1, 0])
      relativelyNear(solid.volume, measure.volume, 1e-5)
      relativelyNear(kernelVolume(body!.positions, body!.indices), solid.volume, 1e-5)
    },
  )

  test('has millimetres for its unit of length', () => {
    const worm = solidOf(readBack(saved({ what: 'worm' }, format).bytes, format).bodies[0]!)
    const { threadLength, stubLength } = wormBody(printed)
    const across = 2 * pairProportions(printed).tipRadiusWorm
    near(boxOf(worm)[2]!, threadLength + 2 * stubLength, 1e-4)
    near(boxOf(worm)[0]!, across, 0.001 * across)
    const wheel = solidOf(readBack(saved({ what: 'wheel' }, format).bytes, format).bodies[0]!)
    near(boxOf(wheel)[2]!, wheelBody(printed).hubLength, 1e-4)
    const outside = 2 * pairProportions(printed).outsideRadiusWheel
    expect(boxOf(wheel)[0]).toBeLessThanOrEqual(outside)
    expect(boxOf(wheel)[0]).toBeGreaterThan(outside * Math.cos(Math.PI / printed.wheelTeeth))
  })
})

test('the set in one STL is three bodies, apart and on the bed', () => {
  const { bytes, measure } = saved({}, 'stl')
  const solid = solidOf(readBack(bytes, 'stl').bodies[0]!)
  expect([solid.pieces, solid.faultyEdges]).toEqual([3, 0])
  expect(solid.least).toEqual([0, 0, 0])
  boxOf(solid).forEach((size, axis) => near(size, measure.size[axis]!, 1e-4))
  relativelyNear(solid.volume, measure.volume, 1e-5)
})

test('the set as 3MF is a worm and one wheel that is wanted twice, apart and on the bed', () => {
  const { bytes } = saved({}, '3mf')
  const { bodies, items, millimetres, warnings } = readBack(bytes, '3mf')
  expect([warnings, millimetres]).toEqual([0, true])
  expect(bodies.map(({ name }) => name)).toEqual(['Worm', 'Wheel'])
  expect(items.map(({ body }) => body)).toEqual([0, 1, 1])
  const spans = items.map(({ body, at }) => {
    const { least, most } = solidOf(bodies[body]!)
    expect([least[0]! + at[0], least[2]! + at[2]]).toEqual([at[0], 0])
    return [at[0] + least[0]!, at[0] + most[0]!] as const
  })
  for (let i = 1; i < spans.length; i++) near(spans[i]![0] - spans[i - 1]![1], 5, 1e-3)
})

test('a fine model is closed and comes within a twentieth of a percent of the analytic worm', () => {
  const { bytes, measure } = saved({ what: 'worm', fineness: 'print' }, '3mf')
  const solid = solidOf(readBack(bytes, '3mf').bodies[0]!)
  expect([solid.pieces, solid.faultyEdges]).toEqual([1, 0])
  relativelyNear(solid.volume, wormVolume(printed), 0.0005)
  expect(measure.triangles).toBeGreaterThan(100_000)
})

test('clearance is taken off the part that is to be thinned, and nothing else changes', () => {
  const volume = (what: 'worm' | 'wheel', thinned: 'worm' | 'wheel', clearance: number) => {
    const gearing = printGearing(oneToTwenty, { clearance, bore: 6, thinned })
    return answer({ order: { ...order, gearing, what }, format: null }, quiet).measure.volume
  }
  expect(volume('worm', 'worm', 0.3)).toBeLessThan(volume('worm', 'worm', 0))
  expect(volume('wheel', 'wheel', 0.3)).toBeLessThan(volume('wheel', 'wheel', 0))
  near(volume('worm', 'wheel', 0.3), volume('worm', 'wheel', 0), 1e-6)
  near(volume('wheel', 'worm', 0.3), volume('wheel', 'worm', 0), 1e-6)
})

test('a larger bore takes away its ring', () => {
  const volume = (bore: number) =>
    answer(
      {
        order: { ...order, what: 'wheel', fineness: 'print', gearing: { ...printed, boreDiameter: bore } },
        format: null,
      },
      quiet,
    ).measure.volume
  expect(volume(10)).not.toBe(volume(8))
  expect(volume(8)).toBeGreaterThan(0)
})

test('the heading of an STL says the unit and does not begin like a text file', () => {
  const { bytes } = saved({ machineName: 'Kürbis solid' }, 'stl')
  const heading = strFromU8(bytes.subarray(0, 80), true)
  expect(heading.replaceAll('\0', '')).toBe('Counterturn, unit: mm, K?rbis solid')
  expect(bytes.length).toBe(84 + 50 * new DataView(bytes.buffer).getUint32(80, true))
})

test('the 3MF package holds its parts, the unit, and any name as text', () => {
  const files = unzipSync(saved({ what: 'worm' }, '3mf').bytes)
  expect(Object.keys(files)).toEqual(['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model'])
  const model = strFromU8(files['3D/3dmodel.model']!)
  expect(model).toContain('<model unit="millimeter"')
  expect(model).toContain('<metadata name="Title">Boot &amp; &lt;cleaner&gt;</metadata>')
})

test('progress is told in words', () => {
  const told: string[] = []
  const { measure } = answer({ order, format: 'stl' }, (words) => told.push(words))
  const grouped = String(measure.triangles).replace(/(?=\d{3}$)/, '\u2009')
  expect(told).toEqual(['Cutting the worm', 'Cutting the wheel', `Writing ${grouped} triangles`])
})

test('an order is done on this thread where there are no workers, and can be given up', async () => {
  expect(typeof Worker).toBe('undefined')
  const work = begin({ order: { ...order, what: 'worm' }, format: 'stl' }, quiet)
  expect((await work.done)?.file?.length).toBeGreaterThan(84)
  const second = begin({ order, format: '3mf' }, quiet)
  second.cancel()
  expect(await second.done).toBe(null)
})

test('a print begins with 0.2 mm, or with the backlash of the machine where that is more', () => {
  expect(firstChanges({ ...oneToTwenty, backlash: 0.08 }).clearance).toBe(0.2)
  expect(firstChanges({ ...oneToTwenty, backlash: 0.4 }).clearance).toBe(0.4)
  expect(clearanceLimits({ ...oneToTwenty, backlash: 0.08 }).min).toBe(0.08)
})

test.each(demoMachines.map((machine) => ({ name: machine.name, machine })))(
  '$name prints with its own bore within the limits',
  ({ machine: { gearing } }) => {
    const { min, max } = boreLimits(gearing)
    const { bore } = firstChanges(gearing)
    expect(bore).toBe(gearing.boreDiameter)
    expect(bore >= min && bore <= max).toBe(true)
    expect(wheelBody({ ...gearing, boreDiameter: max }).boreRadius).toBeCloseTo(max / 2, 9)
  },
)

test('the machine itself is left as it is', () => {
  const before = structuredClone(bootCleaner.gearing)
  printGearing(bootCleaner.gearing, { clearance: 0.3, bore: 7, thinned: 'wheel' })
  expect(bootCleaner.gearing).toEqual(before)
})
