/** What the stage is told and what it tells: plain values and one mutable object, no stores. */
import type { Play } from '../../sim/drive/play.ts'
import type { WormTurns } from '../../sim/drive/turns.ts'
import type { Side } from '../../sim/gear/gear-numbers.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { PartName } from '../../sim/pose/parts.ts'
import type { Theme } from '../material/substances.ts'
import type { PartHeat } from '../store/part-heat.ts'
import type { QualityLevel } from './quality.ts'
import type { Camera, PowerStop, View } from '../store/view.ts'

export type CaseState = 'closed' | 'clear' | 'off'

/** Pixels at each side of the canvas that other things cover. */
export interface FreeArea {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

export interface HandDrag {
  readonly phase: 'start' | 'move' | 'end'
  /** Signed turns of the worm since the drag began. */
  readonly wormTurns: number
}

/** Where something is on the canvas [px], from its top left corner. */
export interface Anchor {
  x: number
  y: number
  visible: boolean
}

export type AnchorName = 'worm' | PartName

/** Shared with the loop and never rendered from. */
export interface StageFrame {
  /** Called once a drawn frame with the real time since the last one [s], before the parts are placed. */
  advance(elapsed: number): void
  /** Called once a drawn frame, when the parts and the anchors are where they belong. */
  placed(): void
  /** Where the worm is now. */
  readonly turns: WormTurns
  /** Where backlash has left the wheels */
  readonly play: Play
  /** Time of the model [s], and how many times slower than real it is shown */
  readonly modelTime: number
  readonly pace: number
  /** Speed as it is shown, about +z [turn/s]; decides blur arcs and the sense of the arrows. */
  wormTurnsPerSecond: number
  /** Sense about +z in which the worm last turned */
  readonly sense: 1 | -1
  /** False when a picture stays true until something is asked for. */
  needsFrame: boolean
  /** Where the labels of parts belong; written each frame. */
  readonly anchors: Partial<Record<AnchorName, Anchor>>
}

/** What is drawn over the gears. */
export interface GearSignProps {
  readonly gearSigns: View['gearSigns']
  readonly misplaced: View['misplaced']
  /** Sense of the worm about +z for which it is told which flanks carry */
  readonly sense: 1 | -1
  readonly support: View['support']
  readonly forceArrows: View['forceArrows']
  /** How hard the brushes spark; 0 is not at all */
  readonly sparking: number
  /** Null where no part is shown in the tint of its temperature */
  readonly partHeat: PartHeat | null
}

export interface StageProps extends GearSignProps {
  /** The mesh that is looked into */
  readonly meshSide: Side
  readonly machine: Machine
  readonly theme: Theme
  readonly caseState: CaseState
  readonly motorCut: boolean
  /** 0 together, 1 all parts off */
  readonly apart: number
  /** Goes to the bookmark whenever `nonce` changes. */
  readonly view: View['view']
  readonly marks: boolean
  readonly arrows: boolean
  readonly quality: 'auto' | QualityLevel
  readonly reducedMotion: boolean
  readonly selected: PartName | null
  /** Where the light on the power's way stands; null while it is out */
  readonly lit: PowerStop | null
  readonly pluggedIn: boolean
  /** Step of the speed control, from 0 */
  readonly setting: number
  readonly freeArea: FreeArea
  readonly frame: StageFrame
  onSelect(part: PartName | null): void
  onHandDrag(drag: HandDrag): void
  onQuality(level: QualityLevel, why: 'slow' | 'chosen'): void
  /** A person has moved the camera, or sent it back to the bookmark: null. */
  onCamera(camera: Camera | null): void
  onFirstPicture(): void
  onContextLost(): void
  onNoWebGl(): void
}
