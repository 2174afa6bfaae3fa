/** The question that is asked now, with what only the presenter knows: the answer and what others say. */
import { useMemo } from 'react'
import { useStore } from 'zustand'
import type { Question } from '../../sim/question/question.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { STEP_NAMES } from '../lesson/lesson-words.ts'
import { questionAt } from '../lesson/question-of.ts'
import type { LessonStep } from '../store/lesson.ts'
import { type Expected, expectedOf } from './expected.ts'

function Steps({ question, step }: { readonly question: Question; readonly step: LessonStep }) {
  const steps: LessonStep[] = question.trial ? ['ask', 'count', 'reveal'] : ['ask', 'reveal']
  return (
    <ol className="presenter-steps" aria-label="Steps of the question">
      {steps.map((each) => (
        <li key={each} aria-current={each === step ? 'step' : undefined}>
          {STEP_NAMES[each]}
        </li>
      ))}
    </ol>
  )
}

function Options({ ask }: Pick<Question, 'ask'>) {
  if (ask.kind !== 'choice') return null
  return (
    <ol className="presenter-options">
      {ask.options.map(({ id, text }) => (
        <li key={id} data-right={id === ask.answer}>
          {text}
          {id === ask.answer && (
            <>
              {' '}
              <Icon name="check" size={18} />
              <span className="unseen">, right</span>
            </>
          )}
        </li>
      ))}
    </ol>
  )
}

function Answer({ question, expected }: { readonly question: Question; readonly expected: Expected }) {
  const { answer, order, working } = expected
  const { kind } = question.ask
  return (
    <div className="presenter-answer">
      {kind === 'number' && <p className="presenter-number number">{answer}</p>}
      {kind === 'words' && <p>Nothing to be right about: ask for reasons.</p>}
      {kind === 'order' && (
        <ol>
          {order.map((card) => (
            <li key={card}>{card}</li>
          ))}
        </ol>
      )}
      {working !== '' && <p className="presenter-working">{working}</p>}
    </div>
  )
}

function Slips({ slips }: Pick<Expected, 'slips'>) {
  if (slips.length === 0) return null
  return (
    <dl className="presenter-slips">
      {slips.map(({ said, sentence }) => (
        <div key={said + sentence}>
          <dt>{said === '' ? <Icon name="ring" size={14} /> : said}</dt>
          <dd>{sentence}</dd>
        </div>
      ))}
    </dl>
  )
}

export function QuestionCard() {
  const { lesson, beat, question: which, step } = useStore(useWorkshop().lesson)
  const question = useMemo(() => lesson && questionAt(lesson, beat, which), [lesson, beat, which])
  const expected = useMemo(() => question && expectedOf(question), [question])
  if (!question || !expected) return null
  return (
    <section className="presenter-question" aria-label="Question">
      <div className="presenter-asked">
        <h2>{question.text}</h2>
        <Steps question={question} step={step} />
      </div>
      <Options ask={question.ask} />
      <h3>Answer</h3>
      <Answer question={question} expected={expected} />
      {expected.slips.length > 0 && <h3>Others say</h3>}
      <Slips slips={expected.slips} />
    </section>
  )
}
