/** What is on screen and how: changed by a click, never undone. Only theme and way outlive the page. */
import { createStore } from 'zustand/vanilla'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Side } from '../../sim/gear/gear-numbers.ts'
import type { PartName } from '../../sim/pose/parts.ts'

export type Way = 'demonstrate' | 'predict' | 'measure' | 'design'
export const WAYS: readonly { readonly way: Way; readonly label: string }[] = [
  { way: 'demonstrate', label: 'Demonstrate' },
  { way: 'predict', label: 'Predict' },
  { way: 'measure', label: 'Measure' },
  { way: 'design', label: 'Design' },
]

/** A camera bookmark. */
export type ViewName = 'gears' | 'top' | 'worm' | 'mesh' | 'motor' | 'commutator' | 'brushes' | 'whole'

/** Where the eye is and what it looks at [mm], and how much it takes in, from the bottom to the top [deg]. */
export interface Camera {
  readonly position: readonly [number, number, number]
  readonly target: readonly [number, number, number]
  readonly field: number
}
export type CaseState = 'closed' | 'clear' | 'off'
export type Theme = 'light' | 'dark'
export type Quality = 'auto' | 'low' | 'medium' | 'high'

/** What stands in the right column; 'figures' are the readings, in Design what follows from the parameters. */
export type PanelName =
  | 'figures'
  | 'waves'
  | 'torque'
  | 'power'
  | 'heat'
  | 'brushes'
  | 'contact'
  | 'forces'
  | 'timing'
  | 'models'

/** Elements on the power's way, from the socket to the outputs; the fan stands beside it. */
export const POWER_STOPS = [
  'socket',
  'transformer',
  'rectifier',
  'capacitor',
  'setting',
  'brushes',
  'commutator',
  'armature',
  'fan',
  'worm',
  'wheels',
  'outputs',
] as const
export type PowerStop = (typeof POWER_STOPS)[number]

/** What is drawn on the stage besides the machine as it is. */
export interface GearSigns {
  readonly contact: boolean
  readonly compound: boolean
  readonly forces: boolean
  readonly timing: boolean
  /** Parts in the tint of their temperature */
  readonly heat: boolean
}
export const NO_SIGNS: GearSigns = {
  contact: false,
  compound: false,
  forces: false,
  timing: false,
  heat: false,
}

/** How far a wheel sits from where it belongs; all 0 is the ideal mesh. */
export interface Misplacement {
  /** Further from the worm [mm] */
  readonly centre: number
  /** Along its own axis, upwards [mm] */
  readonly along: number
  /** Of the worm along its axis, towards the viewer [mm] */
  readonly axial: number
  /** Of the wheel's axis about the line of centres [deg] */
  readonly tilt: number
}
export const IDEAL: Misplacement = { centre: 0, along: 0, axial: 0, tilt: 0 }

/** Where the worm's bearings sit: on both sides of the wheels, or both behind them. */
export type Support = 'between' | 'overhung'

/** Loads of the wheels for which the forces are told: those of the bench, or loads to compare. */
export type ForceLoads = 'bench' | 'equal' | 'unequal' | 'one'

/** A force for the stage to draw. */
export interface ForceArrow {
  /** Where it acts [mm] */
  readonly at: readonly [number, number, number]
  /** [N] */
  readonly vector: readonly [number, number, number]
  readonly label: string
  readonly kind: 'cancels' | 'adds' | 'sum' | 'bearing'
}

/** A moment of a machine's warming that is looked at. */
export interface HeatLook {
  readonly machine: Machine
  /** Since it was switched on [s] */
  readonly seconds: number
  /** [degC] */
  readonly winding: number
  readonly case: number
  /** Of the whole warming, so that one scale holds for all its moments */
  readonly hottest: number
}

export type Sheet = 'none' | 'keys' | 'machines' | 'problems' | 'lessons' | 'editor' | 'worksheet' | 'record'

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
  readonly panel: PanelName | 'none'
  /** Whether the panel has most of the window */
  readonly panelWide: boolean
  readonly gearSigns: GearSigns
  /** Signs that stay on the stage when their panel is left. */
  readonly keptSigns: readonly (keyof GearSigns)[]
  /** The mesh that is looked at closely */
  readonly meshSide: Side
  readonly misplaced: Misplacement
  readonly support: Support
  readonly forceLoads: ForceLoads
  readonly forceArrows: readonly ForceArrow[]
  /** Where the light on the power's way stands; null while it is out */
  readonly lit: PowerStop | null
  /** Whether sparks are drawn at the brushes, and how hard they spark now; 0 is not at all */
  readonly sparks: boolean
  readonly sparking: number
  /** What the tint of the parts shows; null is as warm as the bench says */
  readonly heatLook: HeatLook | null
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
    panel: 'figures',
    panelWide: false,
    gearSigns: NO_SIGNS,
    keptSigns: [],
    meshSide: 'right',
    misplaced: IDEAL,
    support: 'between',
    forceLoads: 'bench',
    forceArrows: [],
    lit: null,
    sparks: true,
    sparking: 0,
    heatLook: null,
    sheet: 'none',
    singleKeys: true,
    pictureReady: false,
  }))
