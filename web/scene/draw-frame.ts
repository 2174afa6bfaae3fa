/** One picture: drawn, timed now and then, and judged by what it cost. */
import type { Mounted } from './mounted.ts'
import { type QualityLevel, nextQuality, restartTimer, takeFrameTime, timesThisFrame } from './quality.ts'
import { openShapes, rebuild } from './show-scene.tsx'
import { whenDrawn } from './when-drawn.ts'

/** How long the old machine is not drawn again when nothing moves and the new one is on its way [ms] */
const SOON = 60

/** Whether the bodies of another machine are about to come into the scene, which draws them then. */
export const bodiesSoon = ({ askedAt, again, props }: Mounted): boolean =>
  askedAt !== null && performance.now() - askedAt < SOON && !again && !props.frame.needsFrame

/** Draws one frame. True when another one must follow. */
export function drawFrame(stage: Mounted, elapsed: number): boolean {
  if (!stage.inScene) return false
  stage.time += elapsed
  const timed = !stage.timing && timesThisFrame(stage.timer)
  const began = performance.now()
  stage.store.getState().advance(stage.time)
  if (timed) time(stage, began)
  if (!stage.pictureShown) {
    stage.pictureShown = true
    stage.props.onFirstPicture()
    openShapes(stage)
  }
  return stage.again
}

/** Learns what the picture cost that was begun at `began`, and asks for more pictures until that is certain. */
function time(stage: Mounted, began: number): void {
  stage.timing = true
  const gl = stage.renderer.getContext() as WebGL2RenderingContext
  whenDrawn(gl, began, (took) => {
    stage.timing = false
    if (!stage.mounted) return
    const cost = takeFrameTime(stage.timer, took)
    if (cost !== null) judge(stage, cost)
    if (stage.timer.due > 0) stage.ticker.wake()
  })
}

const ORDER: readonly QualityLevel[] = ['low', 'medium', 'high']

/** `cost` - mean time of the last timed frames [ms]. A chosen low quality may still lower its resolution. */
function judge(stage: Mounted, cost: number): void {
  const { quality } = stage
  const chosen = stage.props.quality
  if (chosen === 'medium' || chosen === 'high') return
  const next = nextQuality(quality, cost, chosen === 'low' ? 'low' : stage.ceiling)
  if (next === quality) return
  const slower = ORDER.indexOf(next.level) < ORDER.indexOf(quality.level)
  if (slower) stage.ceiling = next.level
  stage.quality = next
  applyQuality(stage, slower || next.pixelRatio < quality.pixelRatio ? 'slow' : 'chosen')
}

export function applyQuality(stage: Mounted, why: 'slow' | 'chosen'): void {
  const { quality } = stage
  stage.store.getState().setDpr(quality.pixelRatio)
  restartTimer(stage.timer)
  rebuild(stage)
  stage.props.onQuality(quality.level, why)
}
