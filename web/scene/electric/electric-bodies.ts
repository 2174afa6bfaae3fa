/** The solids of the electrical parts; fetched after the first picture, which does without them. */
import { type BufferGeometry, SphereGeometry } from 'three'
import type { Control, Machine } from '../../../sim/machine/machine.ts'
import type { ElectricLayout, Point, Stand, Wire, WireEnd } from '../../../sim/pose/electric-layout.ts'
import type { Layout } from '../../../sim/pose/layout.ts'
import type { PartName } from '../../../sim/pose/parts.ts'
import type { Detail } from '../detail.ts'
import { type Piece, box, joined, part, piece, placed, rodY, turnedY, turnedZ } from '../solid.ts'
import { rounded, tube } from './tube.ts'

/** What the current passes, and the socket, which stands off while the plug is out. */
export interface ElectricBodies {
  readonly solids: ReadonlyMap<PartName, BufferGeometry>
  readonly socket: BufferGeometry | null
  /** How far off along z the socket stands while the plug is out [mm] */
  readonly unplugged: number
  /** The leads as the current passes them, up to each stop */
  readonly leads: readonly Lead[]
}

/** One lead, as a line for the light and the ink round it, with a bead at its end. */
export interface Lead {
  readonly to: WireEnd
  readonly light: BufferGeometry
  readonly ink: BufferGeometry
}

const standing = (height: number, body: BufferGeometry, y = 0): BufferGeometry =>
  placed(body, { y: y + height / 2 })

/** Length of a yoke, in widths of the whole */
const YOKE = 0.75

/** Two limbs with a coil each between two yokes; the sheets lie one behind the other. */
function transformerPieces({ width, height, length }: Stand, detail: Detail): Piece[] {
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

function batteryPieces({ width, height, length }: Stand, detail: Detail): Piece[] {
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
function rectifierPieces({ width, height, length }: Stand): Piece[] {
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
function capacitorPieces({ width, height, length }: Stand, detail: Detail): Piece[] {
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

const KNOB_SIDES = 12

/** A knob on a shaft, with the line that points to the step */
function knobPieces(radius: number, bottom: number, height: number): Piece[] {
  const skirt = 0.3 * height
  return [
    piece('plastic', rodY(radius, bottom, bottom + skirt, 24)),
    piece('carbon', rodY(0.74 * radius, bottom + skirt, bottom + height, KNOB_SIDES)),
    piece(
      'white',
      standing(0.05 * height, box(0.14 * radius, 0.05 * height, 0.7 * radius), bottom + height),
      {
        z: 0.36 * radius,
      },
    ),
  ]
}

/** The taps' contacts round the knob, or what stands on the board of another control */
function settingPieces(stand: Stand, control: Control): Piece[] {
  const { width, height, length } = stand
  const board = 0.2 * height
  const radius = 0.3 * Math.min(width, length)
  const pieces = [piece('plastic', standing(board, box(width, board, length)))]
  if (control.kind === 'taps') {
    const steps = control.steps.length
    control.steps.forEach((_, n) => {
      const angle = (0.75 * 2 * Math.PI * (n - (steps - 1) / 2)) / steps
      const stud = rodY(0.12 * radius, board, 1.5 * board, 10)
      pieces.push(
        piece('brass', stud, { x: 1.3 * radius * Math.sin(angle), z: 1.3 * radius * Math.cos(angle) }),
      )
    })
    return [...pieces, ...knobPieces(radius, 1.1 * board, 0.74 * height)]
  }
  const knob = knobPieces(0.8 * radius, board, 0.6 * height).map(({ substance, geometry }) =>
    piece(substance, geometry, { z: 0.22 * length }),
  )
  return [...pieces, ...knob, ...devicePieces(stand, board, control.kind)]
}

/** Transistor or triac with its cooling plate; or a diode, lying. */
function devicePieces({ width, height, length }: Stand, board: number, kind: Control['kind']): Piece[] {
  const z = -0.27 * length
  if (kind === 'half-wave') {
    const r = 0.16 * height
    const body = placed(
      turnedZ(
        [
          [0, -1.6 * r],
          [r, -1.6 * r],
          [r, 1.6 * r],
          [0, 1.6 * r],
        ],
        16,
      ),
      {
        aboutY: Math.PI / 2,
        y: board + 1.2 * r,
        z,
      },
    )
    const band = placed(
      turnedZ(
        [
          [1.02 * r, 0.9 * r],
          [1.02 * r, 1.3 * r],
        ],
        16,
      ),
      {
        aboutY: Math.PI / 2,
        y: board + 1.2 * r,
        z,
      },
    )
    return [piece('carbon', body), piece('white', band)]
  }
  const high = 0.62 * height
  return [
    piece('collar', standing(0.8 * height, box(0.8 * width, 0.8 * height, 0.06 * length), board), { z }),
    piece('carbon', standing(high, box(0.26 * width, 0.7 * high, 0.12 * length), board), {
      z: z + 0.09 * length,
    }),
    piece('brightSteel', standing(high, box(0.26 * width, 0.2 * high, 0.03 * length), board + 0.46 * high), {
      z: z + 0.05 * length,
    }),
  ]
}

type Plug = NonNullable<ElectricLayout['plug']>

/** Pins forwards, into the socket */
function plugPieces({ x, y, z, length }: Plug, detail: Detail): Piece[] {
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

function socketBody({ x, y, z, length }: Plug): BufferGeometry {
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

function leadPieces({ wires, wireRadius }: ElectricLayout, detail: Detail, mains: boolean): Piece[] {
  const sides = detail === 'high' ? 10 : 6
  return wires
    .filter((_, n) => mains === (n === 0))
    .map(({ points }) => piece('rubber', tube(rounded(points, 5 * wireRadius), wireRadius, sides)))
}

const LIGHT_SIDES = 8

const bead = (radius: number, [x, y, z]: Point): BufferGeometry =>
  placed(new SphereGeometry(radius, 14, 10), { x, y, z })

function lightedLead({ to, points }: Wire, wireRadius: number): Lead {
  const line = rounded(points, 5 * wireRadius)
  const end = points.at(-1)!
  return {
    to,
    light: joined([tube(line, 1.35 * wireRadius, LIGHT_SIDES), bead(2.3 * wireRadius, end)]),
    ink: joined([tube(line, 1.9 * wireRadius, LIGHT_SIDES), bead(2.9 * wireRadius, end)]),
  }
}

export function electricBodies(machine: Machine, layout: Layout, detail: Detail): ElectricBodies {
  const solids = new Map<PartName, BufferGeometry>()
  const { electric } = layout
  if (electric === null) return { solids, socket: null, unplugged: 0, leads: [] }
  const { stands, battery, plug, top } = electric
  const add = (name: PartName, stand: Stand | null | undefined, make: (stand: Stand) => Piece[]) => {
    if (stand) solids.set(name, placed(part(make(stand)), { x: stand.x, y: top, z: stand.z }))
  }
  add('battery', battery, (stand) => batteryPieces(stand, detail))
  add('transformer', stands.transformer, (stand) => transformerPieces(stand, detail))
  add('rectifier', stands.rectifier, rectifierPieces)
  add('capacitor', stands.capacitor, (stand) => capacitorPieces(stand, detail))
  add('setting', stands.setting, (stand) => settingPieces(stand, machine.control))
  const leads = leadPieces(electric, detail, false)
  if (plug) solids.set('plug', part([...plugPieces(plug, detail), ...leadPieces(electric, detail, true)]))
  else leads.push(...leadPieces(electric, detail, true))
  if (leads.length > 0) solids.set('leads', part(leads))
  return {
    solids,
    socket: plug && socketBody(plug),
    unplugged: 1.1 * (plug?.length ?? 0),
    leads: electric.wires.map((wire) => lightedLead(wire, electric.wireRadius)),
  }
}

export function disposeElectric({ solids, socket, leads }: ElectricBodies): void {
  for (const { light, ink } of leads) {
    light.dispose()
    ink.dispose()
  }
  for (const geometry of solids.values()) geometry.dispose()
  socket?.dispose()
}
