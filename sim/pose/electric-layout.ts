/**
 * Where the electrical parts stand [mm]: on the tray beside the motor, the transformer or battery on the left, the
 * rest in a row on the right that ends at the brushes. Like the motor's, their sizes follow the gears.
 */
import type { PairProportions } from '../gear/proportions.ts'
import type { Machine } from '../machine/machine.ts'
import { type ChainElement, chainOf } from './electric-chain.ts'
import type { MotorLayout } from './motor-layout.ts'

export type Point = readonly [number, number, number]

/** A body that stands on the tray, by the middle of its foot. */
export interface Stand {
  readonly x: number
  readonly z: number
  readonly width: number
  readonly height: number
  readonly length: number
}

export type WireEnd = 'socket' | ChainElement | 'brushes'

/** A lead, from what it comes from to what it goes to. */
export interface Wire {
  readonly to: WireEnd
  readonly points: readonly Point[]
}

export interface ElectricLayout {
  /** Of the tray, on which all of it stands */
  readonly top: number
  readonly battery: Stand | null
  readonly stands: Readonly<Partial<Record<ChainElement, Stand>>>
  /** On the floor beside the machine; null with a battery */
  readonly plug: {
    readonly x: number
    readonly y: number
    readonly z: number
    readonly length: number
  } | null
  /** In the order of the current; two go to the brushes */
  readonly wires: readonly Wire[]
  readonly wireRadius: number
}

/** What the electrical parts are placed by. */
export interface Room {
  readonly gears: PairProportions
  readonly motor: MotorLayout
  readonly halfWidth: number
  readonly back: number
  readonly corner: number
  readonly top: number
  readonly floor: number
  /** How far out the outputs sweep */
  readonly reach: number
}

/** Half width of the tray that leaves room for the electrical parts beside the motor. */
export const leastHalfWidth = (motor: MotorLayout): number => 2.2 * motor.radius

/** Beside fan and brush springs, and off the wall of the case, in radii of the motor */
const INNER = 1.2
const WALL = 0.1
const SLOTS = 3
/** Part of a slot that its part fills */
const FILL = 0.8

/** z of the rear side of a wheel where it passes over the row at `x`; 0 where it does not. */
function wheelOver({ centreDistance: a, outsideRadiusWheel: re }: PairProportions, x: number): number {
  return Math.sqrt(Math.max(0, re * re - (a - x) * (a - x)))
}

interface Row {
  readonly x: number
  readonly width: number
  readonly front: number
  readonly slot: number
  readonly height: number
}

/** Strip beside the motor, the same on both sides. */
function rowBeside({ gears, motor, halfWidth, back, corner, top }: Room): Row {
  const r = motor.radius
  const inner = INNER * r
  const width = Math.min(1.3 * r, halfWidth - WALL * r - inner)
  const x = inner + width / 2
  const front = motor.commutatorFront
  const rear = Math.max(back + 0.55 * corner, motor.back - 0.6 * r)
  const clear = -top - 0.65 * gears.wheelWidth - 0.1 * r
  const passed = Math.max(...[inner, x, inner + width].map((at) => wheelOver(gears, at)))
  const height = passed > -front - 0.1 * r ? Math.min(0.95 * r, clear) : 0.95 * r
  return { x, width, front, slot: (front - rear) / SLOTS, height }
}

/** Of the height and width of the row */
const SIZES: Readonly<Record<ChainElement, readonly [width: number, height: number]>> = {
  transformer: [1, 1],
  rectifier: [0.9, 0.72],
  capacitor: [0.62, 0.95],
  setting: [0.9, 0.6],
}

function standsOf(chain: readonly ChainElement[], row: Row): ElectricLayout['stands'] {
  const stands: Partial<Record<ChainElement, Stand>> = {}
  const rest = chain.filter((element) => element !== 'transformer')
  // One that is alone stands in the middle; the foremost place is the last to be filled.
  const empty = rest.length === 1 ? 1 : 0
  rest.forEach((element, at) => {
    const [width, height] = SIZES[element]
    const z = row.front - (SLOTS - 0.5 - at - empty) * row.slot
    stands[element] = {
      x: row.x,
      z,
      width: width * row.width,
      height: height * row.height,
      length: FILL * row.slot,
    }
  })
  if (chain.includes('transformer'))
    stands.transformer = {
      x: -row.x,
      z: row.front - 1.15 * row.slot,
      width: row.width,
      height: row.height,
      length: 0.95 * row.slot,
    }
  return stands
}

/** From the plug over the floor, up behind the machine and through the wall of the case. */
function mainsLead(room: Room, plug: NonNullable<ElectricLayout['plug']>, y: number, to: Point): Point[] {
  const { motor, back, floor } = room
  const r = motor.radius
  const behind = back - 0.35 * r
  const entry = Math.max(-0.62 * room.halfWidth, Math.min(to[0], -0.3 * r))
  const low = floor + 0.07 * r
  return [
    [plug.x, plug.y, plug.z - 0.5 * plug.length],
    [plug.x, plug.y, plug.z - plug.length],
    [plug.x, low, plug.z - 1.5 * plug.length],
    [plug.x, low, behind + 0.4 * r],
    [entry, low, behind],
    [entry, y, behind],
    [entry, y, back + 0.3 * r],
    to,
  ]
}

/** To both brushes: along the tray under the motor, and up to the caps of the springs. */
function brushLeads(motor: MotorLayout, y: number, from: Point): Wire[] {
  const r = motor.radius
  const z = (motor.commutatorFront + motor.commutatorBack) / 2
  const spring = 0.2 * motor.commutatorRadius
  const x = r - motor.wall + 2.5 * spring
  const up = -1.3 * spring
  const near = Math.min(from[2], z + 0.3 * r)
  const right: Point[] = [from, [x, y, near], [x, y, z], [x, up, z]]
  const left: Point[] = [from, [x + 0.1 * r, y, near], [0.9 * r, y, z - 0.25 * r], [-x, y, z - 0.25 * r]]
  return [
    { to: 'brushes', points: right },
    { to: 'brushes', points: [...left, [-x, y, z], [-x, up, z]] },
  ]
}

const frontOf = ({ x, z, length }: Stand, y: number): Point => [x, y, z + length / 2]
/** Out of the last part to the brushes: at its front, or at its side where it stands beside them. */
const lastOut = (stand: Stand, { commutatorBack }: MotorLayout, y: number): Point =>
  stand.z + stand.length / 2 < commutatorBack ? frontOf(stand, y) : [stand.x - stand.width / 2, y, stand.z]
const backOf = ({ x, z, length }: Stand, y: number): Point => [x, y, z - length / 2]

/** `chain` - without the transformer, which stands on the other side of the motor */
function wiresOf(room: Room, chain: readonly ChainElement[], layout: Omit<ElectricLayout, 'wires'>): Wire[] {
  const { motor } = room
  const { stands, plug, battery, top, wireRadius } = layout
  const y = top + 1.05 * wireRadius
  const rest = chain.filter((element) => element !== 'transformer').map((to) => ({ to, stand: stands[to]! }))
  const first = rest[0]!
  const across = motor.armatureFront - 0.75 * motor.radius
  /** From the left side of the motor to the first part on the right, between the saddles of the motor */
  const over = (from: Stand): Point[] => [
    [from.x + from.width / 2, y, from.z],
    [-0.9 * motor.radius, y, across],
    [0.9 * motor.radius, y, across],
    [first.stand.x - first.stand.width / 2, y, first.stand.z],
  ]
  const wires: Wire[] = []
  const { transformer } = stands
  if (plug !== null && transformer)
    wires.push({ to: 'transformer', points: mainsLead(room, plug, y, backOf(transformer, y)) })
  const source = transformer ?? battery
  if (source) wires.push({ to: first.to, points: over(source) })
  else if (plug !== null) {
    const enters: Point = [-0.9 * motor.radius, y, across]
    const onwards = over({ x: enters[0], z: across, width: 0, height: 0, length: 0 }).slice(1)
    wires.push({ to: first.to, points: [...mainsLead(room, plug, y, enters), ...onwards.slice(1)] })
  }
  rest.slice(1).forEach(({ to, stand }, before) => {
    wires.push({ to, points: [frontOf(rest[before]!.stand, y), backOf(stand, y)] })
  })
  return [...wires, ...brushLeads(motor, y, lastOut(rest.at(-1)!.stand, motor, y))]
}

/** Null where a hand turns the machine. */
export function electricLayout(machine: Machine, room: Room): ElectricLayout | null {
  const chain = chainOf(machine)
  if (chain.length === 0) return null
  const { motor, top, halfWidth, floor, gears, reach } = room
  const r = motor.radius
  const row = rowBeside(room)
  const mains = machine.supply.kind === 'mains'
  const layout = {
    top,
    battery: mains
      ? null
      : {
          x: -row.x,
          z: row.front - 1.6 * row.slot,
          width: row.width,
          height: 0.9 * row.height,
          length: 1.7 * row.slot,
        },
    stands: standsOf(chain, row),
    plug: mains
      ? {
          x: Math.max(halfWidth + 0.55 * r, reach + 0.35 * r),
          y: floor + 0.26 * r,
          z: -1.8 * r,
          length: 0.75 * r,
        }
      : null,
    wireRadius: 0.08 * gears.tipRadiusWorm,
  }
  return { ...layout, wires: wiresOf(room, chain, layout) }
}

/** Everything that stands on the tray, by the name of its part. */
export function standsIn(
  layout: ElectricLayout | null,
): readonly { readonly part: ChainElement | 'battery'; readonly stand: Stand }[] {
  if (layout === null) return []
  const { battery, stands } = layout
  const all = (Object.keys(stands) as ChainElement[]).flatMap((part) => {
    const stand = stands[part]
    return stand ? [{ part, stand }] : []
  })
  return battery ? [{ part: 'battery', stand: battery }, ...all] : all
}
