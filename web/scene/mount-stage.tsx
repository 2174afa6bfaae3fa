/** Puts a stage into an element: canvas, root, size, frames and quality, apart from what React renders. */
import { type ReconcilerRoot, type RootStore, createRoot } from '@react-three/fiber'
import type { WebGLRenderer } from 'three'
import { createSubstanceMaterials } from '../material/materials.ts'
import { Scene } from './Scene.tsx'
import { createCameraRig, goToView, refit } from './camera-rig.ts'
import type { Detail } from './detail.ts'
import { registerElements } from './elements.ts'
import { disposeBodies, machineBodies } from './machine-bodies.ts'
import { attachPointer, orbitByKey } from './pointer-control.ts'
import * as Q from './quality.ts'
import { createCanvas, createRenderer, finishDrawing } from './renderer.ts'
import { type StageLoop, changeBodies, createStageLoop } from './stage-loop.ts'
import type { StageProps } from './stage-props.ts'
import { type Ticker, createTicker, enlist } from './ticker.ts'

export interface MountedStage {
  update(props: StageProps): void
  /** True when the key was used. */
  key(event: { key: string; shiftKey: boolean }): boolean
  dispose(): void
}

interface Mounted {
  props: StageProps
  quality: Q.Quality
  ceiling: Q.QualityLevel
  pictureShown: boolean
  /** Time that the frames have taken together [s] */
  time: number
  again: boolean
  readonly timer: Q.FrameTimer
  readonly pixel: Uint8Array
  readonly container: HTMLElement
  readonly renderer: WebGLRenderer
  readonly loop: StageLoop
  readonly root: ReconcilerRoot<HTMLCanvasElement>
  readonly store: RootStore
  ticker: Ticker
}

const detailOf = (level: Q.QualityLevel): Detail => (level === 'low' ? 'low' : 'high')

const chosenQuality = (quality: StageProps['quality']): Q.Quality => {
  const level = quality === 'auto' ? 'low' : quality
  return { level, pixelRatio: Q.pixelRatioOf(level, devicePixelRatio) }
}

export function mountStage(container: HTMLElement, props: StageProps): MountedStage | null {
  const canvas = createCanvas(container)
  const renderer = createRenderer(canvas, props.quality)
  if (renderer === null) {
    canvas.remove()
    props.onNoWebGl()
    return null
  }
  const stage = createStage(container, canvas, renderer, props)
  const letGo = connect(stage, canvas)
  return {
    update: (next) => update(stage, next),
    key(event) {
      const used = orbitByKey(stage.loop, event)
      if (used) stage.ticker.wake()
      return used
    },
    dispose() {
      for (const release of letGo) release()
      stage.root.unmount()
      disposeBodies(stage.loop.bodies)
      stage.loop.materials.dispose()
      renderer.dispose()
      canvas.remove()
    },
  }
}

function createStage(
  container: HTMLElement,
  canvas: HTMLCanvasElement,
  renderer: WebGLRenderer,
  props: StageProps,
): Mounted {
  registerElements()
  const quality = chosenQuality(props.quality)
  const bodies = machineBodies(props.machine, detailOf(quality.level))
  const rig = createCameraRig(bodies.layout, props.freeArea)
  const loop = createStageLoop(props.frame, bodies, rig, createSubstanceMaterials(), renderer)
  const root = createRoot(canvas)
  rig.width = Math.max(1, container.clientWidth)
  rig.height = Math.max(1, container.clientHeight)
  void root.configure({
    gl: renderer,
    camera: rig.camera,
    frameloop: 'never',
    shadows: 'variance',
    flat: true,
    dpr: quality.pixelRatio,
    size: { width: rig.width, height: rig.height, top: 0, left: 0 },
  })
  const store = root.render(null)
  const stage: Mounted = {
    props,
    quality,
    ceiling: 'high',
    pictureShown: false,
    time: 0,
    again: false,
    timer: Q.newFrameTimer(),
    pixel: new Uint8Array(4),
    container,
    renderer,
    loop,
    root,
    store,
    ticker: createTicker(
      (elapsed) => draw(stage, elapsed),
      () => ({ triangles: renderer.info.render.triangles, drawCalls: renderer.info.render.calls }),
    ),
  }
  return stage
}

/** Everything that has to be let go again. */
function connect(stage: Mounted, canvas: HTMLCanvasElement): (() => void)[] {
  const { loop, container, ticker } = stage
  loop.materials.setTheme(stage.props.theme)
  const sizes = new ResizeObserver(() => resize(stage))
  sizes.observe(container)
  const lost = (event: Event) => {
    event.preventDefault()
    stage.props.onContextLost()
  }
  canvas.addEventListener('webglcontextlost', lost)
  const detach = attachPointer(canvas, loop, {
    onSelect: (part) => stage.props.onSelect(part),
    onHandDrag: (drag) => stage.props.onHandDrag(drag),
    wake: () => ticker.wake(),
  })
  goToView(loop.rig, stage.props.view.name, true)
  show(stage)
  return [
    enlist(ticker),
    detach,
    () => ticker.stop(),
    () => sizes.disconnect(),
    () => canvas.removeEventListener('webglcontextlost', lost),
  ]
}

/** Tells the scene what is to be seen, and asks for a frame. */
function show(stage: Mounted): void {
  const { loop, props, quality } = stage
  loop.frame = props.frame
  loop.apartWanted = props.apart
  loop.marks = props.marks
  loop.arrows = props.arrows
  loop.caseState = props.caseState
  loop.reducedMotion = props.reducedMotion
  loop.shadowDue = true
  stage.root.render(
    <Scene
      loop={loop}
      bodies={loop.bodies}
      theme={props.theme}
      caseState={props.caseState}
      motorCut={props.motorCut}
      selected={props.selected}
      shadowMap={Q.SHADOW_MAP[quality.level]}
      onFrame={(again) => void (stage.again = again)}
    />,
  )
  stage.ticker.wake()
}

const SEEN = [
  'machine',
  'theme',
  'caseState',
  'motorCut',
  'apart',
  'marks',
  'arrows',
  'quality',
  'reducedMotion',
  'selected',
  'frame',
  'freeArea',
  'view',
] as const

function update(stage: Mounted, next: StageProps): void {
  const before = stage.props
  const { loop } = stage
  stage.props = next
  if (SEEN.every((name) => next[name] === before[name])) return
  if (next.quality !== before.quality) {
    stage.quality = chosenQuality(next.quality)
    stage.ceiling = 'high'
    applyQuality(stage, 'chosen')
  }
  if (next.theme !== before.theme) loop.materials.setTheme(next.theme)
  if (next.machine !== before.machine) rebuild(stage)
  else show(stage)
  const moved = (['left', 'top', 'right', 'bottom'] as const).some((s) => next.freeArea[s] !== before.freeArea[s])
  if (moved || next.machine !== before.machine) {
    loop.rig.free = next.freeArea
    refit(loop.rig)
  }
  if (next.view.nonce !== before.view.nonce || next.view.name !== before.view.name) {
    goToView(loop.rig, next.view.name, next.reducedMotion)
  }
}

/** New geometry for the machine or its detail; the old one stands until the new one is in the picture. */
function rebuild(stage: Mounted): void {
  const old = stage.loop.bodies
  changeBodies(stage.loop, machineBodies(stage.props.machine, detailOf(stage.quality.level)))
  show(stage)
  setTimeout(() => disposeBodies(old))
}

function resize(stage: Mounted): void {
  const { rig } = stage.loop
  const { clientWidth: width, clientHeight: height } = stage.container
  if (width === 0 || height === 0 || (width === rig.width && height === rig.height)) return
  rig.width = width
  rig.height = height
  stage.store.getState().setSize(width, height)
  refit(rig)
  draw(stage, 0)
}

function applyQuality(stage: Mounted, why: 'slow' | 'chosen'): void {
  const { quality, loop } = stage
  stage.store.getState().setDpr(quality.pixelRatio)
  Q.restartTimer(stage.timer)
  if (detailOf(quality.level) === loop.bodies.detail) show(stage)
  else rebuild(stage)
  stage.props.onQuality(quality.level, why)
}

const ORDER: readonly Q.QualityLevel[] = ['low', 'medium', 'high']

function judge(stage: Mounted, cost: number): void {
  const { quality } = stage
  const chosen = stage.props.quality
  if (chosen === 'medium' || chosen === 'high') return
  const next = Q.nextQuality(quality, cost, chosen === 'low' ? 'low' : stage.ceiling, devicePixelRatio)
  if (next === quality) return
  const slower = ORDER.indexOf(next.level) < ORDER.indexOf(quality.level)
  if (slower) stage.ceiling = next.level
  stage.quality = next
  applyQuality(stage, slower || next.pixelRatio < quality.pixelRatio ? 'slow' : 'chosen')
}

/** Draws one frame. True when another one must follow. */
function draw(stage: Mounted, elapsed: number): boolean {
  stage.time += elapsed
  const timed = Q.timesThisFrame(stage.timer)
  const began = performance.now()
  stage.store.getState().advance(stage.time)
  if (timed) {
    finishDrawing(stage.renderer, stage.pixel)
    const cost = Q.takeFrameTime(stage.timer, performance.now() - began)
    if (cost !== null) judge(stage, cost)
  }
  if (!stage.pictureShown) {
    stage.pictureShown = true
    stage.props.onFirstPicture()
  }
  return stage.again || stage.timer.due > 0
}
