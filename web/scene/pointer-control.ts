/** Mouse and touch on the canvas: orbit, pinch and wheel zoom, click on a part, and turning the shaft by hand. */
import { Vector2, Vector3 } from 'three'
import type { PartName } from '../../sim/pose/parts.ts'
import { goToView, orbit, zoom } from './camera-rig.ts'
import { type Hit, partUnder } from './proxies.ts'
import type { StageLoop } from './stage-loop.ts'
import type { HandDrag } from './stage-props.ts'

export interface PointerTold {
  onSelect(part: PartName | null): void
  onHandDrag(drag: HandDrag): void
  wake(): void
}

type Gesture =
  | { readonly kind: 'none' }
  | { readonly kind: 'press'; readonly hit: Hit | null }
  | { readonly kind: 'orbit' }
  | { readonly kind: 'pinch'; span: number }
  | {
      readonly kind: 'turn'
      readonly centre: Vector3
      readonly tangent: Vector2 | null
      turns: number
      angle: number
    }

const CLICK_SLACK = 5
const ORBIT_SPEED = 0.006
const WHEEL_SPEED = 0.0012
const KEY_ANGLE = (6 * Math.PI) / 180
const TURN = 2 * Math.PI
/** Below this cosine between sight and shaft a hand moves across it, not round it. */
const SEEN_ALONG = 0.45

const turnsByHand = (part: PartName | undefined): boolean =>
  part === 'rotor' || part === 'fan' || part === 'crank'

export function attachPointer(canvas: HTMLCanvasElement, loop: StageLoop, told: PointerTold): () => void {
  const down = new Map<number, Vector2>()
  let gesture: Gesture = { kind: 'none' }
  let pressed = new Vector2()

  const place = (event: { clientX: number; clientY: number }): Vector2 => {
    const box = canvas.getBoundingClientRect()
    return new Vector2(event.clientX - box.left, event.clientY - box.top)
  }
  const hitAt = (at: Vector2): Hit | null => {
    const { rig } = loop
    const ndc = new Vector2((2 * at.x) / rig.width - 1, 1 - (2 * at.y) / rig.height)
    return partUnder(loop.proxies, loop.poses, loop.caseState, ndc, rig.camera)
  }
  const span = (): number => {
    const [a, b] = [...down.values()]
    return a === undefined || b === undefined ? 1 : Math.max(1, a.distanceTo(b))
  }

  const onDown = (event: PointerEvent) => {
    if (event.button !== 0) return
    canvas.setPointerCapture(event.pointerId)
    const at = place(event)
    down.set(event.pointerId, at)
    if (down.size === 2) {
      endTurn()
      gesture = { kind: 'pinch', span: span() }
    } else {
      pressed = at
      gesture = { kind: 'press', hit: hitAt(at) }
    }
  }
  const onMove = (event: PointerEvent) => {
    const at = place(event)
    const before = down.get(event.pointerId)
    if (before === undefined) return hover(at)
    down.set(event.pointerId, at)
    if (gesture.kind === 'press' && at.distanceTo(pressed) > CLICK_SLACK) begin(gesture.hit, pressed)
    if (gesture.kind === 'orbit')
      orbit(loop.rig, (before.x - at.x) * ORBIT_SPEED, (at.y - before.y) * ORBIT_SPEED)
    if (gesture.kind === 'turn') turn(gesture, before, at)
    if (gesture.kind === 'pinch') {
      const now = span()
      zoom(loop.rig, gesture.span / now)
      gesture.span = now
    }
    if (gesture.kind !== 'press') told.wake()
  }
  const hover = (at: Vector2) => {
    const part = hitAt(at)?.part
    canvas.style.cursor = turnsByHand(part) ? 'grab' : part === undefined ? '' : 'pointer'
  }
  const begin = (hit: Hit | null, from: Vector2) => {
    if (hit === null || !turnsByHand(hit.part) || loop.apart > 0) {
      gesture = { kind: 'orbit' }
      return
    }
    gesture = grasp(loop, hit, from)
    canvas.style.cursor = 'grabbing'
    told.onHandDrag({ phase: 'start', wormTurns: 0 })
  }
  const turn = (held: Extract<Gesture, { kind: 'turn' }>, before: Vector2, at: Vector2) => {
    held.turns += handTurns(loop, held, before, at)
    told.onHandDrag({ phase: 'move', wormTurns: held.turns })
  }
  const endTurn = () => {
    if (gesture.kind === 'turn') told.onHandDrag({ phase: 'end', wormTurns: gesture.turns })
  }
  const onUp = (event: PointerEvent) => {
    if (!down.delete(event.pointerId)) return
    if (gesture.kind === 'press') told.onSelect(gesture.hit?.part ?? null)
    endTurn()
    gesture = { kind: down.size > 0 ? 'orbit' : 'none' }
    told.wake()
  }
  const onWheel = (event: WheelEvent) => {
    event.preventDefault()
    zoom(loop.rig, Math.exp(event.deltaY * WHEEL_SPEED))
    told.wake()
  }
  const onKey = (event: KeyboardEvent) => {
    if (!orbitByKey(loop, event)) return
    event.preventDefault()
    event.stopPropagation()
    told.wake()
  }
  const onDouble = () => {
    goToView(loop.rig, loop.rig.view, loop.reducedMotion)
    told.wake()
  }
  const listeners: readonly (readonly [string, EventListener])[] = [
    ['pointerdown', onDown as EventListener],
    ['pointermove', onMove as EventListener],
    ['pointerup', onUp as EventListener],
    ['pointercancel', onUp as EventListener],
    ['dblclick', onDouble],
    ['keydown', onKey as EventListener],
  ]
  for (const [type, listener] of listeners) canvas.addEventListener(type, listener)
  canvas.addEventListener('wheel', onWheel, { passive: false })
  return () => {
    for (const [type, listener] of listeners) canvas.removeEventListener(type, listener)
    canvas.removeEventListener('wheel', onWheel)
  }
}

/** Where a point of the machine is on the canvas [px]. */
function onCanvas(loop: StageLoop, point: Vector3): Vector2 {
  const { camera, width, height } = loop.rig
  const p = point.clone().project(camera)
  return new Vector2(((p.x + 1) / 2) * width, ((1 - p.y) / 2) * height)
}

const alongShaft = (loop: StageLoop, centre: Vector3): number => {
  const sight = loop.rig.camera.position.clone().sub(centre).normalize()
  return sight.z
}

/** Takes hold of the shaft: round its middle when seen from an end, else across it. */
function grasp(loop: StageLoop, hit: Hit, at: Vector2): Gesture {
  const centre = new Vector3(0, 0, hit.point.z)
  const middle = onCanvas(loop, centre)
  const angle = Math.atan2(middle.y - at.y, at.x - middle.x)
  if (Math.abs(alongShaft(loop, centre)) > SEEN_ALONG)
    return { kind: 'turn', centre, tangent: null, turns: 0, angle }
  const step = 0.01
  const { x, y, z } = hit.point
  const tangent = onCanvas(loop, new Vector3(x - y * step, y + x * step, z))
    .sub(onCanvas(loop, hit.point))
    .divideScalar(step)
  return { kind: 'turn', centre, tangent, turns: 0, angle }
}

/** Turns of the worm for one move of the hand. */
function handTurns(
  loop: StageLoop,
  held: Extract<Gesture, { kind: 'turn' }>,
  before: Vector2,
  at: Vector2,
): number {
  if (held.tangent !== null) {
    const size = Math.max(1, held.tangent.lengthSq())
    return at.clone().sub(before).dot(held.tangent) / size / TURN
  }
  const middle = onCanvas(loop, held.centre)
  const angle = Math.atan2(middle.y - at.y, at.x - middle.x)
  const moved = angle - held.angle
  held.angle = angle
  const nearest = moved - TURN * Math.round(moved / TURN)
  return (Math.sign(alongShaft(loop, held.centre)) * nearest) / TURN
}

/** Shift and arrow keys orbit, plus and minus zoom; true when the key was used. */
function orbitByKey(loop: StageLoop, event: { key: string; shiftKey: boolean }): boolean {
  const { rig } = loop
  if (event.key === '+' || event.key === '=') zoom(rig, 0.9)
  else if (event.key === '-') zoom(rig, 1 / 0.9)
  else if (!event.shiftKey) return false
  else if (event.key === 'ArrowLeft') orbit(rig, -KEY_ANGLE, 0)
  else if (event.key === 'ArrowRight') orbit(rig, KEY_ANGLE, 0)
  else if (event.key === 'ArrowUp') orbit(rig, 0, KEY_ANGLE)
  else if (event.key === 'ArrowDown') orbit(rig, 0, -KEY_ANGLE)
  else return false
  return true
}
