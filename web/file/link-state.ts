/** What a link holds: everything that makes the picture and the numbers of one moment. */
import type { WormTurns } from '../../sim/drive/turns.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Bench } from '../store/bench.ts'
import type { QuestionSet } from '../store/exercise.ts'
import type { LessonPlace } from '../store/predict.ts'
import type { Camera, CaseState, View, Way } from '../store/view.ts'

export type ViewName = View['view']['name']

export interface Picture {
  readonly caseState: CaseState
  readonly motorCut: boolean
  readonly apart: number
  readonly view: ViewName
  /** Null while it stands where the view puts it. */
  readonly camera: Camera | null
  readonly withoutLosses: boolean
  readonly large: boolean
}

export interface LinkState {
  readonly machine: Machine
  readonly way: Way
  readonly bench: Bench
  readonly picture: Picture
  readonly moment: Readonly<WormTurns>
  /** Questions that Predict asks one after another; null where it asks about this machine. */
  readonly asked: QuestionSet | null
  /** A topic of a lesson that comes with the program */
  readonly lesson: LessonPlace | null
}

/**
 * What a link means by leaving something out. It belongs to the version of the link: when the page opens
 * differently one day, an old link must still show the old picture.
 */
const unsaid: Omit<LinkState, 'machine'> = {
  way: 'demonstrate',
  bench: {
    setting: 0,
    pluggedIn: true,
    sense: 1,
    leftLoad: 0,
    rightLoad: 0,
    jammed: 'none',
    winding: 20,
    magnet: 20,
    pace: 40,
  },
  picture: {
    caseState: 'clear',
    motorCut: true,
    apart: 0,
    view: 'gears',
    camera: null,
    withoutLosses: false,
    large: false,
  },
  moment: { turns: 0, ticks: 0, rest: 0 },
  asked: null,
  lesson: null,
}

/** The machine as it is first seen, with nothing that tells how far it was turned. */
export const plainState = (machine: Machine, way: Way = unsaid.way): LinkState => ({
  machine,
  ...unsaid,
  way,
})
