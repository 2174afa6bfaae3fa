/** A question as it will be asked, with its answer; or what keeps it from being asked. */
import type { Problem } from '../../sim/machine/problem.ts'
import type { Question } from '../../sim/question/question.ts'
import { counted } from '../../sim/question/value-text.ts'
import { answerText } from '../question/answer-words.ts'
import type { BeatQuestion } from '../store/lesson.ts'
import { questionOf } from './question-of.ts'

interface PreviewProps {
  readonly question: BeatQuestion
  readonly seed: string
  /** Of this question alone */
  readonly problems: readonly Problem[]
}

function Asked({ question }: { readonly question: Question }) {
  const { ask, text, working } = question
  const answer = answerText(question)
  return (
    <>
      <p>
        <b>{text}</b>
      </p>
      {ask.kind === 'choice' && <p className="small">{ask.options.map((each) => each.text).join(' · ')}</p>}
      {answer !== null && (
        <p>
          Answer: {answer}
          {working !== '' && ask.kind !== 'order' && <span className="small"> by {working}</span>}
        </p>
      )}
      {ask.kind === 'number' && ask.slips.length > 0 && (
        <p className="small">{counted(ask.slips.length, 'known slip')} will be named.</p>
      )}
    </>
  )
}

export function EditorPreview({ question, seed, problems }: PreviewProps) {
  const asked = problems.length === 0 ? questionOf(question, seed) : null
  return (
    <div className="editor-preview" role="group" aria-label="As it is asked">
      {problems.map(({ path, message }) => (
        <p key={`${path} ${message}`}>
          {path.split('.').slice(4).join(' ') || 'This question'} {message}.
        </p>
      ))}
      {asked && <Asked question={asked} />}
    </div>
  )
}
