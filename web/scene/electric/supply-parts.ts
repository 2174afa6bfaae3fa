/** What the current comes from and passes ahead of the motor: transformer, battery, rectifier, capacitor. */
import type { Stand } from '../../../sim/pose/electric-layout.ts'
import type { Detail } from '../detail.ts'
import { type Piece, box, piece, rodY, turnedY } from '../solid.ts'
import { standing } from './stand.ts'

/** Length of a yoke, in widths of the whole */
const YOKE = 0.75

/** Two limbs with a coil each between two yokes; the sheets lie one behind the other. */
export function transformerPieces({ width, height, length }: Stand, detail: Detail): Piece[] {
  const limb = 0.19 * width
  const reach = 0.44 * width
  const depth = 0.62 * length
  const foot = 0.07 * height
  const high = height - foot
  const clear = high - 2 * limb
  const middle = 0.5 * (width - reach)
  const y = foot + limb
  const pieces: Piece[] = [
    piece('laminations', standing(limb, box(YOKE * width, limb, depth), foot)),
    piece('laminations', standing(limb, box(YOKE * width, limb, depth), height - limb)),
    piece('barSteel', standing(foot, box(1.04 * width, foot, 0.35 * depth))),
  ]
  for (const [side, wire] of [[-1, 'enamelledWire'] as const, [1, 'copper'] as const]) {
    const x = side * middle
    const flange = 0.07 * clear
    const deep = depth + reach - limb
    pieces.push(piece('laminations', standing(clear, box(limb, clear, depth), y), { x }))
    for (const at of [y, y + clear - flange])
      pieces.push(piece('plastic', standing(flange, box(reach, flange, deep), at), { x }))
    const rows = detail === 'high' ? 7 : 4
    const row = (clear - 2 * flange) / rows
    for (let n = 0; n < rows; n++) {
      const turn = box(0.94 * reach - (n % 2) * 0.1 * row, 0.88 * row, 0.94 * deep - (n % 2) * 0.1 * row)
      pieces.push(piece(wire, standing(row, turn, y + flange + n * row), { x }))
    }
  }
  return pieces
}

export function batteryPieces({ width, height, length }: Stand, detail: Detail): Piece[] {
  const lid = 0.14 * height
  const body = 0.8 * height
  const post = 0.09 * width
  const sides = detail === 'high' ? 20 : 10
  return [
    piece('plastic', standing(body, box(width, body, length))),
    piece('caseShell', standing(0.4 * body, box(1.01 * width, 0.4 * body, 1.01 * length), 0.3 * body)),
    piece('vent', standing(lid, box(0.96 * width, lid, 0.97 * length), body)),
    ...[-1, 1].map((side) =>
      piece('brass', rodY(post, body, height + 0.04 * height, sides), {
        x: side * 0.3 * width,
        z: 0.36 * length,
      }),
    ),
    // The plus on the lid, beside its post
    piece('white', standing(0.02 * height, box(0.16 * width, 0.02 * height, 0.05 * width), body + lid), {
      x: 0.3 * width,
      z: 0.16 * length,
    }),
    piece('white', standing(0.02 * height, box(0.05 * width, 0.02 * height, 0.16 * width), body + lid), {
      x: 0.3 * width,
      z: 0.16 * length,
    }),
  ]
}

const FINS = 7

/** A comb of fins on the diodes' block */
export function rectifierPieces({ width, height, length }: Stand): Piece[] {
  const block = 0.3 * height
  const base = 0.14 * height
  const fin = width / (2 * FINS - 1)
  const fins = Array.from({ length: FINS }, (_, n) =>
    piece('collar', standing(height - block - base, box(fin, height - block - base, length), block + base), {
      x: (2 * n + 0.5) * fin - width / 2,
    }),
  )
  return [
    piece('carbon', standing(block, box(0.72 * width, block, 0.72 * length))),
    piece('collar', standing(base, box(width, base, length), block)),
    ...[-1, 1].flatMap((x) =>
      [-1, 1].map((z) =>
        piece('brass', standing(0.5 * block, box(0.16 * width, 0.5 * block, 0.1 * length)), {
          x: x * 0.2 * width,
          z: z * 0.41 * length,
        }),
      ),
    ),
    ...fins,
  ]
}

/** A can that stands, with the stripe of its negative pole */
export function capacitorPieces({ width, height, length }: Stand, detail: Detail): Piece[] {
  const r = Math.min(width, length) / 2
  const sides = detail === 'high' ? 32 : 16
  const round = 0.12 * r
  const sleeve: [number, number][] = [
    [0, 0],
    [0.94 * r, 0],
    [r, round],
    [r, height - round],
    [0.9 * r, height],
    [0.82 * r, height],
  ]
  const stripe: [number, number][] = [
    [1.01 * r, 2 * round],
    [1.01 * r, height - 2 * round],
  ]
  return [
    piece('plastic', turnedY(sleeve, sides)),
    piece('barSteel', rodY(0.84 * r, height - round, height - 0.4 * round, sides)),
    piece('white', turnedY(stripe, 4, 0.2, 0.5)),
  ]
}
