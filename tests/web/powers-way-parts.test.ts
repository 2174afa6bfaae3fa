import type { BufferGeometry } from 'three'
import { describe, expect, test } from 'vitest'
import type { Machine } from '../../sim/machine/machine.ts'
import { standsIn } from '../../sim/pose/electric-layout.ts'
import { machineLayout } from '../../sim/pose/layout.ts'
import { partsOf } from '../../sim/pose/parts.ts'
import { disposeElectric, electricBodies } from '../../web/scene/electric/electric-bodies.ts'
import { rounded } from '../../web/scene/electric/tube.ts'
import { bootCleaner, cordWinder, ventOpener } from '../support/machines.ts'
import { near } from '../support/near.ts'

const smoothed: Machine = {
  ...bootCleaner,
  name: 'Smoothed boot cleaner',
  rectifier: { diodeDrop: 0.8, capacitance: 2200, bleedResistance: 10 },
}
const halfWave: Machine = {
  ...cordWinder,
  name: 'Half-wave winder',
  control: { kind: 'half-wave', diodeDrop: 0.9, freewheel: 'none', steps: [{ waves: 1 }, { waves: 2 }] },
}
const machines = [bootCleaner, ventOpener, cordWinder, smoothed, halfWave]

/** Most triangles that the electrical parts of one machine may add to a picture in full detail; our choice. */
const MOST_TRIANGLES = 8000

const triangles = (geometry: BufferGeometry): number => geometry.index!.count / 3

/** Triangles whose corners run the other way round than their normals say. */
function insideOut(geometry: BufferGeometry): number {
  const [p, n] = [geometry.getAttribute('position'), geometry.getAttribute('normal')]
  const index = geometry.index!
  let wrong = 0
  for (let at = 0; at < index.count; at += 3) {
    const [a, b, c] = [index.getX(at), index.getX(at + 1), index.getX(at + 2)]
    const u = [p.getX(b) - p.getX(a), p.getY(b) - p.getY(a), p.getZ(b) - p.getZ(a)] as const
    const v = [p.getX(c) - p.getX(a), p.getY(c) - p.getY(a), p.getZ(c) - p.getZ(a)] as const
    const face = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const
    const dot = face[0] * n.getX(a) + face[1] * n.getY(a) + face[2] * n.getZ(a)
    if (dot < -1e-6) wrong++
  }
  return wrong
}

describe.each(machines.map((machine) => [machine.name, machine] as const))(
  'electrical parts of the %s in the picture',
  (_, machine) => {
    const layout = machineLayout(machine)
    const bodies = electricBodies(machine, layout, 'high')
    const extras = [bodies.socket, bodies.knob?.geometry ?? null, ...bodies.leads.map(({ light }) => light)]
    const geometries = [...bodies.solids.values(), ...extras.filter((each) => each !== null)]

    test('are all there, and nothing else is', () => {
      const chain = ['plug', 'battery', 'transformer', 'rectifier', 'capacitor', 'setting', 'leads']
      const listed = partsOf(machine)
        .map(({ part }) => part)
        .filter((part) => chain.includes(part))
      expect([...bodies.solids.keys()].sort()).toEqual([...listed].sort())
    })

    test('show their outsides', () => {
      for (const geometry of geometries) expect(insideOut(geometry)).toBe(0)
    })

    test('keep to the room they were given', () => {
      for (const { part, stand } of standsIn(layout.electric)) {
        const solid = bodies.solids.get(part)!
        solid.computeBoundingBox()
        const { min, max } = solid.boundingBox!
        // Feet and labels stand out by a little.
        const slack = 0.04 * stand.width
        expect(min.x).toBeGreaterThan(stand.x - stand.width / 2 - slack)
        expect(max.x).toBeLessThan(stand.x + stand.width / 2 + slack)
        expect(min.z).toBeGreaterThan(stand.z - stand.length / 2 - slack)
        expect(max.z).toBeLessThan(stand.z + stand.length / 2 + slack)
        expect(max.y).toBeLessThan(layout.case.bottom + 1.08 * stand.height)
      }
    })

    test('cost few triangles', () => {
      const shown = [...bodies.solids.values(), bodies.socket, bodies.knob?.geometry]
      const count = shown.reduce((sum, each) => sum + (each ? triangles(each) : 0), 0)
      expect(count).toBeLessThan(MOST_TRIANGLES)
    })

    test('have a knob with a place for each step', () => {
      const { angles } = bodies.knob!
      expect(angles.length).toBe(machine.control.steps.length)
      for (let n = 1; n < angles.length; n++) expect(angles[n]).toBeGreaterThan(angles[n - 1]!)
      expect(angles.at(-1)! - angles[0]!).toBeLessThan(2 * Math.PI)
    })

    test('can be let go', () => {
      let gone = 0
      const again = electricBodies(machine, layout, 'low')
      for (const geometry of again.solids.values()) geometry.addEventListener('dispose', () => gone++)
      disposeElectric(again)
      expect(gone).toBe(again.solids.size)
    })
  },
)

test('a rounded line begins and ends where it did, and leaves its corner', () => {
  const line = rounded(
    [
      [0, 0, 0],
      [10, 0, 0],
      [10, 0, 10],
    ],
    3,
  )
  expect(line[0]).toEqual([0, 0, 0])
  expect(line.at(-1)).toEqual([10, 0, 10])
  const nearest = Math.min(...line.map(([x, , z]) => Math.hypot(x - 10, z)))
  // A parabola with its ends 3 before and after the corner passes it at half of half their distance.
  near(nearest, (3 * Math.SQRT2) / 4, 0.2)
  expect(nearest).toBeGreaterThan(0.9)
})
