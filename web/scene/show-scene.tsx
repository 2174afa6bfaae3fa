/** Tells the scene what is to be seen. */
import { Scene } from './Scene.tsx'
import type { Detail } from './detail.ts'
import { machineBodies } from './machine-bodies.ts'
import type { Mounted } from './mounted.ts'
import { type QualityLevel, SHADOW_MAP } from './quality.ts'

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
  stage.root.render(
    <Scene
      loop={loop}
      bodies={bodies}
      theme={props.theme}
      caseState={props.caseState}
      motorCut={props.motorCut}
      selected={props.selected}
      shadowMap={SHADOW_MAP[quality.level]}
      onFrame={(again) => void (stage.again = again)}
      onCommit={() => {
        stage.inScene = true
        loop.shadowDue = true
        stage.ticker.wake()
      }}
    />,
  )
}

/** New geometry for the machine or its detail. */
export function rebuild(stage: Mounted): void {
  stage.bodies = machineBodies(stage.props.machine, detailOf(stage.quality.level))
  show(stage)
}
