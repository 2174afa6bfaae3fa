import { describe, expect, test } from 'vitest'
import { gearDataSheet, type SheetRow } from '../../../sim/gear/data-sheet.ts'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { flankPoint, wheelGeneration } from '../../../sim/gear/wheel-flank.ts'
import { metricPair } from '../../published/gear-pair.ts'
import { near } from '../../support/near.ts'
import { oneToTwenty, pairName, pairs } from './pairs.ts'

const rowOf = (gearing: GearNumbers, symbol: string): SheetRow => {
  const rows = gearDataSheet(gearing).flatMap((table) => table.rows)
  const found = rows.find((row) => row.symbol === symbol)
  if (found === undefined) throw new Error(`no row ${symbol}`)
  return found
}
const valueOf = (gearing: GearNumbers, symbol: string): number => Number(rowOf(gearing, symbol).value)

const METRIC = 'SDP/SI, Elements of Metric Gear Technology, Table 9-3 (same numbers in KHK, from memory)'
const NORMAL = 'SDP/SI, Elements of Metric Gear Technology, Table 9-4 (same numbers in KHK, from memory)'
/** Its last digits are rounded on the way. */
const CHORDS = 'SDP/SI, Elements of Metric Gear Technology, chordal thickness of worm and wheel, from memory'
const JIANG = 'W. Jiang, Analysis and Design of Machine Elements (Wiley, 2019), Table 9.1, p. 238'
const JINDAL = 'U. C. Jindal, Machine Design (2010), Example 28-1, p. 726'
const MOTT = 'R. L. Mott, Machine Elements in Mechanical Design, 4th ed. (2004), Example 8-7, p. 343, in inch'

/** The pair of 3 mm normal module on 67 mm: its axial module is 3/cos of its lead angle of 7.83748 deg. */
const leadAngle = Math.asin((3 * 2) / 44)
const normalPair: GearNumbers = {
  ...metricPair,
  depthRule: 'normal',
  axialModule: 3 / Math.cos(leadAngle),
  diameterQuotient: (44 * Math.cos(leadAngle)) / 3,
  centres: { kind: 'distance', centreDistance: 67 },
}
const chordPair: GearNumbers = {
  ...metricPair,
  diameterQuotient: 38 / 3,
  centres: { kind: 'distance', centreDistance: 65 },
}
const inchPair: GearNumbers = {
  ...metricPair,
  wormStarts: 3,
  wheelTeeth: 52,
  axialModule: 1 / 6,
  diameterQuotient: 12,
}
const jindalPair: GearNumbers = { ...oneToTwenty, wheelTeeth: 30, axialModule: 5 }
const jiangPair = (m: number, d1: number, z2: number, x2: number): GearNumbers => ({
  ...oneToTwenty,
  axialModule: m,
  diameterQuotient: d1 / m,
  wheelTeeth: z2,
  centres: { kind: 'shift', profileShift: x2 },
})

describe('published numbers', () => {
  test.each([
    { source: METRIC, pair: metricPair, symbol: 'd_2', expected: 90, tolerance: 0.0005 },
    { source: METRIC, pair: metricPair, symbol: 'γ', expected: 7.76517, tolerance: 5e-6 },
    { source: METRIC, pair: metricPair, symbol: 'a', expected: 67, tolerance: 0.0005 },
    { source: METRIC, pair: metricPair, symbol: 'h_a1', expected: 3, tolerance: 0.0005 },
    { source: METRIC, pair: metricPair, symbol: 'h_1', expected: 6.75, tolerance: 0.0005 },
    { source: METRIC, pair: metricPair, symbol: 'h_2', expected: 6.75, tolerance: 0.0005 },
    { source: METRIC, pair: metricPair, symbol: 'd_a1', expected: 50, tolerance: 0.0005 },
    { source: METRIC, pair: metricPair, symbol: 'd_a2', expected: 96, tolerance: 0.0005 },
    { source: METRIC, pair: metricPair, symbol: 'd_e2', expected: 99, tolerance: 0.0005 },
    { source: METRIC, pair: metricPair, symbol: 'r_g2', expected: 19, tolerance: 0.0005 },
    { source: METRIC, pair: metricPair, symbol: 'd_f1', expected: 36.5, tolerance: 0.0005 },
    { source: METRIC, pair: metricPair, symbol: 'd_f2', expected: 82.5, tolerance: 0.0005 },
    { source: METRIC, pair: metricPair, symbol: 'm_n', expected: 2.97249, tolerance: 5e-6 },
    { source: METRIC, pair: metricPair, symbol: 'p_z', expected: 18.84956, tolerance: 5e-6 },
    { source: METRIC, pair: metricPair, symbol: 'α_x', expected: 20.1702, tolerance: 5e-5 },
    { source: NORMAL, pair: normalPair, symbol: 'γ', expected: 7.83748, tolerance: 5e-6 },
    { source: NORMAL, pair: normalPair, symbol: 'd_2', expected: 90.8486, tolerance: 5e-5 },
    { source: NORMAL, pair: normalPair, symbol: 'x_2', expected: -0.1414, tolerance: 5e-5 },
    { source: NORMAL, pair: normalPair, symbol: 'h_a2', expected: 2.5758, tolerance: 0.0002 },
    { source: NORMAL, pair: normalPair, symbol: 'd_a2', expected: 96, tolerance: 0.0005 },
    { source: NORMAL, pair: normalPair, symbol: 'd_f1', expected: 36.5, tolerance: 0.0005 },
    { source: NORMAL, pair: normalPair, symbol: 'd_f2', expected: 82.5, tolerance: 0.0005 },
    { source: CHORDS, pair: chordPair, symbol: 'γ', expected: 8.97263, tolerance: 5e-6 },
    { source: CHORDS, pair: chordPair, symbol: 'α_x', expected: 20.2278, tolerance: 5e-5 },
    { source: CHORDS, pair: chordPair, symbol: 's_x1', expected: 4.71239, tolerance: 5e-6 },
    { source: CHORDS, pair: chordPair, symbol: 's_n1', expected: 4.6547, tolerance: 5e-5 },
    { source: CHORDS, pair: chordPair, symbol: 'h_n1', expected: 3.0035, tolerance: 5e-5 },
    { source: CHORDS, pair: chordPair, symbol: 's_t2', expected: 5.44934, tolerance: 1e-5 },
    { source: CHORDS, pair: chordPair, symbol: 's_n2', expected: 5.3796, tolerance: 0.0001 },
    { source: CHORDS, pair: chordPair, symbol: 'h_n2', expected: 4.0785, tolerance: 5e-5 },
    { source: JINDAL, pair: jindalPair, symbol: 'd_1', expected: 50, tolerance: 0.5 },
    { source: JINDAL, pair: jindalPair, symbol: 'd_2', expected: 150, tolerance: 0.5 },
    { source: JINDAL, pair: jindalPair, symbol: 'a', expected: 100, tolerance: 0.5 },
    { source: JINDAL, pair: jindalPair, symbol: 'u', expected: 30, tolerance: 0.5 },
    { source: MOTT, pair: inchPair, symbol: 'p_x', expected: 0.5236, tolerance: 5e-5 },
    { source: MOTT, pair: inchPair, symbol: 'p_z', expected: 1.5708, tolerance: 5e-5 },
    { source: MOTT, pair: inchPair, symbol: 'γ', expected: 14.04, tolerance: 0.005 },
    { source: MOTT, pair: inchPair, symbol: 'd_2', expected: 8.667, tolerance: 0.0005 },
    { source: MOTT, pair: inchPair, symbol: 'a', expected: 5.333, tolerance: 0.0006 },
    { source: MOTT, pair: inchPair, symbol: 'u', expected: 17.333, tolerance: 0.0005 },
    { source: JIANG, pair: jiangPair(1.25, 22.4, 62, 0.04), symbol: 'a', expected: 50, tolerance: 1e-6 },
    { source: JIANG, pair: jiangPair(1.6, 20, 51, -0.5), symbol: 'a', expected: 50, tolerance: 1e-6 },
    { source: JIANG, pair: jiangPair(2, 22.4, 39, -0.1), symbol: 'a', expected: 50, tolerance: 1e-6 },
    { source: JIANG, pair: jiangPair(2.5, 28, 29, -0.1), symbol: 'a', expected: 50, tolerance: 1e-6 },
    { source: JIANG, pair: jiangPair(2, 35.5, 82, 0.125), symbol: 'a', expected: 100, tolerance: 1e-6 },
    { source: JIANG, pair: jiangPair(2.5, 28, 70, -0.6), symbol: 'a', expected: 100, tolerance: 1e-6 },
    { source: JIANG, pair: jiangPair(2.5, 45, 62, 0), symbol: 'a', expected: 100, tolerance: 1e-6 },
  ])('$symbol is $expected: $source', ({ pair, symbol, expected, tolerance }) =>
    near(valueOf(pair, symbol), expected, tolerance),
  )

  test('base cylinder of an involute helicoid: ISO/TR 10828 relation, evaluated by two routes', () => {
    const pair: GearNumbers = { ...metricPair, profile: 'ZI' }
    near(valueOf(pair, 'γ_b'), 21.3969, 5e-5)
    near(valueOf(pair, 'd_b1'), 2 * 7.6563, 1e-4)
  })

  test('contact ratio in the mid-plane is that of rack and wheel: 1.817 at 30 teeth and 20 degrees', () => {
    // rack and pinion formula of any gear text, evaluated for ax = 20 deg
    const axial = { ...metricPair, diameterQuotient: 1e4, wheelWidth: 1 }
    near(valueOf(axial, 'ε_m'), 1.817, 0.0005)
  })

  test('play of the wheel is 3.82 minutes of arc at 0.05 mm on 90 mm: by its definition', () =>
    near(60 * valueOf({ ...metricPair, backlash: 0.05 }, 'φ_2'), 3.82, 0.005))
})

describe('size over balls', () => {
  /**
   * Machinery's Handbook, measuring screw threads by the three-wire method, from memory:
   * M = E - T cot A + W (1 + cosec A), T half the pitch: exact for rings, so the more so the smaller the lead.
   */
  test('comes to the three-wire formula where the lead is small', () => {
    const fine: GearNumbers = { ...oneToTwenty, diameterQuotient: 2000 }
    const d1 = valueOf(fine, 'd_1')
    const W = valueOf(fine, 'D_M')
    const A = (20 * Math.PI) / 180
    const T = valueOf(fine, 'p_x') / 2
    near(valueOf(fine, 'M_1'), d1 - T / Math.tan(A) + W * (1 + 1 / Math.sin(A)), 0.001)
  })

  /**
   * A worm ZI is a helical gear of z1 teeth: inv alphaM = inv alphat + DM/(z mn cos alphan) - (pi/2 + jx/m)/z, and
   * M = d cos alphat/cos alphaM + DM. Any text on measuring helical gears over balls, from memory.
   */
  test.each([
    [1, 10, 20, 0],
    [2, 10, 20, 0.1],
    [4, 9, 22, 0],
    [3, 14, 25, 0.2],
  ])('%i starts, q %d, %d deg, backlash %d mm: that of a helical gear', (z, q, angle, backlash) => {
    const shape = { wormStarts: z, diameterQuotient: q, pressureAngle: angle, wheelTeeth: 41 }
    const pair: GearNumbers = { ...oneToTwenty, ...shape, profile: 'ZI', backlash }
    const involute = (alpha: number) => Math.tan(alpha) - alpha
    const normal = (angle * Math.PI) / 180
    const lead = Math.atan(z / q)
    const transverse = Math.atan(Math.tan(normal) / Math.sin(lead))
    const D = valueOf(pair, 'D_M')
    const m = pair.axialModule
    const wanted =
      involute(transverse) +
      D / (z * m * Math.cos(lead) * Math.cos(normal)) -
      (Math.PI / 2 + backlash / m) / z
    let [low, high] = [0, Math.PI / 2]
    for (let i = 0; i < 80; i++) {
      const middle = (low + high) / 2
      if (involute(middle) < wanted) low = middle
      else high = middle
    }
    near(valueOf(pair, 'M_1'), (q * m * Math.cos(transverse)) / Math.cos(low) + D, 1e-9)
  })

  test.each(pairs.map((pair) => ({ name: pairName(pair), pair: { ...pair, backlash: 0.1 } })))(
    'ball and pin of $name touch the flank and nowhere enter it',
    ({ pair }) => {
      const radius = valueOf(pair, 'D_M') / 2
      const gaps = gapsInSpace(pair, valueOf(pair, 'M_1') / 2 - radius)
      for (const gap of [gaps.ball - radius, gaps.pin - radius]) {
        // the search steps 0.008 mm along a surface that curves away from ball and pin
        expect(gap).toBeGreaterThan(-1e-4)
        expect(gap).toBeLessThan(1e-4)
      }
    },
  )
})

/**
 * Least distances of the flank from a point in mid space, and from the straight line through it that is
 * square to the nearest way to the flank: by plain search over the surface.
 */
function gapsInSpace(pair: GearNumbers, centre: number): { ball: number; pin: number } {
  const { form } = wheelGeneration(pair)
  const p = valueOf(pair, 'p_z') / (2 * Math.PI)
  const px = valueOf(pair, 'p_x')
  const [root, tip] = [valueOf(pair, 'd_f1') / 2, valueOf(pair, 'd_a1') / 2]
  const points: [number, number, number][] = []
  for (let i = 0; i <= 600; i++) {
    const r = root + ((tip - root) * i) / 600
    const s = px / 2 - form.halfThickness(r) + pair.backlash / 2
    for (let j = -400; j <= 400; j++) {
      const theta = j / 1400
      points.push([r * Math.cos(theta) - centre, r * Math.sin(theta), p * theta + s])
    }
  }
  const sizes = points.map(([x, y, z]) => Math.sqrt(x * x + y * y + z * z))
  const ball = sizes.reduce((a, b) => Math.min(a, b))
  const [, ny, nz] = points[sizes.indexOf(ball)]!
  const across = Math.hypot(ny, nz)
  const pin = points.reduce((least, [, y, z], i) => {
    const along = (z * ny - y * nz) / across
    return Math.min(least, Math.sqrt(sizes[i]! ** 2 - along * along))
  }, Infinity)
  return { ball, pin }
}

describe('thickness of the tooth', () => {
  test.each(pairs.map((pair) => ({ name: pairName(pair), pair })))(
    'is what the exact flanks of $name leave on the reference circle',
    ({ pair }) => {
      const generation = wheelGeneration(pair)
      const x = generation.centreDistance - generation.wheelRadius
      const above = flankPoint(generation, 1, x, 0)
      const below = flankPoint(generation, -1, x, 0)
      near(above.radius, valueOf(pair, 'd_2') / 2, 1e-9)
      const space = (above.chi - below.chi) * above.radius
      near(valueOf(pair, 's_t2'), valueOf(pair, 'p_x') - space, 1e-9)
    },
  )

  test.each(['worm', 'wheel'] as const)('backlash comes off the %s, and the gap is the same', (thinned) => {
    const pair: GearNumbers = { ...oneToTwenty, thinned, backlash: 0.2 }
    near(valueOf(pair, 's_x1') + valueOf(pair, 's_t2'), valueOf(pair, 'p_x') - 0.2, 1e-9)
    near(valueOf(pair, thinned === 'worm' ? 's_t2' : 's_x1'), valueOf(pair, 'p_x') / 2, 1e-9)
  })
})

test('a helical wheel has no throat', () => {
  const symbols = gearDataSheet({ ...oneToTwenty, profile: 'ZI', wheelForm: 'helical' }).flatMap((table) =>
    table.rows.map((row) => row.symbol),
  )
  expect(symbols).not.toContain('r_g2')
  expect(symbols).not.toContain('d_e2')
  expect(symbols).toContain('d_a2')
})
