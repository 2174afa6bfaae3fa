/** What a pointer is over: rays against a few plain solids that follow the poses, not against the drawn ones. */
import {
  BoxGeometry,
  type BufferGeometry,
  type Camera,
  CylinderGeometry,
  Mesh,
  Raycaster,
  type Vector2,
  type Vector3,
} from 'three'
import type { Layout } from '../../sim/pose/layout.ts'
import { standsIn } from '../../sim/pose/electric-layout.ts'
import { PART_NAMES, type PartName } from '../../sim/pose/parts.ts'
import { POSE_STRIDE } from '../../sim/pose/pose.ts'
import type { CaseState } from './stage-props.ts'

interface Proxy {
  readonly part: PartName
  readonly mesh: Mesh
}

export interface Proxies {
  readonly list: readonly Proxy[]
  readonly ray: Raycaster
}

export interface Hit {
  readonly part: PartName
  readonly point: Vector3
}

const alongZ = (radius: number, back: number, front: number): BufferGeometry =>
  new CylinderGeometry(radius, radius, front - back, 16)
    .rotateX(Math.PI / 2)
    .translate(0, 0, (front + back) / 2)

const alongY = (radius: number, height: number): BufferGeometry =>
  new CylinderGeometry(radius, radius, height, 20)

export function createProxies(layout: Layout): Proxies {
  const { gears, shaft, motor, fan, crank, output, tray } = layout
  const proxies: Proxy[] = []
  const add = (part: PartName, geometry: BufferGeometry) => proxies.push({ part, mesh: new Mesh(geometry) })
  add('rotor', alongZ(gears.tipRadiusWorm, -gears.threadLength / 2, gears.threadLength / 2))
  add('rotor', alongZ(shaft.collarRadius, shaft.collar - shaft.collarWidth, shaft.front))
  for (const [part, z] of [
    ['frontBearing', shaft.frontBearing] as const,
    ['rearBearing', shaft.rearBearing] as const,
  ]) {
    add(part, alongZ(1.22 * shaft.bearingRadius, z - shaft.bearingWidth / 2, z + shaft.bearingWidth / 2))
  }
  for (const part of ['leftWheel', 'rightWheel'] as const) {
    add(part, alongY(gears.outsideRadiusWheel, layout.wheel.faceWidth))
    add(part, alongY(2 * output.shaftRadius, 2 * output.shaftTop))
  }
  for (const part of ['leftBrush', 'rightBrush'] as const)
    add(part, alongY(0.9 * output.brushRadius, output.brushHeight))
  const width = 2 * tray.halfWidth
  const long = tray.front - tray.back
  const middle = (tray.front + tray.back) / 2
  add(
    'tray',
    new BoxGeometry(width, tray.thickness, long).translate(0, tray.top - tray.thickness / 2, middle),
  )
  const height = layout.case.top - layout.case.bottom
  add('case', new BoxGeometry(width, height, long).translate(0, layout.case.bottom + height / 2, middle))
  if (motor !== null) {
    add('motor', alongZ(motor.radius, motor.back, motor.armatureFront))
    const reach = 2.3 * motor.radius
    const length = motor.commutatorFront - motor.commutatorBack
    const bar = new BoxGeometry(reach, motor.commutatorRadius, length)
    add('brushGear', bar.translate(0, 0, (motor.commutatorFront + motor.commutatorBack) / 2))
  }
  if (fan !== null) add('fan', alongZ(fan.radius, fan.z - fan.depth / 2, fan.z + fan.depth / 2))
  if (crank !== null)
    add('crank', new BoxGeometry(crank.arm, 2.4 * crank.arm, crank.arm).translate(0, crank.arm / 2, crank.z))
  for (const { part, stand } of standsIn(layout.electric)) {
    const solid = new BoxGeometry(stand.width, stand.height, stand.length)
    add(part, solid.translate(stand.x, layout.case.bottom + stand.height / 2, stand.z))
  }
  const plug = layout.electric?.plug
  if (plug) {
    const thick = 0.7 * plug.length
    const solid = new BoxGeometry(thick, thick, 1.6 * plug.length)
    add('plug', solid.translate(plug.x, plug.y, plug.z - 0.2 * plug.length))
  }
  return { list: proxies, ray: new Raycaster() }
}

/** The nearest part under a point of the canvas (x, y in -1..1); a clear or absent case is not in the way. */
export function partUnder(
  { list, ray }: Proxies,
  poses: Float32Array,
  caseState: CaseState,
  at: Vector2,
  camera: Camera,
): Hit | null {
  ray.setFromCamera(at, camera)
  let nearest: Hit | null = null
  let distance = Infinity
  for (const { part, mesh } of list) {
    if (part === 'case' && caseState !== 'closed') continue
    const offset = PART_NAMES.indexOf(part) * POSE_STRIDE
    mesh.position.fromArray(poses, offset)
    mesh.quaternion.fromArray(poses, offset + 3)
    mesh.updateMatrixWorld()
    const hit = ray.intersectObject(mesh, false)[0]
    if (hit === undefined || hit.distance >= distance) continue
    distance = hit.distance
    nearest = { part, point: hit.point }
  }
  return nearest
}

export function disposeProxies({ list }: Proxies): void {
  for (const { mesh } of list) mesh.geometry.dispose()
}
