/** Puts a stage into an element: canvas, root, size and frames, apart from what React renders. */
import { createRoot } from '@react-three/fiber'
import type { WebGLRenderer } from 'three'
import { pushesAlong } from './views.ts'
import { createSubstanceMaterials } from '../material/materials.ts'
import { createCameraRig, goToView, movedCamera, refit, standAt } from './camera-rig.ts'
import { applyQuality, bodiesSoon, drawFrame } from './draw-frame.ts'
import { registerElements } from './elements.ts'
import { machineBodies } from './machine-bodies.ts'
import { machineShape } from './machine-shape.ts'
import type { Mounted } from './mounted.ts'
import { attachPointer } from './pointer-control.ts'
import { type Quality, newFrameTimer, pixelRatioOf } from './quality.ts'
import { createCanvas, createRenderer } from './renderer.ts'
import { detailOf, rebuild, show } from './show-scene.tsx'
import { createStageLoop } from './stage-loop.ts'
import type { StageProps } from './stage-props.ts'
import { createTicker, enlist } from './ticker.ts'

export interface MountedStage {
  update(props: StageProps): void
  dispose(): void
}

function chosenQuality(quality: StageProps['quality']): Quality {
  const level = quality === 'auto' ? 'low' : quality
  return { level, pixelRatio: pixelRatioOf(level) }
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
    dispose() {
      stage.mounted = false
      clearTimeout(stage.telling)
      stage.shapes?.dispose()
      for (const release of letGo) release()
      stage.root.unmount()
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
  const wanted = { machine: props.machine, detail: detailOf(quality.level) }
  const bodies = machineBodies(wanted.machine, machineShape(wanted.machine, wanted.detail))
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
    bodies,
    wanted,
    askedAt: null,
    shapes: null,
    quality,
    ceiling: 'high',
    inScene: false,
    pictureShown: false,
    time: 0,
    again: false,
    timer: newFrameTimer(),
    timing: false,
    telling: undefined,
    mounted: true,
    container,
    renderer,
    loop,
    root,
    store,
    ticker: createTicker(
      (elapsed) => drawFrame(stage, elapsed),
      () => bodiesSoon(stage),
      () => ({
        triangles: renderer.info.render.triangles,
        drawCalls: renderer.info.render.calls,
        geometries: renderer.info.memory.geometries,
      }),
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
    wake: () => {
      ticker.wake()
      tellCamera(stage)
    },
  })
  takeLook(stage)
  takeView(stage, true)
  show(stage)
  return [
    enlist(ticker),
    detach,
    () => ticker.stop(),
    () => sizes.disconnect(),
    () => canvas.removeEventListener('webglcontextlost', lost),
  ]
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
  'gearSigns',
  'misplaced',
  'sense',
  'meshSide',
  'support',
  'forceArrows',
  'sparking',
  'partHeat',
  'view',
  'lit',
  'pluggedIn',
  'setting',
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
  rebuild(stage)
  const moved = (['left', 'top', 'right', 'bottom'] as const).some(
    (s) => next.freeArea[s] !== before.freeArea[s],
  )
  if (moved) {
    loop.rig.free = next.freeArea
    refit(loop.rig)
  }
  const lookedElsewhere = takeLook(stage)
  if (next.lit !== before.lit) takeLight(stage)
  const told = next.view.nonce !== before.view.nonce || next.view.name !== before.view.name
  if (told || (lookedElsewhere && loop.rig.atBookmark)) takeView(stage, next.reducedMotion)
}

/** What the close views have to show; true when that is something else than before. */
function takeLook({ loop: { rig }, props }: Mounted): boolean {
  const { gearSigns, machine, sense, meshSide: side, support } = props
  const flanks = gearSigns.compound ? pushesAlong(sense, machine.gearing.hand) : 0
  const forces = gearSigns.forces ? support : null
  const { look, view } = rig
  rig.look = { side, flanks, forces, lit: look.lit }
  if (view === 'mesh') return side !== look.side || flanks !== look.flanks
  return view === 'worm' && forces !== look.forces
}

/** Goes to where the light now stands; once it is out, back to where it was looked from before. */
function takeLight({ loop: { rig }, props }: Mounted): void {
  if (rig.look.lit === null) rig.stood = movedCamera(rig)
  rig.look = { ...rig.look, lit: props.lit }
  goToView(rig, rig.view, props.reducedMotion)
  if (props.lit === null && rig.stood) standAt(rig, rig.stood)
}

/** A view that is asked for leaves the light where it stands. */
function takeView({ loop, props }: Mounted, cut: boolean): void {
  loop.rig.look = { ...loop.rig.look, lit: null }
  const { name, camera } = props.view
  goToView(loop.rig, name, cut)
  if (camera) standAt(loop.rig, camera)
}

/** The camera is told once it has been left alone for a moment [ms]. */
const CAMERA_RESTS = 300

function tellCamera(stage: Mounted): void {
  clearTimeout(stage.telling)
  stage.telling = setTimeout(() => stage.props.onCamera(movedCamera(stage.loop.rig)), CAMERA_RESTS)
}

function resize(stage: Mounted): void {
  const { rig } = stage.loop
  const { clientWidth: width, clientHeight: height } = stage.container
  if (width === 0 || height === 0 || (width === rig.width && height === rig.height)) return
  rig.width = width
  rig.height = height
  stage.store.getState().setSize(width, height)
  refit(rig)
  drawFrame(stage, 0)
}
