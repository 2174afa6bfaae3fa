/** A question in front of a room: it is spoken, so there is nothing to type. At Reveal the answer stands large. */
import type { Ask, Question } from '../../sim/question/question.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { playWatch } from '../question/watch-stage.ts'
import { valueText } from '../../sim/question/value-text.ts'
import type { LessonStep } from '../store/lesson.ts'
import { LedCount } from './LedCount.tsx'
import { spokenAnswer } from './lesson-words.ts'

interface LedQuestionProps {
  readonly question: Question
  readonly step: LessonStep
}

function Options({ ask, revealed }: { readonly ask: Ask; readonly revealed: boolean }) {
  if (ask.kind === 'choice')
    return (
      <ol className="led-options">
        {ask.options.map(({ id, text }) => (
          <li key={id} data-right={revealed && id === ask.answer}>
            {text}
            {revealed && id === ask.answer && (
              <>
                {' '}
                <Icon name="check" size={20} />
                <span className="unseen">, right</span>
              </>
            )}
          </li>
        ))}
      </ol>
    )
  if (ask.kind !== 'order' || revealed) return null
  return (
    <ul className="led-options">
      {ask.cards.map(({ id, text }) => (
        <li key={id}>{text}</li>
      ))}
    </ul>
  )
}

function Answer({ question }: { readonly question: Question }) {
  const { ask } = question
  if (ask.kind === 'number') return <p className="led-answer number">{spokenAnswer(question)}</p>
  if (ask.kind !== 'order') return null
  return (
    <ol className="led-order">
      {ask.answer.map((id) => (
        <li key={id}>{ask.cards.find((card) => card.id === id)?.text}</li>
      ))}
    </ol>
  )
}

interface Slip {
  readonly said: string
  readonly sentence: string
}

/** What others say, with where it comes from; one sentence once. */
function slipsOf({ ask }: Question): readonly Slip[] {
  if (ask.kind === 'number')
    return ask.slips.map(({ value, sentence }) => ({ said: valueText(value, ask.unit, 3), sentence }))
  if (ask.kind !== 'choice') return []
  const words = (option: string) => ask.options.find(({ id }) => id === option)?.text ?? option
  const seen = new Set<string>()
  return ask.slips.flatMap(({ option, sentence }) => {
    if (seen.has(option)) return []
    seen.add(option)
    return { said: words(option), sentence }
  })
}

function Revealed({ question }: { readonly question: Question }) {
  const workshop = useWorkshop()
  const slips = slipsOf(question)
  return (
    <div className="led-revealed" role="status">
      <Answer question={question} />
      {question.working !== '' && question.ask.kind !== 'order' && (
        <p className="working">{question.working}</p>
      )}
      {slips.length > 0 && (
        <dl className="led-slips">
          {slips.map(({ said, sentence }) => (
            <div key={said}>
              <dt>{said}</dt>
              <dd>{sentence}</dd>
            </div>
          ))}
        </dl>
      )}
      {question.watch && (
        <button type="button" className="button" onClick={() => void playWatch(workshop, question)}>
          <Icon name="views" />
          Watch it
        </button>
      )}
    </div>
  )
}

export function LedQuestion({ question, step }: LedQuestionProps) {
  const revealed = step === 'reveal'
  return (
    <div className="lesson-question">
      <h2>{question.text}</h2>
      <Options ask={question.ask} revealed={revealed} />
      {step === 'count' && question.trial && <LedCount question={question} />}
      {revealed && <Revealed question={question} />}
    </div>
  )
}
