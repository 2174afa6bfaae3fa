/** What was predicted, what was counted and what the machine does, side by side; then right or not yet, and why. */
import type { ReactNode } from 'react'
import { type Marked, mark } from '../../sim/question/marking.ts'
import type { Question } from '../../sim/question/question.ts'
import { Icon } from '../instrument/Icon.tsx'
import { MarkSign } from '../instrument/MarkSign.tsx'
import type { Exercise } from '../store/exercise.ts'
import { Mixed } from './Mixed.tsx'
import { surenessText } from './SurenessField.tsx'
import { answerText, replyText } from './answer-words.ts'
import { mixedAnswer } from './mixed-answer.ts'
import { ownCount } from './own-count.ts'
import { FlagSign, TallySign } from './signs.tsx'
import './question.css'

interface ComparedProps {
  readonly question: Question
  readonly exercise: Exercise
}

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

/** A count with its fraction as people write it, else as it is printed. */
function MachineValue({ question }: { readonly question: Question }) {
  const mixed = mixedAnswer(question)
  const text = answerText(question)
  if (!mixed) return text
  return (
    <>
      <Mixed turns={mixed} />
      <span className="unseen">
        {' '}
        {question.ask.kind === 'number' && question.ask.unit === 'turn' && 'turns'}
      </span>
    </>
  )
}

function Rows({ question, exercise }: ComparedProps) {
  const { reply, sureness, skipped, text } = exercise
  const own = ownCount(question, exercise)
  const isNumber = question.ask.kind === 'number'
  const predicted = reply && replyText(question, reply)
  const typed = isNumber && predicted !== null && text.trim().length <= 10 ? text.trim() : predicted
  return (
    <table className="compared" data-words={!isNumber}>
      <caption className="unseen">{question.text}</caption>
      <tbody>
        <Row
          sign={<FlagSign />}
          name="Predicted"
          note={skipped ? null : sureness ? `sure: ${surenessText(sureness)}` : 'not said how sure'}
        >
          {skipped ? 'no prediction' : typed}
        </Row>
        {question.trial && question.trial.counted !== 'senses' && (
          <Row sign={<TallySign />} name="Counted by you" note={own?.note ?? 'nothing counted'}>
            {own?.value ?? '–'}
          </Row>
        )}
        {question.ask.kind !== 'words' && (
          <Row sign={<MarkSign part="left" size={26} />} name="Machine">
            <MachineValue question={question} />
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
function causeText({ sentence }: Marked, said: string): ReactNode {
  if (sentence === null) return 'No known slip leads there. Show somebody your working.'
  return (
    <>
      {said} is what you get in this way: {sentence}
    </>
  )
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
  const said = question.ask.kind === 'number' ? replyText(question, reply) : 'This'
  return (
    <Verdict right={false}>
      <b>Not yet.</b> {causeText(marked, said)}
    </Verdict>
  )
}

/** One line: the way, and what comes out where that is a number. */
function workingText(question: Question): string {
  if (question.working === '') return ''
  return question.ask.kind === 'number' ? `${question.working} = ${answerText(question)}` : question.working
}

export function Compared({ question, exercise }: ComparedProps) {
  const working = workingText(question)
  return (
    <div className="compare">
      <Rows question={question} exercise={exercise} />
      <VerdictOf question={question} exercise={exercise} />
      {working && <p className="working">{working}</p>}
    </div>
  )
}
