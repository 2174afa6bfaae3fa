/**
 * The wheel's flank as it was made, as a grid: planes over the face, and in each of them places u from the tip
 * (0) to where the fillet begins (1). A point between the grid's can be asked for as well.
 */
import { contactPlanes } from './contact-planes.ts'
import type { GearNumbers } from './gear-numbers.ts'
import { helicalContact, helicalShift } from './helical-contact.ts'
import { helicalFlankAngle, helicalTooth } from './helical-tooth.ts'
import { activeRange, playlessCutter, rangeEnds } from './undercut.ts'
import { type Flank, rackHeight, rackSlope, rackTilt } from './wheel-flank.ts'

export interface FlankPlace {
  radius: number
  chi: number
  /** Shift of the full thread at which it touches in the ideal mesh [mm] */
  shift: number
}

export const newPlace = (): FlankPlace => ({ radius: 0, chi: 0, shift: 0 })

export interface FlankGrid {
  readonly planes: number
  readonly points: number
  /** [mm], rising */
  readonly y: Float64Array
  /** [mm] and [rad], of tooth space 0 in the frame of the right mesh, without backlash */
  readonly radius: Float64Array
  readonly chi: Float64Array
  /** Shift of the full thread at which each touches in the ideal mesh [mm] */
  readonly shift: Float64Array
  /** Part of a turn's way at r2 that goes along the normal, in the ideal mesh */
  readonly normalPart: Float64Array
  /** Shifts [mm] between which the ideal flanks touch */
  readonly first: number
  readonly last: number
  /** Writes the point at the place u of the plane y, which lies the part of a step beyond plane j. */
  readonly write: (out: FlankPlace, j: number, part: number, u: number) => void
}

const between = (values: Float64Array, j: number, part: number): number =>
  part === 0 ? values[j]! : values[j]! + part * (values[j + 1]! - values[j]!)

const emptyGrid = (y: Float64Array, points: number) => ({
  planes: y.length,
  points,
  y,
  radius: new Float64Array(y.length * points),
  chi: new Float64Array(y.length * points),
  shift: new Float64Array(y.length * points),
  normalPart: new Float64Array(y.length * points),
})

export const flankGrid = (gearing: GearNumbers, sigma: Flank, pieces: number, points: number): FlankGrid =>
  gearing.wheelForm === 'helical'
    ? helicalGrid(gearing, sigma, pieces, points)
    : throatedGrid(gearing, sigma, pieces, points)

function fill(grid: FlankGrid): FlankGrid {
  const place = newPlace()
  for (let j = 0; j < grid.planes; j++) {
    for (let i = 0; i < grid.points; i++) {
      grid.write(place, j, 0, i / (grid.points - 1))
      grid.radius[j * grid.points + i] = place.radius
      grid.chi[j * grid.points + i] = place.chi
      grid.shift[j * grid.points + i] = place.shift
    }
  }
  return grid
}

function throatedGrid(gearing: GearNumbers, sigma: Flank, pieces: number, points: number): FlankGrid {
  const cutter = playlessCutter(gearing)
  const g = cutter.generation
  const exists = (plane: number) => activeRange(cutter, sigma, plane).exists
  const planes = contactPlanes(cutter, gearing.wheelWidth, pieces, exists)
  const y = Float64Array.from(planes.length > 0 ? planes : [0])
  const tip = new Float64Array(y.length)
  const foot = new Float64Array(y.length)
  let [first, last] = [Infinity, -Infinity]
  y.forEach((plane, j) => {
    const range = activeRange(cutter, sigma, plane)
    tip[j] = range.tip
    foot[j] = range.junction
    if (!range.used) return
    for (const { shift } of rangeEnds(g, sigma, range, plane)) {
      first = Math.min(first, shift)
      last = Math.max(last, shift)
    }
  })
  const grid = emptyGrid(y, points)
  for (let j = 0; j < y.length; j++) {
    for (let i = 0; i < points; i++) {
      const x = tip[j]! + ((foot[j]! - tip[j]!) * i) / (points - 1)
      const slope = rackSlope(g, sigma, x, y[j]!)
      const tilt = rackTilt(g, sigma, x, y[j]!)
      grid.normalPart[j * points + i] = 1 / Math.sqrt(1 + slope * slope + tilt * tilt)
    }
  }
  const write = (out: FlankPlace, j: number, part: number, u: number): void => {
    const plane = between(y, j, part)
    const from = between(tip, j, part)
    const x = from + u * (between(foot, j, part) - from)
    const height = (g.centreDistance - g.wheelRadius - x) / rackSlope(g, sigma, x, plane)
    const across = g.centreDistance - x
    out.radius = Math.sqrt(across * across + height * height)
    out.shift = height - rackHeight(g, sigma, x, plane)
    out.chi = Math.atan2(height, across) - out.shift / g.wheelRadius
  }
  return fill({ ...grid, first, last, write })
}

function helicalGrid(gearing: GearNumbers, sigma: Flank, pieces: number, points: number): FlankGrid {
  const tooth = helicalTooth({ ...gearing, backlash: 0 })
  const contact = helicalContact(gearing)
  const { pair } = contact
  const width = gearing.wheelWidth
  const y = Float64Array.from({ length: pieces + 1 }, (_, j) => width * (j / pieces - 0.5))
  const foot = Math.max(tooth.rootRadius, tooth.baseRadius)
  const ends = [contact.wheelEnd, contact.wormEnd].map((t) => helicalShift(contact, sigma, t))
  const grid = emptyGrid(y, points)
  grid.normalPart.fill(contact.direction[2])
  const write = (out: FlankPlace, j: number, part: number, u: number): void => {
    out.radius = tooth.tipRadius + u * (foot - tooth.tipRadius)
    out.chi = helicalFlankAngle(tooth, sigma, out.radius, between(y, j, part))
    // In its own plane a point touches on the line of action, at the working pressure angle.
    const past = Math.acos(Math.min(1, tooth.baseRadius / out.radius)) - pair.axialPressureAngle
    out.shift = (-sigma * past - out.chi) * pair.referenceRadiusWheel
  }
  return fill({ ...grid, first: Math.min(...ends), last: Math.max(...ends), write })
}
