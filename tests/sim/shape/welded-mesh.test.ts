import { expect, test } from 'vitest'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { weldedMesh } from '../../../sim/shape/welded-mesh.ts'
import { wheelMesh } from '../../../sim/shape/wheel-mesh.ts'
import { wormMesh } from '../../../sim/shape/worm-mesh.ts'
import { oneToTwenty, pairName, pairs } from '../gear/pairs.ts'
import { topology, unpairedEdges } from './welded.ts'

/** Edges by vertex number: those without exactly one partner the other way, and the surface's genus. */
function edges(indices: Uint32Array, vertices: number): { unpaired: number; genus: number } {
  const next = (t: number) => indices[t % 3 === 2 ? t - 2 : t + 1]!
  const forward = Float64Array.from(indices, (from, t) => from * vertices + next(t)).sort()
  const backward = Float64Array.from(indices, (from, t) => next(t) * vertices + from).sort()
  const euler = vertices - indices.length / 2 + indices.length / 3
  return { unpaired: unpairedEdges(forward, backward), genus: 1 - euler / 2 }
}

const forms: readonly GearNumbers[] = pairs.flatMap((pair) => [
  pair,
  { ...pair, profile: 'ZI', wheelForm: 'helical', backlash: 0.2 },
])

test.each(forms.map((pair) => [`${pair.wheelForm} ${pairName(pair)}`, pair] as const))(
  '%s: welded worm is a ball, welded wheel a ring, each edge once each way by number alone',
  (_, pair) => {
    for (const [mesh, genus] of [[wormMesh, 0] as const, [wheelMesh, 1] as const]) {
      const drawn = mesh(pair, 'print')
      const welded = weldedMesh(drawn)
      const vertices = welded.positions.length / 3
      expect(edges(welded.indices, vertices)).toEqual({ unpaired: 0, genus })
      expect(vertices).toBe(new Set(welded.indices).size)
      expect(topology({ ...welded, normals: welded.positions }).volume).toBe(topology(drawn).volume)
    }
  },
)

test('a print of one start and 20 teeth has no more triangles than the level of detail promises', () => {
  const worm = weldedMesh(wormMesh(oneToTwenty, 'print')).indices.length / 3
  const wheel = weldedMesh(wheelMesh(oneToTwenty, 'print')).indices.length / 3
  console.log(`print: worm ${worm}, wheel ${wheel}, together ${worm + 2 * wheel} triangles`)
  expect(wheel).toBe(166_240)
  expect(worm + 2 * wheel).toBeLessThan(481_000)
})
