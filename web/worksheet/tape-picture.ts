/** A blank count tape with a worm scale: left wheel above, right wheel below, their marks at 0. */
import { type Drawing, type Mark, label, outline, pathOf, place, stroke } from '../models/marks.ts'
import type { Flat } from '../models/flat.ts'

const LANE = 6.4
const SCALE = 7.4
/** From the end of the tape to 0, and from the last turn to the other end */
const BEFORE = 4
const AFTER = 3
/** Ticks are no closer than this, numbers no closer than that. */
const CLOSEST_TICKS = 2.4
const CLOSEST_NUMBERS = 14
const STEPS = [1, 5, 10, 25, 50, 100]

const bar = (x: number, y: number, width: number, height: number): Mark => ({
  kind: 'fill',
  d: pathOf(
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    true,
  ),
})

function dot(x: number, y: number, r: number): Mark {
  const points = Array.from({ length: 32 }, (_, i): Flat => {
    const turn = (Math.PI * i) / 16
    return [x + r * Math.cos(turn), y + r * Math.sin(turn)]
  })
  return { kind: 'fill', d: pathOf(points, true) }
}

const line = (x0: number, y0: number, x1: number, y1: number): Flat[] => [
  [x0, y0],
  [x1, y1],
]

export function tapePicture(turns: number, width: number): Drawing {
  const perTurn = (width - BEFORE - AFTER) / turns
  const stepOver = (least: number) => STEPS.find((step) => step * perTurn >= least) ?? turns
  const small = stepOver(CLOSEST_TICKS)
  const large = stepOver(CLOSEST_NUMBERS)
  const ticks = Array.from({ length: Math.floor(turns / small) + 1 }, (_, i) => i * small)
  const isLarge = (turn: number) => turn % large === 0
  const top = LANE
  const height = 2 * LANE + SCALE
  const marks: Mark[] = [
    outline('thick', [...line(0, 0, width, 0), ...line(width, height, 0, height)]),
    stroke('thick', line(0, top, width, top), line(0, top + SCALE, width, top + SCALE)),
    stroke(
      'thin',
      ...ticks.map((turn) => {
        const x = BEFORE + turn * perTurn
        return line(x, top, x, top + (isLarge(turn) ? 2.8 : 1.6))
      }),
    ),
    ...ticks
      .filter(isLarge)
      .map((turn) => label(BEFORE + turn * perTurn, top + 6.3, String(turn), { bold: true })),
    bar(BEFORE - 1.3, 1.4, 0.9, LANE - 2.8),
    bar(BEFORE + 0.4, 1.4, 0.9, LANE - 2.8),
    dot(BEFORE, top + SCALE + LANE / 2, 1.6),
  ]
  return {
    title: `Blank tape from 0 to ${turns} worm turns`,
    width,
    height: height + 0.4,
    marks: [place(0, 0.2, marks)],
  }
}
