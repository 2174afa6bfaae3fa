/** Where the labels of parts point to, on the canvas. */
import { type PerspectiveCamera, Vector3 } from 'three'
import type { Layout } from '../../sim/pose/layout.ts'
import { standsIn } from '../../sim/pose/electric-layout.ts'
import { PART_NAMES, type PartName } from '../../sim/pose/parts.ts'
import { POSE_STRIDE } from '../../sim/pose/pose.ts'
import type { AnchorName, StageFrame } from './stage-props.ts'

export interface AnchorPoint {
  readonly name: AnchorName
  /** Whose way apart it shares; it does not turn with the part. */
  readonly pose: number
  /** Where it is, from the origin of that part [mm] */
  readonly offset: Vector3
}

export function anchorPoints(layout: Layout): readonly AnchorPoint[] {
  const { gears, shaft, motor, fan, crank, output, tray, wheel } = layout
  const points: AnchorPoint[] = []
  const add = (name: AnchorName, part: PartName, x: number, y: number, z: number) =>
    points.push({ name, pose: PART_NAMES.indexOf(part) * POSE_STRIDE, offset: new Vector3(x, y, z) })
  const rim = 0.78 * gears.outsideRadiusWheel
  add('worm', 'rotor', 0, 0, shaft.front)
  add('rotor', 'rotor', 0, gears.tipRadiusWorm, 0)
  add('leftWheel', 'leftWheel', -rim, wheel.faceWidth / 2, 0.3 * rim)
  add('rightWheel', 'rightWheel', rim, wheel.faceWidth / 2, 0.3 * rim)
  add('leftBrush', 'leftBrush', -output.brushRadius, 0, 0)
  add('rightBrush', 'rightBrush', output.brushRadius, 0, 0)
  add('frontBearing', 'frontBearing', 0, shaft.bearingRadius, shaft.frontBearing)
  add('rearBearing', 'rearBearing', 0, shaft.bearingRadius, shaft.rearBearing)
  add('tray', 'tray', tray.postX, tray.top, tray.postFront)
  add('case', 'case', -tray.halfWidth, layout.case.top, tray.back + tray.corner)
  if (motor !== null) {
    add('motor', 'motor', 0.6 * motor.radius, 0.8 * motor.radius, (motor.front + motor.back) / 2)
    add('brushGear', 'brushGear', motor.radius, 0, (motor.commutatorFront + motor.commutatorBack) / 2)
  }
  if (fan !== null) add('fan', 'fan', 0, 0.9 * fan.radius, fan.z)
  if (crank !== null) add('crank', 'crank', 0, 0, crank.z)
  for (const { part, stand } of standsIn(layout.electric))
    add(part, part, stand.x, layout.case.bottom + stand.height, stand.z)
  const plug = layout.electric?.plug
  if (plug) add('plug', 'plug', plug.x, plug.y, plug.z - plug.length / 2)
  return points
}

export function prepareAnchors(frame: StageFrame, points: readonly AnchorPoint[]): void {
  for (const name of Object.keys(frame.anchors) as AnchorName[]) {
    const anchor = frame.anchors[name]
    if (anchor !== undefined) anchor.visible = false
  }
  for (const { name } of points) frame.anchors[name] ??= { x: 0, y: 0, visible: false }
}

export function writeAnchors(
  frame: StageFrame,
  points: readonly AnchorPoint[],
  poses: Float32Array,
  camera: PerspectiveCamera,
  width: number,
  height: number,
  scratch: Vector3,
): void {
  for (let i = 0; i < points.length; i++) {
    const point = points[i]
    if (point === undefined) continue
    const anchor = frame.anchors[point.name]
    if (anchor === undefined) continue
    scratch.fromArray(poses, point.pose).add(point.offset).project(camera)
    anchor.x = ((scratch.x + 1) / 2) * width
    anchor.y = ((1 - scratch.y) / 2) * height
    anchor.visible = Math.abs(scratch.x) < 1 && Math.abs(scratch.y) < 1
  }
}
