/** The whole drawing: four pictures at one scale and one at a larger, headings, and the numbers in two columns. */
import { type SheetRow, gearDataSheet } from '../../sim/gear/data-sheet.ts'
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import { arrangementPicture, arrangementScale } from './arrangement-picture.ts'
import { type Drawing, HEADING, type Mark, TEXT, label, place, stroke } from './marks.ts'
import { meshPicture, meshWindow } from './mesh-picture.ts'
import { rowText } from './row-text.ts'
import type { PictureOf } from './view.ts'
import { wheelFacePicture, wheelSectionPicture } from './wheel-picture.ts'
import { type WormSide, wormShape, wormSide } from './worm-outline.ts'
import { wormPicture } from './worm-picture.ts'

/** Scales of ISO 5455, from memory, largest first. */
const SCALES = [100, 50, 20, 10, 5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20] as const
/** The mesh is drawn as large as a window of this width lets it [mm]. */
const WIDEST_MESH = 78
const WIDEST_ARRANGEMENT = 60
const NARROWEST_ARRANGEMENT = 28
const GAP = 6
const HEAD = 8
const TABLE_ROW = 4.6

export const scaleText = (scale: number): string =>
  scale >= 1 ? `${Math.round(scale * 10) / 10}:1` : `1:${Math.round(1 / scale)}`

interface Placed {
  readonly marks: readonly Mark[]
  readonly width: number
  readonly height: number
}

/** Pictures side by side, their origins on one line, each with its heading above; spread over a width, if given. */
function row(side: readonly PictureOf[], over: number): Placed {
  const taken = side.reduce((sum, { left, right }) => sum + left + right, 0)
  const gap = Math.max(GAP, (over - taken) / Math.max(1, side.length - 1))
  const up = Math.max(...side.map((each) => each.up)) + HEAD
  let x = 0
  const marks = side.flatMap(({ heading, marks: drawn, left, right }) => {
    const placed = [
      label(x, HEADING, heading, { anchor: 'start', size: HEADING, bold: true }),
      place(x + left, up, drawn),
    ]
    x += left + right + gap
    return placed
  })
  return { marks, width: x - gap, height: up + Math.max(...side.map(({ down }) => down)) }
}

function stack(rows: readonly Placed[]): Placed {
  let y = 0
  const marks = rows.map((each) => {
    const placed = place(0, y, each.marks)
    y += each.height + GAP
    return placed
  })
  return { marks, width: Math.max(...rows.map(({ width }) => width)), height: y - GAP }
}

const widthOf = (side: readonly PictureOf[]): number =>
  side.reduce((sum, { left, right }) => sum + left + right + GAP, -GAP)

/** Between the pictures of the wheel, if there is room for it. */
function arrangement(gearing: GearNumbers, room: number): PictureOf[] {
  const width = Math.min(room - GAP, WIDEST_ARRANGEMENT)
  return width < NARROWEST_ARRANGEMENT ? [] : [arrangementPicture(gearing, arrangementScale(gearing, width))]
}

/** `over` - a width to spread them over [mm] */
function pictures(gearing: GearNumbers, side: WormSide, scale: number, over = 0): Placed {
  const larger = SCALES.find((each) => each * meshWindow(gearing) <= WIDEST_MESH) ?? SCALES.at(-1)!
  const mesh = meshPicture(gearing, larger)
  const below = [
    wormPicture(gearing, side, scale),
    { ...mesh, heading: `${mesh.heading}, ${scaleText(larger)}` },
  ]
  const face = wheelFacePicture(gearing, scale)
  const section = wheelSectionPicture(gearing, scale)
  const width = Math.max(over, widthOf(below))
  const between = arrangement(gearing, width - widthOf([face, section]) - GAP)
  return stack([row([face, ...between, section], width), row(below, width)])
}

/** Name, symbol, value: one table under another in a column of its own. */
function column(title: string, rows: readonly SheetRow[]): Placed {
  const width = 84
  const lines = rows.flatMap((each, i) => {
    const y = HEADING + 3 + (i + 1) * TABLE_ROW
    return [
      label(0, y, each.name, { anchor: 'start' }),
      label(56, y, each.symbol, { anchor: 'end' }),
      label(width, y, rowText(each), { anchor: 'end' }),
      stroke('hatch', [
        [0, y + 1.2],
        [width, y + 1.2],
      ]),
    ]
  })
  const marks = [label(0, HEADING, title, { anchor: 'start', size: HEADING, bold: true }), ...lines]
  return { marks, width, height: HEADING + 3 + (rows.length + 0.5) * TABLE_ROW }
}

function tables(gearing: GearNumbers): Placed {
  const columns = gearDataSheet(gearing).map(({ title, rows }) => column(title, rows))
  let x = 0
  const marks = columns.map((each) => {
    const placed = place(x, 0, each.marks)
    x += each.width + 2 * GAP
    return placed
  })
  return { marks, width: x - 2 * GAP, height: Math.max(...columns.map(({ height }) => height)) }
}

const titled = (machineName: string): string => `${machineName}, worm and wheel`

/** For a file: as large as the parts are, with every number, on a sheet as large as that takes. */
export function fileDrawing(machineName: string, gearing: GearNumbers): Drawing {
  const margin = 10
  const note = label(0, TEXT, `Scale 1:1 except where told. Lengths in mm. Projection: each view is named.`, {
    anchor: 'start',
  })
  const head: Placed = {
    marks: [label(0, 5, titled(machineName), { anchor: 'start', size: 6, bold: true }), place(0, 8, [note])],
    width: 0,
    height: 14,
  }
  const { marks, width, height } = stack([
    head,
    pictures(gearing, wormSide(wormShape(gearing)), 1),
    tables(gearing),
  ])
  return {
    title: titled(machineName),
    width: width + 2 * margin,
    height: height + 2 * margin,
    marks: [place(margin, margin, marks)],
  }
}

export interface SheetDrawing extends Drawing {
  readonly scale: number
}

/** For a page: the largest scale that fits, and the pictures alone. */
export function sheetDrawing(machineName: string, gearing: GearNumbers, room: Room): SheetDrawing {
  const least = SCALES.at(-1)!
  const side = wormSide(wormShape(gearing))
  const scale = SCALES.find((each) => fits(pictures(gearing, side, each), room)) ?? least
  const { marks, width, height } = pictures(gearing, side, scale, room.width)
  return { title: titled(machineName), scale, width, height, marks }
}

export interface Room {
  readonly width: number
  readonly height: number
}

const fits = ({ width, height }: Placed, room: Room): boolean => width <= room.width && height <= room.height
