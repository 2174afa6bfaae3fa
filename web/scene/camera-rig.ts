/** The camera: bookmarks, orbit and zoom, and the shift that centres the machine in what other things leave free. */
import { PerspectiveCamera, Vector3 } from 'three'
import type { Layout } from '../../sim/pose/layout.ts'
import { fitPoints } from './fit-points.ts'
import type { FreeArea } from './stage-props.ts'
import type { Camera, ViewName } from '../store/view.ts'
import { type Look, NOTHING_SPECIAL, bookmarkOf } from './views.ts'

interface Place {
  readonly target: Vector3
  yaw: number
  elevation: number
  distance: number
}

export interface CameraRig {
  readonly camera: PerspectiveCamera
  readonly now: Place
  readonly from: Place
  readonly to: Place
  /** Distance at which the bookmark just fits */
  fitted: number
  view: ViewName
  look: Look
  /** False once a person has moved the camera. */
  atBookmark: boolean
  /** 0 to 1 on the way to a bookmark; 1 is there */
  progress: number
  width: number
  height: number
  free: FreeArea
  layout: Layout
  /** Where a person had put the camera before the light was followed */
  stood: Camera | null
}

const FIELD = 26
const MOVE_SECONDS = 0.5
const MARGIN = 0.975
const NEAREST = 0.3
const FURTHEST = 2.4
const HIGHEST = (89 * Math.PI) / 180
const RADIANS = Math.PI / 180

const newPlace = (): Place => ({ target: new Vector3(), yaw: 0, elevation: 0, distance: 1 })

export function createCameraRig(layout: Layout, free: FreeArea): CameraRig {
  const camera = new PerspectiveCamera(FIELD, 1, 1, 10000)
  Object.assign(camera, { manual: true })
  return {
    camera,
    now: newPlace(),
    from: newPlace(),
    to: newPlace(),
    fitted: 1,
    view: 'gears',
    look: NOTHING_SPECIAL,
    atBookmark: true,
    progress: 1,
    width: 1,
    height: 1,
    free,
    layout,
    stood: null,
  }
}

function copyPlace(out: Place, from: Place): void {
  out.target.copy(from.target)
  out.yaw = from.yaw
  out.elevation = from.elevation
  out.distance = from.distance
}

const freeWidth = (rig: CameraRig): number => Math.max(80, rig.width - rig.free.left - rig.free.right)
const freeHeight = (rig: CameraRig): number => Math.max(80, rig.height - rig.free.top - rig.free.bottom)

/** Sets target and distance of `place` so that all points stand in the free area, seen along its yaw and elevation. */
function fit(rig: CameraRig, place: Place, points: readonly Vector3[]): void {
  const focal = rig.height / 2 / Math.tan((FIELD / 2) * RADIANS)
  const halfWidth = (MARGIN * freeWidth(rig)) / 2 / focal
  const halfHeight = (MARGIN * freeHeight(rig)) / 2 / focal
  const back = direction(new Vector3(), place)
  const right = new Vector3(Math.cos(place.yaw), 0, -Math.sin(place.yaw))
  const up = new Vector3().crossVectors(back, right)
  const target = points.reduce((sum, p) => sum.add(p), new Vector3()).divideScalar(points.length)
  const offset = new Vector3()
  let distance = 1
  for (let round = 0; round < 8; round++) {
    const bounds = [Infinity, -Infinity, Infinity, -Infinity] as [number, number, number, number]
    let needed = 1
    for (const point of points) {
      offset.subVectors(point, target)
      const near = offset.dot(back)
      const [x, y] = [offset.dot(right), offset.dot(up)]
      needed = Math.max(needed, near + Math.abs(x) / halfWidth, near + Math.abs(y) / halfHeight)
    }
    distance = needed
    for (const point of points) {
      offset.subVectors(point, target)
      const depth = distance - offset.dot(back)
      const [x, y] = [offset.dot(right) / depth, offset.dot(up) / depth]
      bounds[0] = Math.min(bounds[0], x)
      bounds[1] = Math.max(bounds[1], x)
      bounds[2] = Math.min(bounds[2], y)
      bounds[3] = Math.max(bounds[3], y)
    }
    target.addScaledVector(right, ((bounds[0] + bounds[1]) / 2) * distance)
    target.addScaledVector(up, ((bounds[2] + bounds[3]) / 2) * distance)
  }
  place.target.copy(target)
  place.distance = distance
}

/** Whether it stands, or goes, so near to the gears that what shows and tells the turns would be in the way. */
export const isClose = ({ atBookmark, view, look }: CameraRig): boolean =>
  atBookmark &&
  look.lit === null &&
  (view === 'mesh' || view === 'commutator' || (view === 'worm' && look.forces !== null))

/** Unit vector from the target to the camera. */
function direction(out: Vector3, { yaw, elevation }: Place): Vector3 {
  const level = Math.cos(elevation)
  return out.set(level * Math.sin(yaw), Math.sin(elevation), level * Math.cos(yaw))
}

/** Aims at a bookmark; `cut` goes there at once. */
export function goToView(rig: CameraRig, view: ViewName, cut: boolean): void {
  const bookmark = bookmarkOf(view, rig.look)
  if (bookmark === undefined) return
  rig.view = view
  rig.atBookmark = true
  rig.to.yaw = bookmark.yaw * RADIANS
  rig.to.elevation = bookmark.elevation * RADIANS
  fit(rig, rig.to, fitPoints(rig.layout, bookmark.subject, rig.look))
  rig.fitted = rig.to.distance
  copyPlace(rig.from, rig.now)
  rig.from.yaw = rig.to.yaw + shortWay(rig.from.yaw - rig.to.yaw)
  rig.progress = cut ? 1 : 0
  if (cut) copyPlace(rig.now, rig.to)
  placeCamera(rig)
}

/** Stands exactly where a camera stood before. */
export function standAt(rig: CameraRig, { position, target }: Camera): void {
  const { now } = rig
  const back = new Vector3(...position).sub(now.target.set(...target))
  rig.atBookmark = false
  rig.progress = 1
  now.distance = Math.max(1, back.length())
  now.yaw = Math.atan2(back.x, back.z)
  now.elevation = Math.asin(Math.min(1, Math.max(-1, back.y / now.distance)))
  placeCamera(rig)
}

/** Where a person has put the camera; null while it stands at its bookmark. */
export function movedCamera({ atBookmark, camera, now }: CameraRig): Camera | null {
  if (atBookmark) return null
  const rounded = ({ x, y, z }: Vector3): [number, number, number] => [tenth(x), tenth(y), tenth(z)]
  return { position: rounded(camera.position), target: rounded(now.target), field: FIELD }
}

const tenth = (length: number): number => Math.round(10 * length) / 10

const shortWay = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI))

/** After a change of size, free area or machine: the bookmark again, or the same look at the new middle. */
export function refit(rig: CameraRig): void {
  if (rig.atBookmark) goToView(rig, rig.view, true)
  else placeCamera(rig)
}

/** True while the camera is on its way. */
export function moveCamera(rig: CameraRig, elapsed: number): boolean {
  if (rig.progress >= 1) return false
  rig.progress = Math.min(1, rig.progress + elapsed / MOVE_SECONDS)
  const t = 1 - (1 - rig.progress) ** 3
  const { now, from, to } = rig
  now.target.lerpVectors(from.target, to.target, t)
  now.yaw = from.yaw + (to.yaw - from.yaw) * t
  now.elevation = from.elevation + (to.elevation - from.elevation) * t
  now.distance = from.distance * (to.distance / from.distance) ** t
  placeCamera(rig)
  return true
}

/** Turns round the machine [rad], never over the top, never under the floor. */
export function orbit(rig: CameraRig, yaw: number, elevation: number): void {
  rig.atBookmark = false
  rig.progress = 1
  rig.now.yaw += yaw
  rig.now.elevation = Math.min(HIGHEST, Math.max(lowestElevation(rig), rig.now.elevation + elevation))
  placeCamera(rig)
}

/** Elevation at which the camera would lie on the floor; the ratio is clamped because the floor can be out of reach. */
function lowestElevation({ now, layout }: CameraRig): number {
  const above = layout.floor + 0.02 * layout.overallLength - now.target.y
  return Math.asin(Math.min(0, Math.max(-1, above / now.distance)))
}

export function zoom(rig: CameraRig, factor: number): void {
  rig.atBookmark = false
  rig.progress = 1
  rig.now.distance = Math.min(
    FURTHEST * rig.fitted,
    Math.max(NEAREST * rig.fitted, rig.now.distance * factor),
  )
  orbit(rig, 0, 0)
}

/** How far behind the target things are still drawn, in distances. */
const DEPTH = 4

/** Puts the camera where the rig says, looking past whatever covers the canvas. */
function placeCamera(rig: CameraRig): void {
  const { camera, now, width, height, free } = rig
  direction(camera.position, now).multiplyScalar(now.distance).add(now.target)
  camera.lookAt(now.target)
  camera.aspect = width / height
  camera.near = Math.max(1, now.distance / 40)
  camera.far = now.distance * DEPTH + 4 * rig.layout.overallLength
  const right = (free.left - free.right) / 2
  const down = (free.top - free.bottom) / 2
  camera.setViewOffset(width, height, -right, -down, width, height)
  camera.updateMatrixWorld()
}
