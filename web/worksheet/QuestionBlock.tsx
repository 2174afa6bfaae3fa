/** One question on paper: what is asked, the prediction, the count, and room to explain. */
import { useMemo } from 'react'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Option } from '../../sim/question/family.ts'
import type { Ask, Question } from '../../sim/question/question.ts'
import { UNIT_WORDS } from '../question/answer-words.ts'
import { PaperDrawing } from './PaperDrawing.tsx'
import { PlanFigure } from './PlanFigure.tsx'
import { WritingLines } from './WritingLines.tsx'
import { hasPicture, isCounted, tapeTurns } from './blocks.ts'
import { glued } from './glued.ts'
import { tapePicture } from './tape-picture.ts'

function Options({ options, ordered }: { readonly options: readonly Option[]; readonly ordered: boolean }) {
  return (
    <ul className="ws-options" data-ordered={ordered}>
      {options.map(({ id, text }) => (
        <li key={id}>
          <i className="ws-tick" />
          {glued(text)}
        </li>
      ))}
    </ul>
  )
}

function Reply({ ask }: { readonly ask: Ask }) {
  if (ask.kind === 'choice') return <Options options={ask.options} ordered={false} />
  if (ask.kind === 'order') {
    return (
      <>
        <p>Number the steps in the order in which they come.</p>
        <Options options={ask.cards} ordered />
      </>
    )
  }
  if (ask.kind === 'words') return null
  return (
    <p className="ws-reply">
      Prediction <i className="ws-blank" /> {UNIT_WORDS[ask.unit]}
    </p>
  )
}

const Sureness = () => (
  <p className="ws-sure">
    How sure?
    {[1, 2, 3].map((level) => (
      <span key={level}>
        <i className="ws-tick" />
        <b>{level}</b>
      </span>
    ))}
  </p>
)

function Tape({ turns, width }: { readonly turns: number; readonly width: number }) {
  const drawing = useMemo(() => tapePicture(turns, width), [turns, width])
  return (
    <figure className="ws-tape">
      <PaperDrawing drawing={drawing} />
    </figure>
  )
}

/** An empty cell to write in */
const BLANK = '\u00a0'

/** Counts that show nothing but themselves: which of them matters is for the learner to say. */
const Counts = () => (
  <table className="ws-counts">
    <thead>
      <tr>
        <td>{BLANK}</td>
        <th scope="col">Worm turns</th>
        <th scope="col">Left wheel turns</th>
        <th scope="col">Right wheel turns</th>
        <th scope="col">Senses, from above</th>
      </tr>
    </thead>
    <tbody>
      <tr>
        <th scope="row">Counted</th>
        <td>{BLANK}</td>
        <td>{BLANK}</td>
        <td>{BLANK}</td>
        <td className="ws-senses">
          <span>left</span>
          <span>right</span>
        </td>
      </tr>
    </tbody>
  </table>
)

function Counting({ question, width }: { readonly question: Question; readonly width: number }) {
  if (!isCounted(question)) {
    return (
      <p className="ws-look">
        <b>Look.</b> Draw an arrow on each wheel. Seen from above: left <i className="ws-blank" /> right{' '}
        <i className="ws-blank" />
      </p>
    )
  }
  const turns = tapeTurns(question)
  return (
    <>
      <p className="ws-step">
        <b>Count.</b> Draw a mark on its lane each time it passes: left wheel on top, right wheel below
      </p>
      {turns !== null && <Tape turns={turns} width={width} />}
      <Counts />
    </>
  )
}

function explainWords({ trial, ask }: Question): string {
  if (trial) return 'What differs from the prediction, and why?'
  return ask.kind === 'number' ? 'Working, and why it is so' : 'Why is it so?'
}

interface QuestionBlockProps {
  readonly question: Question
  readonly place: number
  /** To write on */
  readonly lines: number
  readonly base: Machine
  /** Of the page inside its margins [mm] */
  readonly width: number
}

export function QuestionBlock({ question, place, lines, base, width }: QuestionBlockProps) {
  return (
    <section className="ws-question" data-picture={hasPicture(question)}>
      <div className="ws-asked">
        {hasPicture(question) && <PlanFigure base={base} question={question} />}
        <div className="ws-words">
          <p>
            <b className="ws-place">{place}</b>
            {glued(question.text)}
          </p>
          <Reply ask={question.ask} />
          {question.ask.kind !== 'words' && <Sureness />}
          <p className="ws-step">
            <b>Explain.</b> {explainWords(question)}
          </p>
          <WritingLines lines={lines} />
        </div>
      </div>
      {question.trial && <Counting question={question} width={width} />}
    </section>
  )
}
