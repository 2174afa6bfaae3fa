/**
 * The stage's fast lane: one plain object, and the function that makes one picture. Frames are asked for; when
 * nothing moves none is drawn.
 */
import { Vector3, type WebGLRenderer } from 'three'
import { type PosePlan, newPoses, posePlan, writePoses } from '../../sim/pose/pose.ts'
import type { SubstanceMaterials } from '../material/materials.ts'
import { type AnchorPoint, anchorPoints, prepareAnchors, writeAnchors } from './anchors.ts'
import { type CameraRig, isClose, moveCamera, refit } from './camera-rig.ts'
import { type Landing, followLanding, newLanding, swell } from './landing.ts'
import { showsSense } from './lit.ts'
import type { MachineBodies } from './machine-bodies.ts'
import { type MovingParts, applyPoses, newMovingParts, showMotion, showPointers } from './moving-parts.ts'
import { type Proxies, createProxies, disposeProxies } from './proxies.ts'
import type { Sign } from './sign.ts'
import type { CaseState, StageFrame } from './stage-props.ts'

export interface StageLoop {
  frame: StageFrame
  bodies: MachineBodies
  readonly poses: Float32Array
  plan: PosePlan
  readonly parts: MovingParts
  /** What is drawn over the gears. */
  readonly signs: Sign[]
  readonly rig: CameraRig
  readonly materials: SubstanceMaterials
  readonly renderer: WebGLRenderer
  proxies: Proxies
  anchors: readonly AnchorPoint[]
  /** How far apart the parts stand, and should stand. */
  apart: number
  apartWanted: number
  marks: boolean
  arrows: boolean
  caseState: CaseState
  reducedMotion: boolean
  readonly landing: Landing
  /** Mean time between frames while it runs [s] */
  interval: number
  /** The poses that the shadow map was last drawn for. */
  readonly shadowed: Float32Array
  /** Something other than a pose changed since the last shadow. */
  shadowDue: boolean
  readonly scratch: Vector3
}

/** From together to all apart, one part after the other [s] */
const APART_SECONDS = 1.8
const DISPLAY_INTERVAL = 1 / 60

export function createStageLoop(
  frame: StageFrame,
  bodies: MachineBodies,
  rig: CameraRig,
  materials: SubstanceMaterials,
  renderer: WebGLRenderer,
): StageLoop {
  const anchors = anchorPoints(bodies.layout)
  prepareAnchors(frame, anchors)
  return {
    frame,
    bodies,
    poses: newPoses(),
    plan: posePlan(bodies.layout),
    parts: newMovingParts(),
    signs: [],
    rig,
    materials,
    renderer,
    proxies: createProxies(bodies.layout),
    anchors,
    apart: 0,
    apartWanted: 0,
    marks: true,
    arrows: true,
    caseState: 'clear',
    reducedMotion: false,
    landing: newLanding(),
    interval: DISPLAY_INTERVAL,
    shadowed: newPoses(),
    shadowDue: true,
    scratch: new Vector3(),
  }
}

/** Follows the scene to another machine, or to another detail of it. */
export function changeBodies(loop: StageLoop, bodies: MachineBodies): void {
  if (bodies === loop.bodies) return
  disposeProxies(loop.proxies)
  const sameMachine = bodies.machine === loop.bodies.machine
  loop.bodies = bodies
  loop.rig.layout = bodies.layout
  loop.plan = posePlan(bodies.layout)
  loop.proxies = createProxies(bodies.layout)
  loop.anchors = anchorPoints(bodies.layout)
  prepareAnchors(loop.frame, loop.anchors)
  if (!sameMachine) refit(loop.rig)
}

function moveApart(loop: StageLoop, elapsed: number): boolean {
  const rest = loop.apartWanted - loop.apart
  if (rest === 0) return false
  const most = loop.reducedMotion ? Infinity : elapsed / APART_SECONDS
  loop.apart = Math.abs(rest) <= most ? loop.apartWanted : loop.apart + Math.sign(rest) * most
  return true
}

/** A long gap is a pause and not a slow frame, so it does not count. */
function noteInterval(loop: StageLoop, elapsed: number): void {
  if (elapsed <= 0 || elapsed > 1) return
  loop.interval += 0.2 * (Math.max(elapsed, 1 / 240) - loop.interval)
}

/** The shadow is drawn again only when something that casts it has moved. */
function updateShadow(loop: StageLoop): void {
  const { poses, shadowed } = loop
  let moved = loop.shadowDue
  for (let i = 0; i < poses.length; i++) {
    if (poses[i] !== shadowed[i]) moved = true
  }
  if (!moved) return
  shadowed.set(poses)
  loop.shadowDue = false
  loop.renderer.shadowMap.needsUpdate = true
}

/** Advances, places and shows everything for one picture; allocates nothing. True when another one must follow. */
export function runStageFrame(loop: StageLoop, elapsed: number): boolean {
  const { frame, poses, parts, rig, bodies } = loop
  frame.advance(elapsed)
  noteInterval(loop, elapsed)
  const movingApart = moveApart(loop, elapsed)
  const movingCamera = moveCamera(rig, elapsed)
  writePoses(poses, loop.plan, frame.turns, loop.apart, frame.play)
  applyPoses(parts, poses)
  const speed = frame.wormTurnsPerSecond
  const turned = speed * loop.interval
  const close = isClose(rig)
  const open = loop.apart === 0 && loop.caseState !== 'closed'
  const arrows = loop.arrows && open && !close && showsSense(rig.look.lit)
  showPointers(parts, !close)
  const fast = showMotion(parts, bodies.layout, turned, frame.sense, loop.marks, arrows)
  loop.materials.setStripe(loop.marks && !fast)
  for (let i = 0; i < loop.signs.length; i++) loop.signs[i]!.paint(loop)
  writeAnchors(frame, loop.anchors, poses, rig.camera, rig.width, rig.height, loop.scratch)
  frame.placed()
  updateShadow(loop)
  const { starts, teeth } = bodies.layout
  const swollen = followLanding(loop.landing, frame.turns, starts, teeth, elapsed) && !loop.reducedMotion
  if (!loop.reducedMotion) swell(loop.landing, parts.pointers.left, parts.pointers.right)
  return frame.needsFrame || movingApart || movingCamera || swollen
}
