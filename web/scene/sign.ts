/** A sign on the gears: what is drawn, and how it follows the machine. */
import type { Object3D } from 'three'
import type { StageLoop } from './stage-loop.ts'

export interface Sign {
  readonly object: Object3D
  /** Called once a drawn frame, when the parts are where they belong; allocates nothing. */
  paint(loop: StageLoop): void
  dispose(): void
}
