/** A sign on the gears: what is drawn, and how it follows the machine. */
import type { Object3D } from 'three'
import type { CameraRig } from './camera-rig.ts'
import type { MovingParts } from './moving-parts.ts'
import type { CaseState, StageFrame } from './stage-props.ts'

/** What a sign can follow; the loop of the stage is one. */
export interface Moment {
  readonly frame: StageFrame
  readonly parts: MovingParts
  readonly rig: CameraRig
  readonly apart: number
  readonly caseState: CaseState
  readonly reducedMotion: boolean
}

export interface Sign {
  readonly object: Object3D
  /** Called once a drawn frame, when the parts are where they belong; allocates nothing. */
  paint(moment: Moment): void
  dispose(): void
}
