/** The speed setting: a knob over its contacts, and what switches the current. */
import type { BufferGeometry } from 'three'
import type { Control } from '../../../sim/machine/supply.ts'
import type { Point, Stand } from '../../../sim/pose/electric-layout.ts'
import { type Piece, box, part, piece, placed, rodY, turnedZ } from '../solid.ts'
import { standing } from './stand.ts'

export interface Knob {
  readonly geometry: BufferGeometry
  readonly at: Point
  /** About +y for each step [rad] */
  readonly angles: readonly number[]
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

/** Part of a turn over which the steps are spread */
const SPREAD = 0.75

/** Where the knob points at each step, from the viewer round to the right [rad] */
const stepAngles = ({ steps }: Control): readonly number[] =>
  steps.map((_, n) => (SPREAD * 2 * Math.PI * (n - (steps.length - 1) / 2)) / steps.length)

/** How high the board is, and the radius of the knob with its middle */
function boardOf({ width, height, length }: Stand, taps: boolean) {
  const radius = 0.3 * Math.min(width, length)
  return {
    board: 0.2 * height,
    knob: taps ? radius : 0.8 * radius,
    z: taps ? 0 : 0.2 * length,
    high: taps ? 0.74 * height : 0.6 * height,
  }
}

export function knobOf(stand: Stand, top: number, control: Control): Knob {
  const { board, knob, z, high } = boardOf(stand, control.kind === 'taps')
  return {
    geometry: part(knobPieces(knob, board, high)),
    at: [stand.x, top, stand.z + z],
    angles: stepAngles(control),
  }
}

/** The contacts round the knob, and what else stands on the board of another control than taps */
export function settingPieces(stand: Stand, control: Control): Piece[] {
  const taps = control.kind === 'taps'
  const { width, length } = stand
  const { board, knob, z } = boardOf(stand, taps)
  const around = 1.28 * knob
  const contacts = stepAngles(control).map((angle) =>
    piece('brass', rodY(0.12 * knob, board, 1.3 * board, 10), {
      x: around * Math.sin(angle),
      z: z + around * Math.cos(angle),
    }),
  )
  const plain = [piece('plastic', standing(board, box(width, board, length))), ...contacts]
  return taps ? plain : [...plain, ...devicePieces(stand, board, control.kind)]
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
