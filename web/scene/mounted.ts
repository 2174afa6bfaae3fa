/** What a mounted stage consists of. */
import type { ReconcilerRoot, RootStore } from '@react-three/fiber'
import type { WebGLRenderer } from 'three'
import type { ShapeClient, ShapeRequest } from '../shape-work/shape-client.ts'
import type { MachineBodies } from './machine-bodies.ts'
import type { FrameTimer, Quality, QualityLevel } from './quality.ts'
import type { StageLoop } from './stage-loop.ts'
import type { StageProps } from './stage-props.ts'
import type { Ticker } from './ticker.ts'

export interface Mounted {
  props: StageProps
  /** What is to be seen; the loop follows once it is in the scene. */
  bodies: MachineBodies
  /** What was last asked for; the bodies stand until it is there. */
  wanted: ShapeRequest
  /** When that was, until it is in the scene [ms] */
  askedAt: number | null
  /** Null until the first picture is up. */
  shapes: ShapeClient | null
  quality: Quality
  ceiling: QualityLevel
  /** The scene holds the machine. */
  inScene: boolean
  pictureShown: boolean
  /** Time that the frames have taken together [s] */
  time: number
  /** The last frame said that another must follow. */
  again: boolean
  /** Waiting to tell where a person has put the camera. */
  telling: ReturnType<typeof setTimeout> | undefined
  readonly timer: FrameTimer
  /** A picture is under way whose cost will be told. */
  timing: boolean
  /** False once it has been let go. */
  mounted: boolean
  readonly container: HTMLElement
  readonly renderer: WebGLRenderer
  readonly loop: StageLoop
  readonly root: ReconcilerRoot<HTMLCanvasElement>
  readonly store: RootStore
  ticker: Ticker
}
