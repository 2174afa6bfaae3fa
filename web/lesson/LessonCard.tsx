/** What the lesson says now: where the caption stands otherwise. */
import { Suspense, useEffect, useMemo, useRef } from 'react'
import { useStore } from 'zustand'
import type { Question } from '../../sim/question/question.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { StageLink } from '../later.ts'
import type { Beat, LessonState, LessonStep } from '../store/lesson.ts'
import { LedQuestion } from './LedQuestion.tsx'
import { OwnQuestion } from './OwnQuestion.tsx'
import { SafetyCard } from './SafetyCard.tsx'
import { STEP_NAMES } from './lesson-words.ts'
import { useLessonKeys } from './lesson-keys.ts'
import { closeLesson } from './play.ts'
import { askedNow, beatOf } from './progress.ts'
import './lesson.css'
import './lesson-large.css'
import './lesson-sizes.css'

function Place({ state }: { readonly state: LessonState }) {
  const workshop = useWorkshop()
  return (
    <div className="lesson-place">
      <button
        type="button"
        className="button plain lesson-name"
        title="Its link and worksheet, and all lessons"
        onClick={() => workshop.view.setState({ sheet: 'lessons' })}
      >
        {state.lesson?.name}
      </button>
      <Suspense>
        <StageLink />
      </Suspense>
      <button
        type="button"
        className="button plain icon"
        title="Close the lesson"
        onClick={() => closeLesson(workshop)}
      >
        <Icon name="close" />
        <span className="unseen">Close the lesson</span>
      </button>
    </div>
  )
}

/** Which of the steps of a question it is at, and which question of how many. */
function Steps({ state, question }: { readonly state: LessonState; readonly question: Question }) {
  const steps: LessonStep[] = question.trial ? ['ask', 'count', 'reveal'] : ['ask', 'reveal']
  const count = beatOf(state)?.questions.length ?? 0
  return (
    <div className="lesson-steps">
      <ol aria-label="Steps">
        {steps.map((step) => (
          <li key={step} aria-current={step === state.step ? 'step' : undefined}>
            {STEP_NAMES[step]}
          </li>
        ))}
      </ol>
      {count > 1 && (
        <p className="small">
          Question {state.question + 1} of {count}
        </p>
      )}
    </div>
  )
}

const Facts = ({ facts }: Pick<Beat, 'facts'>) => (
  <dl className="lesson-facts">
    {facts.map(({ name, value }) => (
      <div key={name}>
        <dt>{name}</dt>
        <dd className="number">{value}</dd>
      </div>
    ))}
  </dl>
)

/** What is new is read from its top on. */
function useTop(beat: number, question: number) {
  const top = useRef<HTMLElement>(null)
  useEffect(() => {
    top.current?.scrollTo(0, 0)
  }, [beat, question])
  return top
}

export function LessonCard() {
  const { lesson } = useWorkshop()
  const state = useStore(lesson)
  const { lesson: open, beat: place, question: which, step, mode } = state
  const question = useMemo(
    () => (open ? askedNow({ ...lesson.getState(), lesson: open, beat: place, question: which }) : null),
    [lesson, open, place, which],
  )
  useLessonKeys()
  const top = useTop(place, which)
  const lit = useView((view) => view.lit !== null)
  const beat = beatOf(state)
  if (!beat) return null
  // In front of a room the light on its walk takes the place of what was asked before it.
  const walks = mode === 'lead' && lit && beat.stage.walk
  const covered = step === 'ask' || step === 'count'
  return (
    <section
      ref={top}
      className="lesson-card"
      data-covers="column"
      data-mode={mode}
      data-step={walks ? 'show' : step}
      aria-label="Lesson"
    >
      <Place state={state} />
      <h1>{beat.title}</h1>
      {beat.words !== '' && <p className="lead">{beat.words}</p>}
      {beat.facts.length > 0 && <Facts facts={beat.facts} />}
      {beat.safety && <SafetyCard covered={covered} />}
      {question && !walks && <Steps state={state} question={question} />}
      {question &&
        !walks &&
        (mode === 'lead' ? (
          <LedQuestion question={question} step={step} />
        ) : (
          <OwnQuestion key={`${beat.id}/${which}`} question={question} />
        ))}
    </section>
  )
}
