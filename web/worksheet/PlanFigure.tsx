/** The machine of a question from above, with what it has told below. */
import type { Machine } from '../../sim/machine/machine.ts'
import type { Question } from '../../sim/question/question.ts'
import { counted, numberText } from '../../sim/question/value-text.ts'
import type { Drawing } from '../models/marks.ts'
import { withGearing } from '../question/stage-question.ts'
import { PaperDrawing } from './PaperDrawing.tsx'
import { PICTURE } from './blocks.ts'
import { planPicture } from './plan-picture.ts'

/** Machines differ in their counts alone, and the same counts come again and again. */
const drawings = new WeakMap<Machine, Map<string, Drawing>>()

function drawingOf(base: Machine, machine: Machine): Drawing {
  const { wormStarts, wheelTeeth, hand } = machine.gearing
  const key = `${wormStarts} ${wheelTeeth} ${hand}`
  const known = drawings.get(base) ?? new Map<string, Drawing>()
  drawings.set(base, known)
  const drawing = known.get(key) ?? planPicture(machine, PICTURE)
  known.set(key, drawing)
  return drawing
}

const countsText = ({ gearing }: Machine): string =>
  `${counted(gearing.wormStarts, 'start')}, ${counted(gearing.wheelTeeth, 'tooth', 'teeth')}`

export const modulesText = ({ name, gearing }: Machine): string =>
  `${name}, module ${numberText(gearing.axialModule)} mm`

interface PlanFigureProps {
  readonly base: Machine
  readonly question: Question
}

export function PlanFigure({ base, question }: PlanFigureProps) {
  const machine = withGearing(base, question.gearing)
  const drawing = drawingOf(base, machine)
  return (
    <figure className="ws-figure">
      <PaperDrawing drawing={drawing} />
      <figcaption>Seen from above; {countsText(machine)}</figcaption>
    </figure>
  )
}
