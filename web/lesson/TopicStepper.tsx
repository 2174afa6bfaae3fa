/** Topic by topic through the lesson: back, where it is, next. */
import { useRef } from 'react'
import { useStore } from 'zustand'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { Popover } from '../instrument/Popover.tsx'
import { STEP_NAMES, comingWords } from './lesson-words.ts'
import { back, comingNext, goTo, next } from './play.ts'
import './topics.css'

interface TopicsProps {
  readonly onGo: (beat: number) => void
}

function Topics({ onGo }: TopicsProps) {
  const workshop = useWorkshop()
  const { lesson, beat, seen } = useStore(workshop.lesson)
  return (
    <ol className="topics">
      {lesson?.beats.map(({ id, title, minutes, extra }, place) => (
        <li key={id}>
          <button
            type="button"
            className="button plain"
            aria-current={place === beat ? 'step' : undefined}
            onClick={() => onGo(place)}
          >
            <span className="topic-seen">{seen.includes(id) && <Icon name="check" size={18} />}</span>
            <span className="number">{place + 1}</span>
            <span className="topic-title">
              {title}
              {seen.includes(id) && <span className="unseen">, seen</span>}
            </span>
            <span className="small">
              {extra && 'extra, '}
              {minutes} min
            </span>
          </button>
        </li>
      ))}
    </ol>
  )
}

export function TopicStepper() {
  const workshop = useWorkshop()
  const { lesson, beat, step, blank } = useStore(workshop.lesson)
  const list = useRef<HTMLDivElement>(null)
  useView((view) => view.lit)
  if (!lesson) return null
  const then = comingNext(workshop)
  // The list closes with the topic that it was opened at, and hands the focus to what opens it again.
  const go = (to: number) => {
    goTo(workshop, to)
    requestAnimationFrame(() => list.current?.querySelector('button')?.focus())
  }
  return (
    <div className="topic-stepper" role="group" aria-label="Topics" data-leaves-open>
      <button
        type="button"
        className="button icon"
        title="Back (Page up)"
        aria-keyshortcuts="PageUp"
        onClick={() => back(workshop)}
      >
        <Icon name="back" />
        <span className="unseen">Back</span>
      </button>
      <div ref={list}>
        <Popover key={beat} label={`${beat + 1} of ${lesson.beats.length}`} side="above">
          <Topics onGo={go} />
        </Popover>
      </div>
      <p className="topic-step small">{blank ? 'Covered' : step === 'show' ? '' : STEP_NAMES[step]}</p>
      <button
        type="button"
        className="button main topic-next"
        title="Next (Page down)"
        aria-keyshortcuts="PageDown"
        aria-disabled={then.kind === 'end'}
        onClick={() => next(workshop)}
      >
        {comingWords(then)}
        <Icon name="next" />
      </button>
    </div>
  )
}
