/** How much a picture may cost: it begins cheap, and goes up or down by what a frame really takes. */
export type QualityLevel = 'low' | 'medium' | 'high'

export interface Quality {
  readonly level: QualityLevel
  readonly pixelRatio: number
}

/** Longest time a frame may take before the picture gives something up [ms] */
const TOO_SLOW = 150
/** Below this there is room for the next level [ms] */
const ROOM_FOR_MEDIUM = 16
const ROOM_FOR_HIGH = 12
/** Below this a lowered resolution is raised again; 1.3 times sharper costs at most 1.7 times as much [ms] */
const ROOM_FOR_SHARPER = 60
/** Above this a level that was raised is given back [ms] */
const SMOOTH = 32
const LEAST_RATIO = 0.5

/** Least pixel ratio of each level: above 1 edges are smoothed by drawing larger than the screen. */
const SHARPNESS: Record<QualityLevel, number> = { low: 1, medium: 1.5, high: 2 }

export const pixelRatioOf = (level: QualityLevel): number => SHARPNESS[level]

/** Whether a level draws shadows by a shadow map, and how many pixels wide that is. */
export const SHADOW_MAP: Record<QualityLevel, number> = { low: 0, medium: 1024, high: 2048 }

/**
 * The next quality after frames that took `cost` [ms] each. A level that proved too dear is not tried again:
 * `ceiling` is the highest one still allowed.
 */
export function nextQuality(now: Quality, cost: number, ceiling: QualityLevel): Quality {
  const { level, pixelRatio } = now
  if (level === 'low') {
    if (cost > TOO_SLOW && pixelRatio > LEAST_RATIO) {
      return { level, pixelRatio: Math.max(LEAST_RATIO, pixelRatio * Math.sqrt((0.75 * TOO_SLOW) / cost)) }
    }
    if (cost < ROOM_FOR_SHARPER && pixelRatio < 1) return { level, pixelRatio: Math.min(1, 1.3 * pixelRatio) }
    if (cost < ROOM_FOR_MEDIUM && ceiling !== 'low')
      return { level: 'medium', pixelRatio: pixelRatioOf('medium') }
    return now
  }
  if (cost > SMOOTH) {
    if (pixelRatio > 1) return { level, pixelRatio: 1 }
    const lower = level === 'high' ? 'medium' : 'low'
    return { level: lower, pixelRatio: pixelRatioOf(lower) }
  }
  if (level === 'medium' && cost < ROOM_FOR_HIGH && ceiling === 'high') {
    return { level: 'high', pixelRatio: pixelRatioOf('high') }
  }
  return now
}

/** Frames that are timed before a decision. */
const TIMED = 3

/** Times a few frames after each change, then one now and then. */
export interface FrameTimer {
  /** Frames still to be timed before a decision */
  due: number
  sum: number
  sinceLast: number
}

const SELDOM = 45

export const newFrameTimer = (): FrameTimer => ({ due: TIMED + 1, sum: 0, sinceLast: 0 })

export function restartTimer(timer: FrameTimer): void {
  timer.due = TIMED + 1
  timer.sum = 0
  timer.sinceLast = 0
}

export const timesThisFrame = (timer: FrameTimer): boolean => timer.due > 0 || ++timer.sinceLast >= SELDOM

/** Takes one timed frame [ms]; gives the mean once enough are in, else null. The first one after a change is warm-up. */
export function takeFrameTime(timer: FrameTimer, cost: number): number | null {
  if (timer.due === 0) {
    timer.due = TIMED
    timer.sum = 0
    timer.sinceLast = 0
  }
  timer.due--
  if (timer.due < TIMED) timer.sum += cost
  return timer.due === 0 ? timer.sum / TIMED : null
}
