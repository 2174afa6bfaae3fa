/** Where the light on the power's way stands in the picture. */
import { Vector3 } from 'three'
import type { Stand } from '../../sim/pose/electric-layout.ts'
import type { Layout } from '../../sim/pose/layout.ts'
import type { PartName } from '../../sim/pose/parts.ts'
import { EVERYWHERE, type Stretch } from '../material/materials.ts'
import type { PowerStop } from '../store/view.ts'

const PARTS: Readonly<Record<Exclude<PowerStop, 'socket'>, readonly PartName[]>> = {
  transformer: ['transformer'],
  rectifier: ['rectifier'],
  capacitor: ['capacitor'],
  setting: ['setting'],
  brushes: ['brushGear'],
  commutator: ['rotor'],
  armature: ['rotor'],
  fan: ['fan'],
  worm: ['rotor'],
  wheels: ['leftWheel', 'rightWheel'],
  outputs: ['leftBrush', 'rightBrush'],
}
/** Where the power comes from: of these a machine has one. */
const SOURCES: readonly PartName[] = ['plug', 'battery', 'crank']

export const litParts = (stop: PowerStop | null): readonly PartName[] =>
  stop === null ? [] : stop === 'socket' ? SOURCES : PARTS[stop]

/** Arrows tell a sense, which only what turns has. */
export const showsSense = (stop: PowerStop | null): boolean =>
  stop === null || stop === 'worm' || stop === 'wheels' || stop === 'outputs'

/** Of the rotor only what is meant is lit [mm]. */
export function litStretch({ gears, motor }: Layout, stop: PowerStop): Stretch {
  if (stop === 'worm') return [-gears.threadLength / 2, gears.threadLength / 2]
  if (stop === 'commutator' && motor) return [motor.commutatorBack, motor.commutatorFront]
  if (stop === 'armature' && motor) return [motor.armatureBack, motor.armatureFront]
  return EVERYWHERE
}

/** Middle and half sizes of a box */
type Box = readonly [
  x: number,
  y: number,
  z: number,
  halfWidth: number,
  halfHeight: number,
  halfLength: number,
]

const standBox = ({ x, z, width, height, length }: Stand, foot: number): Box => [
  x,
  foot + height / 2,
  z,
  width / 2,
  height / 2,
  length / 2,
]

/** The plug on the floor, or the crank */
function sourceBox({ electric, crank, tray }: Layout): Box {
  const plug = electric?.plug
  if (plug) {
    const half = 1.4 * plug.length
    return [plug.x, plug.y, plug.z, half, half, 1.6 * half]
  }
  const z = crank?.z ?? tray.back
  const arm = crank?.arm ?? 1
  return [0, 0, z - 0.6 * arm, 1.2 * arm, 1.2 * arm, arm]
}

function motorBox({ motor, fan, shaft }: Layout, stop: PowerStop): Box {
  if (!motor) return [0, 0, 0, shaft.bearingRadius, shaft.bearingRadius, shaft.bearingRadius]
  const r = motor.radius
  if (stop === 'fan' && fan) return [0, 0, fan.z, fan.radius, fan.radius, fan.depth]
  const [back, front] =
    stop === 'armature'
      ? [motor.armatureBack, motor.armatureFront]
      : [motor.commutatorBack, motor.commutatorFront]
  return [0, 0, (back + front) / 2, stop === 'commutator' ? 0.8 * r : r, 0.6 * r, (front - back) / 2]
}

function gearBox({ gears, output, shaft }: Layout, stop: 'worm' | 'wheels' | 'outputs'): Box {
  if (stop === 'worm') return [0, 0, 0, 2 * gears.tipRadiusWorm, gears.tipRadiusWorm, shaft.frontBearing]
  const around = stop === 'wheels' ? gears.outsideRadiusWheel : output.brushRadius
  const high = stop === 'wheels' ? gears.wheelWidth : output.brushHeight
  return [0, stop === 'wheels' ? 0 : output.brush, 0, gears.centreDistance + around, high, around]
}

function litBox(layout: Layout, stop: PowerStop): Box {
  if (stop === 'worm' || stop === 'wheels' || stop === 'outputs') return gearBox(layout, stop)
  if (stop === 'brushes' || stop === 'commutator' || stop === 'armature' || stop === 'fan')
    return motorBox(layout, stop)
  const stand = stop === 'socket' ? layout.electric?.battery : layout.electric?.stands[stop]
  return stand ? standBox(stand, layout.case.bottom) : sourceBox(layout)
}

/** Room round what is lit, in its own half sizes and in radii of the front bearing */
const AROUND = 1.1
const MORE = 2

/** What the camera keeps in the frame, so that it is seen where the light stands. */
export function litPoints(layout: Layout, stop: PowerStop): Vector3[] {
  const [x, y, z, ...halves] = litBox(layout, stop)
  const more = MORE * layout.shaft.bearingRadius
  const [w, h, l] = halves.map((half) => AROUND * half + more) as [number, number, number]
  return [-1, 1].flatMap((right) =>
    [-1, 1].flatMap((up) => [-1, 1].map((on) => new Vector3(x + right * w, y + up * h, z + on * l))),
  )
}
