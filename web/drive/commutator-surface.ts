/** Keeps both drawings of the commutator right: size, colours, and where the machine stands. */
import { drawnTruly } from '../../sim/drive/screen-rule.ts'
import type { Frame } from '../frame/frame-state.ts'
import { followOn } from '../instrument/canvas.ts'
import { type Commutator, followedAngle } from './commutator.ts'
import { type Pen, penOn } from './commutator-pen.ts'
import { type CommutatorMoment, type RoundContent, drawRound } from './commutator-picture.ts'
import { drawStrip } from './commutator-strip.ts'

/** Pictures a second that a screen shows, as the rule of the stage has it [Hz] */
const DISPLAY = 60

export interface CommutatorContent extends RoundContent {
  readonly flow: 1 | -1 | 0
  /** Told in every frame in which something has moved. */
  readonly onMoved: (moment: CommutatorMoment, still: boolean) => void
}

const newMoment = (): CommutatorMoment => ({ angle: 0, flow: 0, sense: 1, bars: true, followed: true })

/** By the screen rule of the bars, and of the one coil among them. */
function readMoment(out: CommutatorMoment, commutator: Commutator, frame: Frame): void {
  out.angle = followedAngle(commutator, frame.state.turns)
  out.sense = frame.sense
  out.bars = drawnTruly(frame.drawnSpeed, commutator.bars, DISPLAY)
  out.followed = drawnTruly(frame.drawnSpeed, 1, DISPLAY)
}

/** Draws at every change of frame, size, theme or fonts; returns what ends it. */
export function attachCommutator(
  round: HTMLCanvasElement,
  strip: HTMLCanvasElement,
  frame: Frame,
  content: CommutatorContent,
): () => void {
  const { commutator, flow, signs, onMoved } = content
  const moment = newMoment()
  moment.flow = flow
  let pens: readonly [Pen, Pen] | null = null
  let seen = true
  let [angle, bars, sense] = [Number.NaN, true, 0]
  const draw = () => {
    if (pens === null) return
    drawRound(pens[0], content, moment)
    drawStrip(pens[1], commutator, moment, signs)
  }
  const painter = () => {
    readMoment(moment, commutator, frame)
    if (moment.angle === angle && moment.bars === bars && moment.sense === sense) return
    const blurred = !moment.bars && !bars && moment.sense === sense
    angle = moment.angle
    bars = moment.bars
    sense = moment.sense
    onMoved(moment, frame.motion === 'still')
    // What the eye makes of bars that pass too fast does not change.
    if (seen && !blurred) draw()
  }
  const again = () => {
    const [one, other] = [penOn(round), penOn(strip)]
    pens = one && other && [one, other]
    readMoment(moment, commutator, frame)
    onMoved(moment, frame.motion === 'still')
    draw()
  }
  return followOn(round, frame.canvases, {
    painter,
    again,
    draw,
    seen: (isSeen) => {
      seen = isSeen
    },
  })
}
