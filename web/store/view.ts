/** What is on screen and how: changed by a click, never undone. Only theme and way outlive the page. */
import { createStore } from 'zustand/vanilla'
import type { PartName } from '../../sim/pose/parts.ts'

export type Way = 'demonstrate' | 'predict' | 'measure' | 'design'
export const WAYS: readonly { readonly way: Way; readonly label: string }[] = [
  { way: 'demonstrate', label: 'Demonstrate' },
  { way: 'predict', label: 'Predict' },
  { way: 'measure', label: 'Measure' },
  { way: 'design', label: 'Design' },
]

/** A camera bookmark. */
export type ViewName = 'gears' | 'top' | 'worm' | 'motor' | 'brushes' | 'whole'

/** Where the eye is and what it looks at [mm], and how much it takes in, from the bottom to the top [deg]. */
export interface Camera {
  readonly position: readonly [number, number, number]
  readonly target: readonly [number, number, number]
  readonly field: number
}
export type CaseState = 'closed' | 'clear' | 'off'
export type Theme = 'light' | 'dark'
export type Quality = 'auto' | 'low' | 'medium' | 'high'
export type Sheet = 'none' | 'keys' | 'machines' | 'problems'

export interface View {
  readonly way: Way
  readonly theme: Theme
  readonly large: boolean
  readonly caseState: CaseState
  readonly motorCut: boolean
  /** How far the parts stand apart, 0 to 1. */
  readonly apart: number
  /** The bookmark, or the camera to begin with instead; gone to whenever `nonce` changes. */
  readonly view: { readonly name: ViewName; readonly nonce: number; readonly camera?: Camera | null }
  /** Where a person has moved the camera; null while it stands where the bookmark puts it. */
  readonly camera: Camera | null
  readonly selected: PartName | null
  readonly quality: Quality
  /** What the stage chose by itself, and why. */
  readonly drawn: { readonly level: 'low' | 'medium' | 'high'; readonly slow: boolean }
  /** The drawn elevation instead of the 3D picture, by choice or because there is no WebGL. */
  readonly plan: 'no' | 'chosen' | 'no-webgl' | 'lost'
  readonly withoutLosses: boolean
  readonly readingsOpen: boolean
  readonly sheet: Sheet
  readonly singleKeys: boolean
  readonly pictureReady: boolean
}

export const createView = (theme: Theme) =>
  createStore<View>(() => ({
    way: 'demonstrate',
    theme,
    large: false,
    caseState: 'clear',
    motorCut: true,
    apart: 0,
    view: { name: 'gears', nonce: 0 },
    camera: null,
    selected: null,
    quality: 'auto',
    drawn: { level: 'low', slow: false },
    plan: 'no',
    withoutLosses: false,
    readingsOpen: true,
    sheet: 'none',
    singleKeys: true,
    pictureReady: false,
  }))
