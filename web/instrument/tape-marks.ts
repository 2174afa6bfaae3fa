/** What is printed on the turn tape: dashes, tooth ticks, wheel marks, numbers, cursor. */
import { TICKS_PER_TURN, type WormTurns } from '../../sim/drive/turns.ts'
import { wholeText } from './count.ts'
import {
  type TapeWindow,
  dashStep,
  firstTooth,
  lastTooth,
  numberStep,
  tapeX,
  toothPassed,
  toothX,
} from './tape-layout.ts'
import { type Pen, haloText, numberFont, wordFont } from './tape-pen.ts'

const signedText = (count: number): string => wholeText(Math.abs(count), count < 0)

/** Nothing is foreseen to the left of zero until the worm has turned back past it. */
const foreseen = (turn: number, turns: WormTurns): boolean => turn >= 0 || turns.turns < 0

const multipleFrom = (value: number, step: number): number => Math.ceil(value / step) * step

export function drawCursor({ ctx, colours, sizes }: Pen, x: number): void {
  const { top, lane } = sizes
  ctx.fillStyle = colours.ink
  ctx.fillRect(x - 1.25, top - 2, 2.5, 3 * lane + 2)
  ctx.beginPath()
  ctx.moveTo(x - 10, 0)
  ctx.lineTo(x + 10, 0)
  ctx.lineTo(x, top + 1)
  ctx.fill()
}

/** `printed` false draws the scale alone, for a covered tape. */
export function drawPasses(
  pen: Pen,
  tape: TapeWindow,
  turns: WormTurns,
  speed: number,
  printed: boolean,
): void {
  const { ctx, colours, sizes } = pen
  const { lane, top } = sizes
  const step = dashStep(tape.px, speed)
  const middle = top + 1.33 * lane
  const height = 0.42 * lane
  const width = Math.max(3, Math.min(0.085 * lane, 0.6 * tape.px * step))
  const last = tape.firstTurn + tape.shown + 1
  ctx.fillStyle = colours.worm
  ctx.strokeStyle = colours.control
  ctx.lineWidth = 1.4
  ctx.setLineDash([2, 3])
  ctx.beginPath()
  for (let turn = multipleFrom(tape.firstTurn - 1, step); turn <= last; turn += step) {
    const x = tapeX(tape, turn, 0)
    if (printed && toothPassed(turns, turn, 1))
      ctx.fillRect(x - width / 2, middle - height / 2, width, height)
    else if (foreseen(turn, turns)) {
      ctx.moveTo(x, middle - height / 2)
      ctx.lineTo(x, middle + height / 2)
    }
  }
  ctx.stroke()
  ctx.setLineDash([])
}

export function drawNumbers(
  pen: Pen,
  tape: TapeWindow,
  turns: WormTurns,
  speed: number,
  printed: boolean,
): void {
  const { ctx, colours, sizes } = pen
  const { lane, top, axis } = sizes
  const last = tape.firstTurn + tape.shown + 1
  ctx.font = numberFont(pen, axis)
  ctx.textAlign = 'center'
  ctx.textBaseline = 'alphabetic'
  const widest = ctx.measureText(signedText(Math.ceil(last))).width
  const step = numberStep(tape.px, 1.6 * widest + axis)
  const y = top + 2 * lane - 0.13 * lane
  for (let turn = multipleFrom(tape.firstTurn - 1, step); turn <= last; turn += step) {
    if (!foreseen(turn, turns)) continue
    ctx.fillStyle = printed && toothPassed(turns, turn, 1) ? colours.ink : colours.faint
    haloText(pen, signedText(turn), tapeX(tape, turn, 0), y, printed ? colours.panel : colours.lane)
  }
  if (printed && dashStep(tape.px, speed) === 5) drawEveryFifth(pen, tape)
}

function drawEveryFifth(pen: Pen, tape: TapeWindow): void {
  const { ctx, colours, sizes } = pen
  ctx.font = wordFont(pen, Math.max(14, 0.85 * sizes.word))
  ctx.textAlign = 'right'
  ctx.fillStyle = colours.faint
  haloText(pen, 'every 5th drawn', tape.width - 10, sizes.top + 1.87 * sizes.lane, colours.panel)
}

const TOOTH_STEPS = [1, 5, 10, 50, 100, 500]
const CLOSEST_TEETH = 4

/** Ticks of the teeth on the edges that the wheels' lanes share with the worm's; numbered from each wheel mark. */
export function drawTeeth(pen: Pen, tape: TapeWindow, turns: WormTurns, z1: number, z2: number): void {
  const { ctx, colours, sizes } = pen
  const step = TOOTH_STEPS.find((teeth) => (teeth * tape.px) / z1 >= CLOSEST_TEETH) ?? 1000
  const upper = sizes.top + sizes.lane
  const lower = upper + sizes.lane
  const from = multipleFrom(firstTooth(tape, z1), step)
  const to = lastTooth(tape, z1)
  ctx.lineWidth = 1.3
  for (const passed of [true, false]) {
    ctx.strokeStyle = passed ? colours.ink : colours.control
    ctx.beginPath()
    for (let tooth = from; tooth <= to; tooth += step) {
      if (toothPassed(turns, tooth, z1) !== passed || !foreseen(tooth, turns)) continue
      const long = (((tooth % z2) + z2) % z2) % (5 * step) === 0
      const length = (long ? 0.2 : 0.12) * sizes.lane
      const x = toothX(tape, tooth, z1)
      ctx.moveTo(x, upper)
      ctx.lineTo(x, upper - length)
      ctx.moveTo(x, lower)
      ctx.lineTo(x, lower + length)
    }
    ctx.stroke()
  }
}

/** Two dashes above, a dot below, where the wheels' marks went past their pointers. */
export function drawWheelMarks(pen: Pen, tape: TapeWindow, turns: WormTurns, z1: number, z2: number): void {
  const { ctx, colours, sizes } = pen
  const { lane, top, wheel } = sizes
  const height = 0.52 * lane
  const width = Math.max(4, 0.2 * height)
  const above = top + 0.4 * lane
  const below = top + 2.6 * lane
  ctx.font = numberFont(pen, wheel)
  ctx.textAlign = 'left'
  ctx.textBaseline = 'alphabetic'
  const turnWidth = (z2 / z1) * tape.px
  const lastMark = Math.floor(lastTooth(tape, z1) / z2)
  const labelEvery = Math.ceil((lane + ctx.measureText(signedText(lastMark)).width) / turnWidth)
  for (let mark = Math.ceil(firstTooth(tape, z1) / z2); mark <= lastMark; mark++) {
    if (!toothPassed(turns, mark * z2, z1)) continue
    const x = toothX(tape, mark * z2, z1)
    ctx.fillStyle = colours.left
    ctx.fillRect(x - 1.45 * width, above - height / 2, width, height)
    ctx.fillRect(x + 0.45 * width, above - height / 2, width, height)
    ctx.fillStyle = colours.right
    ctx.beginPath()
    ctx.arc(x, below, 0.36 * height + 1, 0, 2 * Math.PI)
    ctx.fill()
    if (mark % labelEvery !== 0) continue
    ctx.fillStyle = colours.ink
    haloText(pen, signedText(mark), x + 0.28 * lane, above + 0.36 * wheel, colours.lane)
    haloText(pen, signedText(mark), x + 0.28 * lane, below + 0.36 * wheel, colours.lane)
  }
}

/** Teeth of the last two wheel marks that went past, smaller first; null before the first whole wheel turn. */
export function lastWheelTurn(turns: WormTurns, z1: number, z2: number): readonly [number, number] | null {
  const gone = turns.turns * z1 + Math.floor((turns.ticks * z1 + turns.rest * z1) / TICKS_PER_TURN)
  const exact = (turns.ticks * z1) % TICKS_PER_TURN === 0 && turns.rest === 0
  if (turns.turns >= 0) {
    const mark = Math.floor(gone / z2) * z2
    return mark > 0 ? [mark - z2, mark] : null
  }
  const mark = Math.ceil((exact ? gone : gone + 1) / z2) * z2
  return mark < 0 ? [mark, mark + z2] : null
}
