/** Tells the scene what is to be seen. */
import { Scene } from './Scene.tsx'
import type { Detail } from './detail.ts'
import { createShapeClient, openShapeThread } from '../shape-work/shape-client.ts'
import { litStretch } from './lit.ts'
import { machineBodies } from './machine-bodies.ts'
import { machineShape } from './machine-shape.ts'
import type { Mounted } from './mounted.ts'
import { type QualityLevel, SHADOW_MAP } from './quality.ts'

/** Leaves the time from asking for a machine to its being in the scene among the page's measures. */
function tellRebuilt(stage: Mounted): void {
  if (stage.askedAt === null) return
  performance.clearMeasures(REBUILD)
  performance.measure(REBUILD, { start: stage.askedAt })
  stage.askedAt = null
}

const REBUILD = 'rebuild'

export const detailOf = (level: QualityLevel): Detail => (level === 'low' ? 'low' : 'high')

/** The picture follows once React has put it into the scene; until then the old one stands. */
export function show(stage: Mounted): void {
  const { loop, props, quality, bodies } = stage
  loop.frame = props.frame
  loop.apartWanted = props.apart
  loop.marks = props.marks
  loop.arrows = props.arrows
  loop.caseState = props.caseState
  loop.reducedMotion = props.reducedMotion
  loop.materials.setLight(props.lit && litStretch(bodies.layout, props.lit))
  stage.root.render(
    <Scene
      loop={loop}
      bodies={bodies}
      theme={props.theme}
      caseState={props.caseState}
      motorCut={props.motorCut}
      selected={props.selected}
      lit={props.lit}
      pluggedIn={props.pluggedIn && props.apart === 0}
      setting={props.setting}
      shadowMap={SHADOW_MAP[quality.level]}
      gearSigns={props.gearSigns}
      misplaced={props.misplaced}
      sense={props.sense}
      support={props.support}
      forceArrows={props.forceArrows}
      sparking={props.sparking}
      partHeat={props.partHeat}
      wake={stage.ticker.wake}
      onFrame={(again) => void (stage.again = again)}
      onCommit={() => {
        stage.inScene = true
        if (bodies.machine === stage.wanted.machine) tellRebuilt(stage)
        loop.shadowDue = true
        stage.ticker.wake()
      }}
    />,
  )
}

/**
 * Asks for other geometry when the machine or its detail is another; the old picture stands until it is there. A
 * whole rebuild is above 8 ms the first time and on slow processors. Worm and wheels are a third of it and the other
 * parts, whose sizes follow theirs, the rest, so all of it is worked out in the other thread, and always: two ways
 * would answer out of order.
 */
export function rebuild(stage: Mounted): void {
  const { machine } = stage.props
  const detail = detailOf(stage.quality.level)
  if (stage.wanted.machine === machine && stage.wanted.detail === detail) return show(stage)
  stage.wanted = { machine, detail }
  stage.askedAt = performance.now()
  if (stage.shapes !== null) return stage.shapes.ask(stage.wanted)
  stage.bodies = machineBodies(machine, machineShape(machine, detail))
  show(stage)
}

/** Times that the other thread makes the first shape again, so that its code is compiled before it is needed. */
const WARM_UPS = 8

/** From the first picture on shapes come from the other thread. */
export function openShapes(stage: Mounted): void {
  const thread = openShapeThread()
  let warmUps = thread === null ? 0 : WARM_UPS
  stage.shapes = createShapeClient(thread, ({ machine, detail }, shape) => {
    if (warmUps-- > 0 && machine === stage.wanted.machine) stage.shapes?.ask(stage.wanted)
    if (machine === stage.bodies.machine && detail === stage.bodies.detail) return
    stage.bodies = machineBodies(machine, shape)
    show(stage)
  })
  if (thread !== null) stage.shapes.ask(stage.wanted)
}
