import { expect, test } from 'vitest'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { weldedMesh } from '../../../sim/shape/welded-mesh.ts'
import { wheelMesh } from '../../../sim/shape/wheel-mesh.ts'
import { wormMesh } from '../../../sim/shape/worm-mesh.ts'
import { near } from '../../support/near.ts'
import { oneToTwenty, pairName } from '../gear/pairs.ts'
import { cutPiece, solidKernel, startCutting } from './cut-by-worm.ts'
import { exactVolume, leftOver, middleVolume } from './cut-deviation.ts'
import { topology } from './welded.ts'

/**
 * Metal left by so many steps a pitch [mm], from another program that cut the same wheel with the same kernel
 * from steps that started elsewhere: one start on 20 teeth, ZA, module 2.
 */
const EXPECTED = [
  { steps: 2, flank: 0.0368, most: 0.22 },
  { steps: 4, flank: 0.0105, most: 0.098 },
  { steps: 8, flank: 0.0029, most: 0.047 },
] as const
const AGREEMENT = 0.25
const MICROMETRE = 0.001
/** [ms]; about 10 s where nothing else runs */
const PATIENCE = 180_000
/** Of a volume: what is asked of two levels of detail, and of a volume against its integral. */
const ROUGHLY = 0.005
const CLOSELY = 0.0005

/** Where three values go on to that fall by the same factor each time. */
const limitOf = (a: number, b: number, c: number): number => c - (c - b) ** 2 / (c - b - (b - a))

test(
  'a worm stepped through the blank comes down to the closed form as its steps grow finer, and never below',
  async () => {
    const cutting = await startCutting(oneToTwenty)
    const exact = exactVolume(cutting)
    const found = EXPECTED.map(({ steps }) => {
      const solid = cutPiece(cutting, 3, steps)
      const cut = { steps, ...leftOver(cutting, solid), excess: middleVolume(cutting, solid) / exact - 1 }
      expect(solid.status()).toBe('NoError')
      solid.delete()
      return cut
    })
    console.log('steps a pitch, metal left on flank, with fillet, least [um], volume too much')
    for (const { steps, flank, most, least, excess } of found) {
      const lengths = [flank, most, least].map((length) => (1000 * length).toFixed(2).padStart(7))
      console.log(`  ${steps} ${lengths.join(' ')}   ${(100 * excess).toFixed(3)} %`)
    }
    for (const [n, { flank, most, least, excess }] of found.entries()) {
      expect(least).toBeGreaterThan(-MICROMETRE)
      expect(Math.abs(flank / EXPECTED[n]!.flank - 1)).toBeLessThan(AGREEMENT)
      expect(Math.abs(most / EXPECTED[n]!.most - 1)).toBeLessThan(AGREEMENT)
      expect(excess).toBeGreaterThan(0)
      const before = found[n - 1]
      if (!before) continue
      expect(flank).toBeLessThan(before.flank / 2)
      expect(most).toBeLessThan(before.most / 1.5)
      expect(excess).toBeLessThan(before.excess / 1.8)
    }
    const [two, four, eight] = found.map(({ excess }) => excess)
    const limit = limitOf(two!, four!, eight!)
    console.log(`  volume that the steps go on to: ${(100 * limit).toFixed(3)} % too much`)
    expect(eight).toBeLessThan(ROUGHLY)
    expect(Math.abs(limit)).toBeLessThan(CLOSELY)
  },
  PATIENCE,
)

/** Both forms, both hands, with and without backlash. */
const printed: readonly GearNumbers[] = [
  oneToTwenty,
  { ...oneToTwenty, hand: 'left', profile: 'ZI', wheelForm: 'helical', backlash: 0.2 },
  { ...oneToTwenty, hand: 'left', profile: 'ZN', wormStarts: 3, wheelTeeth: 31, backlash: 0.2 },
]

test.each(printed.map((pair) => [`${pair.wheelForm} ${pairName(pair)}`, pair] as const))(
  '%s: the kernel takes printed worm and wheel for sound solids, a ball and a ring',
  async (_, pair) => {
    const { Manifold: Solid, Mesh } = await solidKernel()
    for (const [mesh, genus] of [[wormMesh, 0] as const, [wheelMesh, 1] as const]) {
      const drawn = mesh(pair, 'print')
      const { positions, indices } = weldedMesh(drawn)
      const solid = new Solid(new Mesh({ numProp: 3, vertProperties: positions, triVerts: indices }))
      expect(solid.status()).toBe('NoError')
      expect(solid.genus()).toBe(genus)
      near(solid.volume() / topology(drawn).volume, 1, 1e-6)
      solid.delete()
    }
  },
)
