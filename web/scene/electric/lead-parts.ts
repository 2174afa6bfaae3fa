/** Plug, socket and leads, and the leads as the light draws them. */
import { type BufferGeometry, SphereGeometry } from 'three'
import type { ElectricLayout, Point, Wire, WireEnd } from '../../../sim/pose/electric-layout.ts'
import type { Detail } from '../detail.ts'
import { type Piece, box, joined, part, piece, placed, turnedZ } from '../solid.ts'
import { rounded, tube } from './tube.ts'

/** One lead, as a line for the light and the ink round it, with a bead at its end. */
export interface Lead {
  readonly to: WireEnd
  readonly light: BufferGeometry
  readonly ink: BufferGeometry
}

type Plug = NonNullable<ElectricLayout['plug']>

/** Pins forwards, into the socket */
export function plugPieces({ x, y, z, length }: Plug, detail: Detail): Piece[] {
  const r = 0.32 * length
  const sides = detail === 'high' ? 28 : 14
  const body: [number, number][] = [
    [0, -length],
    [0.3 * r, -length],
    [0.42 * r, -0.62 * length],
    [0.9 * r, -0.5 * length],
    [r, -0.05 * length],
    [0.92 * r, 0],
    [0, 0],
  ]
  return [
    piece('rubber', turnedZ(body, sides), { x, y, z }),
    ...[-1, 1].map((side) =>
      piece('brass', placed(box(0.16 * r, 0.16 * r, 0.5 * length), { z: 0.25 * length }), {
        x: x + side * 0.34 * r,
        y,
        z,
      }),
    ),
  ]
}

export function socketBody({ x, y, z, length }: Plug): BufferGeometry {
  const [wide, high] = [0.95 * length, 0.78 * length]
  const thick = 0.5 * length
  return part([
    piece('caseShell', box(wide, high, thick), { x, y, z: z + 0.02 * length + thick / 2 }),
    piece('vent', placed(box(0.7 * wide, 0.02 * high, 0.7 * thick), { y: high / 2 }), {
      x,
      y,
      z: z + thick / 2,
    }),
  ])
}

export function leadPieces({ wires, wireRadius }: ElectricLayout, detail: Detail, mains: boolean): Piece[] {
  const sides = detail === 'high' ? 10 : 6
  return wires
    .filter((_, n) => mains === (n === 0))
    .map(({ points }) => piece('rubber', tube(rounded(points, 5 * wireRadius), wireRadius, sides)))
}

const LIGHT_SIDES = 8

const bead = (radius: number, [x, y, z]: Point): BufferGeometry =>
  placed(new SphereGeometry(radius, 14, 10), { x, y, z })

export function lightedLead({ to, points }: Wire, wireRadius: number): Lead {
  const line = rounded(points, 5 * wireRadius)
  const end = points.at(-1)!
  return {
    to,
    light: joined([tube(line, 1.35 * wireRadius, LIGHT_SIDES), bead(2.3 * wireRadius, end)]),
    ink: joined([tube(line, 1.9 * wireRadius, LIGHT_SIDES), bead(2.9 * wireRadius, end)]),
  }
}
