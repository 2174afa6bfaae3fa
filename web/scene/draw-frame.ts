/** One picture: drawn, timed now and then, and judged by what it cost. */
import type { Mounted } from './mounted.ts'
import { type QualityLevel, nextQuality, restartTimer, takeFrameTime, timesThisFrame } from './quality.ts'
import { finishDrawing } from './renderer.ts'
import { detailOf, rebuild, show } from './show-scene.tsx'

/** Draws one frame. True when another one must follow. */
export function drawFrame(stage: Mounted, elapsed: number): boolean {
  if (!stage.inScene) return false
  stage.time += elapsed
  const timed = timesThisFrame(stage.timer)
  const began = performance.now()
  stage.store.getState().advance(stage.time)
  if (timed) {
    finishDrawing(stage.renderer, stage.pixel)
    const cost = takeFrameTime(stage.timer, performance.now() - began)
    if (cost !== null) judge(stage, cost)
  }
  if (!stage.pictureShown) {
    stage.pictureShown = true
    stage.props.onFirstPicture()
  }
  return stage.again || stage.timer.due > 0
}

const ORDER: readonly QualityLevel[] = ['low', 'medium', 'high']

/** `cost` - mean time of the last timed frames [ms]. A chosen low quality may still lower its resolution. */
function judge(stage: Mounted, cost: number): void {
  const { quality } = stage
  const chosen = stage.props.quality
  if (chosen === 'medium' || chosen === 'high') return
  const next = nextQuality(quality, cost, chosen === 'low' ? 'low' : stage.ceiling, devicePixelRatio)
  if (next === quality) return
  const slower = ORDER.indexOf(next.level) < ORDER.indexOf(quality.level)
  if (slower) stage.ceiling = next.level
  stage.quality = next
  applyQuality(stage, slower || next.pixelRatio < quality.pixelRatio ? 'slow' : 'chosen')
}

export function applyQuality(stage: Mounted, why: 'slow' | 'chosen'): void {
  const { quality, bodies } = stage
  stage.store.getState().setDpr(quality.pixelRatio)
  restartTimer(stage.timer)
  if (detailOf(quality.level) === bodies.detail) show(stage)
  else rebuild(stage)
  stage.props.onQuality(quality.level, why)
}
