/** A question in front of a room: it is spoken, so there is nothing to type. At Reveal the answer stands large. */
import type { AskChoice, AskNumber, AskOrder, Question } from '../../sim/question/question.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { playWatch } from '../question/watch-stage.ts'
import { valueText } from '../../sim/question/value-text.ts'
import type { LessonStep } from '../store/lesson.ts'
import { LedCount } from './LedCount.tsx'
import { spokenAnswer } from './lesson-words.ts'

/** Questions of more characters are set smaller in front of a room. */
const LONG = 150

interface LedQuestionProps {
  readonly question: Question
  readonly step: LessonStep
}

/** What leads to an option, in a sentence; once each. */
const sentenceOf = (ask: AskChoice, option: string): string | undefined =>
  ask.slips.find((slip) => slip.option === option)?.sentence

function Choices({ ask, revealed }: { readonly ask: AskChoice; readonly revealed: boolean }) {
  return (
    <ol className="led-options">
      {ask.options.map(({ id, text }, place) => {
        const right = revealed && id === ask.answer
        return (
          <li key={id} value={place + 1} data-right={right}>
            {text}
            {right && (
              <>
                {' '}
                <Icon name="check" size={20} />
                <span className="unseen">, right</span>
              </>
            )}
            {revealed && !right && <span className="led-slip"> {sentenceOf(ask, id)}</span>}
          </li>
        )
      })}
    </ol>
  )
}

/** Cards as they are laid out; in their order once it is revealed. */
function Cards({ ask, revealed }: { readonly ask: AskOrder; readonly revealed: boolean }) {
  const textOf = (id: string) => ask.cards.find((card) => card.id === id)?.text
  const items = revealed ? ask.answer.map((id) => ({ id, text: textOf(id) })) : ask.cards
  const List = revealed ? 'ol' : 'ul'
  return (
    <List className={revealed ? 'led-order' : 'led-options'}>
      {items.map(({ id, text }) => (
        <li key={id}>{text}</li>
      ))}
    </List>
  )
}

/** What others say, with where it comes from. */
function Slips({ ask }: { readonly ask: AskNumber }) {
  if (ask.slips.length === 0) return null
  return (
    <dl className="led-slips">
      {ask.slips.map(({ value, sentence }) => (
        <div key={value}>
          <dt>{valueText(value, ask.unit, 3)}</dt> <dd>{sentence}</dd>
        </div>
      ))}
    </dl>
  )
}

function WatchButton({ question }: { readonly question: Question }) {
  const workshop = useWorkshop()
  return (
    question.watch && (
      <button type="button" className="button led-watch" onClick={() => void playWatch(workshop, question)}>
        <Icon name="views" />
        Watch it
      </button>
    )
  )
}

function Revealed({ question }: { readonly question: Question }) {
  const { ask, working } = question
  return (
    <div className="led-revealed">
      {ask.kind === 'number' && (
        <div className="led-answer-row">
          <p className="led-answer number">{spokenAnswer(question)}</p>
          <WatchButton question={question} />
        </div>
      )}
      {working !== '' && ask.kind !== 'order' && <p className="working">{working}</p>}
      {ask.kind === 'number' ? <Slips ask={ask} /> : <WatchButton question={question} />}
    </div>
  )
}

export function LedQuestion({ question, step }: LedQuestionProps) {
  const { ask } = question
  const revealed = step === 'reveal'
  return (
    <div className="lesson-question" data-long={question.text.length > LONG}>
      <h2>{question.text}</h2>
      {ask.kind === 'choice' && <Choices ask={ask} revealed={revealed} />}
      {ask.kind === 'order' && <Cards ask={ask} revealed={revealed} />}
      {step === 'count' && question.trial && <LedCount question={question} />}
      {revealed && <Revealed question={question} />}
    </div>
  )
}
