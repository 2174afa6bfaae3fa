import { describe, expect, test } from 'vitest'
import { gearDataSheet } from '../../../sim/gear/data-sheet.ts'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { pairProportions } from '../../../sim/gear/proportions.ts'
import { wormMesh } from '../../../sim/shape/worm-mesh.ts'
import { fileDrawing, sheetDrawing } from '../../../web/models/drawing.ts'
import { type Flat, areaInside, hatching, linesInside, stretch } from '../../../web/models/flat.ts'
import { svgFile } from '../../../web/models/marks.ts'
import { rowText } from '../../../web/models/row-text.ts'
import { wheelTeeth } from '../../../web/models/wheel-outline.ts'
import { axialEdge, wormShape, wormSide } from '../../../web/models/worm-outline.ts'
import { oneToTwenty, pairName, pairs } from '../../sim/gear/pairs.ts'
import { demoMachines } from '../../support/machines.ts'
import { near } from '../../support/near.ts'

const square: readonly Flat[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
]
const areaOf = (area: readonly Flat[]): number =>
  area.reduce((sum, [u, v], i) => sum + area.at(i - 1)![0] * v - u * area.at(i - 1)![1], 0) / 2

describe('flat geometry', () => {
  test('an area is cut to a window', () => {
    near(areaOf(areaInside(square, { left: 5, right: 20, bottom: -5, top: 4 })), 20, 1e-9)
    expect(areaInside(square, { left: 11, right: 20, bottom: 0, top: 4 })).toEqual([])
  })

  test('a line is cut to a window, piece by piece', () => {
    const zigzag: Flat[] = [
      [0, 0],
      [4, 4],
      [8, 0],
    ]
    const pieces = linesInside(zigzag, { left: 0, right: 10, bottom: -1, top: 2 })
    expect(pieces).toEqual([
      [
        [0, 0],
        [2, 2],
      ],
      [
        [6, 2],
        [8, 0],
      ],
    ])
  })

  test('hatching covers an area but not its hole', () => {
    const hole: Flat[] = [
      [4, 4],
      [4, 6],
      [6, 6],
      [6, 4],
    ]
    const gap = 0.1
    const covered = hatching([square, hole], gap, true).reduce(
      (sum, [a, b]) => sum + gap * Math.hypot(b![0] - a![0], b![1] - a![1]),
      0,
    )
    near(covered, 96, 1)
  })

  test('a stretch begins and ends where it is told to', () => {
    const line: Flat[] = [
      [0, 0],
      [10, 10],
      [20, 0],
    ]
    expect(stretch(line, 5, 15)).toEqual([
      [5, 5],
      [10, 10],
      [15, 5],
    ])
  })
})

describe.each(pairs.map((pair) => ({ name: pairName(pair), pair: { ...pair, backlash: 0.1 } })))(
  'outlines of $name',
  ({ pair }) => {
    test('the wheel is drawn from root to throat, each tooth like the first', () => {
      const { throatRadiusWheel, rootRadiusWheel } = pairProportions(pair)
      const teeth = wheelTeeth(pair)
      const radii = teeth.map(([u, v]) => Math.hypot(u, v))
      expect(Math.max(...radii)).toBeLessThanOrEqual(throatRadiusWheel + 1e-9)
      expect(Math.min(...radii)).toBeGreaterThanOrEqual(rootRadiusWheel - 1e-6)
      const each = teeth.length / pair.wheelTeeth
      for (let i = 0; i < each; i++) near(radii[i]!, radii[i + each]!, 1e-9)
      expect(areaOf(teeth) ** 2).toBeGreaterThan((Math.PI * rootRadiusWheel ** 2) ** 2)
    })

    test('the side view is the silhouette of the solid: no point of it lies outside, and it is no larger', () => {
      const worm = wormShape(pair)
      const { upper, lower } = wormSide(worm)
      const { positions } = wormMesh(pair, 'print')
      const half = worm.threadLength / 2
      const at = (edge: readonly Flat[], z: number) => {
        const place = ((z + half) / worm.threadLength) * (edge.length - 1)
        const i = Math.min(edge.length - 2, Math.floor(place))
        return edge[i]![1] + (edge[i + 1]![1] - edge[i]![1]) * (place - i)
      }
      const tolerance = 0.02 * pair.axialModule
      let nearest = 0
      for (let i = 0; i < positions.length; i += 3) {
        const [x, z] = [positions[i]!, positions[i + 2]!]
        if (Math.abs(z) > half - 1e-3) continue
        expect(x - at(upper, z) < tolerance && at(lower, z) - x < tolerance).toBe(true)
        if (Math.abs(x - at(upper, z)) < tolerance) nearest++
      }
      expect(nearest).toBeGreaterThan(upper.length)
    })

    test('the axial section is as thick as the thread on the reference line', () => {
      const worm = wormShape(pair)
      const { referenceRadiusWorm: r1 } = pairProportions(pair)
      const edge = axialEdge(worm, 0, -worm.axialPitch / 2, worm.axialPitch / 2)
      const crossings: number[] = []
      for (let i = 1; i < edge.length; i++) {
        const [a, b] = [edge[i - 1]!, edge[i]!]
        if (a[1] > r1 !== b[1] > r1) crossings.push(a[0] + ((b[0] - a[0]) * (r1 - a[1])) / (b[1] - a[1]))
      }
      expect(crossings.length).toBe(2)
      const sheet = gearDataSheet(pair).flatMap(({ rows }) => rows)
      const sx = Number(sheet.find(({ symbol }) => symbol === 's_x1')!.value)
      near(crossings[1]! - crossings[0]!, sx, 1e-3 * pair.axialModule)
    })
  },
)

test('a right-hand thread leans as a right-hand thread does, seen from the side', () => {
  const lean = (hand: GearNumbers['hand']) => {
    const { edges } = wormSide(wormShape({ ...oneToTwenty, hand }))
    const longest = edges.reduce((a, b) => (a.length > b.length ? a : b))
    const [from, to] = [longest[0]!, longest.at(-1)!]
    return (to[1] - from[1]) / (to[0] - from[0])
  }
  // axis to the right, viewer in front: the thread of a right-hand screw falls to the right
  expect(lean('right')).toBeLessThan(0)
  expect(lean('left')).toBeGreaterThan(0)
})

describe.each(demoMachines.map((machine) => ({ name: machine.name, machine })))('$name', ({ machine }) => {
  test('the file says millimetres and carries every number of the sheet', () => {
    const svg = svgFile(fileDrawing('A & <B>', machine.gearing))
    const [, width, , box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+ [\d.]+)"/.exec(svg)!
    expect(box!.split(' ')[0]).toBe(width)
    expect(svg).toContain('<title>A &amp; &lt;B&gt;, worm and wheel</title>')
    expect(svg).not.toMatch(/NaN|undefined|Infinity/)
    for (const row of gearDataSheet(machine.gearing).flatMap(({ rows }) => rows)) {
      expect(svg).toContain(`>${row.name}<`)
      expect(svg).toContain(`>${rowText(row)}<`)
    }
  })

  test('black is the only colour', () => {
    const colours = svgFile(fileDrawing(machine.name, machine.gearing)).match(/(?:fill|stroke)="[^"]*"/g)
    expect(new Set(colours)).toEqual(
      new Set(['fill="none"', 'stroke="#000"', 'fill="#000"', 'stroke="none"']),
    )
  })

  test('the drawing of a page fits the page at a scale of ISO 5455', () => {
    const room = { width: 180, height: 200 }
    const { width, height, scale } = sheetDrawing(machine.name, machine.gearing, room)
    expect(width <= room.width && height <= room.height).toBe(true)
    expect(scale >= 1 ? [1, 2, 5, 10, 20, 50, 100] : [2, 5, 10, 20]).toContain(scale >= 1 ? scale : 1 / scale)
  })
})
