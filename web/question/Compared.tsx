/**
 * What was predicted, what was counted and what the machine does, side by side; with right or not yet, and why. Numbers
 * tell by themselves how far off they are, so there they come first.
 */
import type { ReactNode } from 'react'
import { type Marked, mark } from '../../sim/question/marking.ts'
import type { Question, Reply } from '../../sim/question/question.ts'
import { Icon } from '../instrument/Icon.tsx'
import { MarkSign } from '../instrument/MarkSign.tsx'
import type { Exercise } from '../store/exercise.ts'
import { Mixed } from './Mixed.tsx'
import { surenessText } from './SurenessField.tsx'
import { answerText, replyText, rightReply } from './answer-words.ts'
import { mixedAnswer } from './mixed-answer.ts'
import { ownCount } from './own-count.ts'
import { FlagSign, TallySign } from './signs.tsx'
import './question.css'

interface ComparedProps {
  readonly question: Question
  readonly exercise: Exercise
}

const RIGHT_NAMES = { number: 'Machine', choice: 'Right answer', order: 'Right order' } as const

/** An answer of so many signs stands as it was typed; a longer one as it was read. */
const SHORT = 10

const isCount = (unit: string): boolean => unit === 'turn' || unit === '1'

interface RowProps {
  readonly sign: ReactNode
  readonly name: string
  readonly note?: string | null
  readonly children: ReactNode
}

const Row = ({ sign, name, note, children }: RowProps) => (
  <tr>
    <td aria-hidden="true">{sign}</td>
    <th scope="row">
      {name} {note && <span className="small">{note}</span>}
    </th>
    <td className="compared-value">{children}</td>
  </tr>
)

/** Cards one under the other, else a line of text. */
function AnswerValue({ question, reply }: { readonly question: Question; readonly reply: Reply }) {
  const { ask } = question
  if (ask.kind !== 'order' || reply.kind !== 'order') return replyText(question, reply)
  return (
    <ol className="compared-order">
      {reply.order.map((id) => (
        <li key={id}>{ask.cards.find((card) => card.id === id)?.text}</li>
      ))}
    </ol>
  )
}

/** A count with its fraction as people write it, else as it is printed. */
function RightValue({ question }: { readonly question: Question }) {
  const mixed = mixedAnswer(question)
  const right = rightReply(question)
  if (!mixed) return right && <AnswerValue question={question} reply={right} />
  return (
    <>
      <Mixed turns={mixed} />
      <span className="unseen"> turns</span>
    </>
  )
}

function Predicted({ question, exercise }: ComparedProps) {
  const { reply, sureness, skipped, text } = exercise
  const typed = text.trim()
  const { ask } = question
  // a quantity stands with its unit, as the right one beside it
  const asTyped = ask.kind === 'number' && isCount(ask.unit) && typed.length <= SHORT
  return (
    <Row
      sign={<FlagSign />}
      name="Predicted"
      note={skipped ? null : sureness ? `sure: ${surenessText(sureness)}` : 'not said how sure'}
    >
      {skipped || reply === null ? (
        <span className="compared-none">no prediction</span>
      ) : asTyped ? (
        typed
      ) : (
        <AnswerValue question={question} reply={reply} />
      )}
    </Row>
  )
}

function Rows({ question, exercise }: ComparedProps) {
  const { ask, trial } = question
  const own = ownCount(question, exercise)
  const counted = trial !== null && trial.counted !== 'senses'
  return (
    <table className="compared" data-words={ask.kind !== 'number'}>
      <caption className="unseen">Prediction and answer</caption>
      <tbody>
        <Predicted question={question} exercise={exercise} />
        {counted && (
          <Row sign={<TallySign />} name="Counted by you" note={own?.note ?? 'nothing counted'}>
            {own?.value ?? '–'}
          </Row>
        )}
        {ask.kind !== 'words' && (
          <Row
            sign={counted ? <MarkSign part="left" size={26} /> : <Icon name="check" size={22} />}
            name={RIGHT_NAMES[ask.kind]}
          >
            <RightValue question={question} />
          </Row>
        )}
      </tbody>
    </table>
  )
}

const Verdict = ({ right, children }: { readonly right: boolean; readonly children: ReactNode }) => (
  <p className="verdict">
    <Icon name={right ? 'check' : 'ring'} size={22} />
    <span>{children}</span>
  </p>
)

/** A known slip is a suggestion, never a finding. */
function causeText(question: Question, reply: Reply, { sentence }: Marked): string {
  if (sentence === null) return 'No known slip leads there. Show somebody your working.'
  if (question.ask.kind !== 'number') return sentence
  return `A known slip leads to ${replyText(question, reply)}. ${sentence}`
}

function VerdictOf({ question, exercise }: ComparedProps) {
  const { reply, skipped } = exercise
  if (skipped || reply === null) {
    return (
      <Verdict right={false}>
        <b>No prediction.</b> Make one next time, even a guess: who predicts sees more.
      </Verdict>
    )
  }
  const marked = mark(question, reply)
  if (marked.right === null) return null
  if (marked.right) {
    return (
      <Verdict right>
        <b>Right.</b>
      </Verdict>
    )
  }
  return (
    <Verdict right={false}>
      <b>Not yet.</b> {causeText(question, reply, marked)}
    </Verdict>
  )
}

/** One line: the way, and what comes out where that is a number. An order is its own way. */
function workingText(question: Question): string {
  if (question.working === '' || question.ask.kind === 'order') return ''
  return question.ask.kind === 'number' ? `${question.working} = ${answerText(question)}` : question.working
}

export function Compared({ question, exercise }: ComparedProps) {
  const working = workingText(question)
  const rows = <Rows question={question} exercise={exercise} />
  const verdict = <VerdictOf question={question} exercise={exercise} />
  return (
    <div className="compare">
      {question.ask.kind === 'number' ? rows : verdict}
      {question.ask.kind === 'number' ? verdict : rows}
      {working && <p className="working">{working}</p>}
    </div>
  )
}
