/** What a press of Next does, and the next topic, drawn as it will stand. */
import { useMemo } from 'react'
import { useStore } from 'zustand'
import { placeAt } from '../frame/frame.ts'
import { type Workshop, WorkshopProvider, createWorkshop, useView, useWorkshop } from '../frame/workshop.ts'
import { PlanView } from '../instrument/PlanView.tsx'
import { stageState } from '../lesson/beat-stage.ts'
import { questionAt } from '../lesson/question-of.ts'
import type { Lesson } from '../store/lesson.ts'
import { minutesText, nextWords } from './presenter-words.ts'

/** A workshop with the next topic's machine on it, standing as the topic begins. */
function workshopOf(lesson: Lesson, place: number): Workshop | null {
  const beat = lesson.beats[place]
  if (!beat) return null
  const gearing = questionAt(lesson, place, 0)?.gearing ?? null
  const stage = beat.questions[0]?.stage ?? beat.stage
  const { machine, moment } = stageState(stage, gearing)
  const workshop = createWorkshop(machine, 'light')
  workshop.view.setState({ plan: 'chosen', lit: stage.lit })
  placeAt(workshop.frame, moment.turns, moment.ticks, moment.rest)
  return workshop
}

function Thumbnail({ lesson, place }: { readonly lesson: Lesson; readonly place: number }) {
  const workshop = useMemo(() => workshopOf(lesson, place), [lesson, place])
  if (!workshop) return null
  return (
    <div className="presenter-thumbnail">
      <WorkshopProvider value={workshop}>
        <PlanView />
      </WorkshopProvider>
    </div>
  )
}

export function NextCard() {
  const mirror = useWorkshop()
  const { lesson, beat } = useStore(mirror.lesson)
  useView((view) => view.lit)
  const next = lesson?.beats[beat + 1]
  return (
    <section className="presenter-card presenter-next" aria-label="Next">
      <p className="presenter-next-words">{nextWords(mirror)}</p>
      {lesson && next && (
        <div className="presenter-next-topic">
          <Thumbnail lesson={lesson} place={beat + 1} />
          <div>
            <p className="small">
              Topic {beat + 2}, {minutesText(next.minutes)}
              {next.extra && ', can be left out'}
            </p>
            <h3>{next.title}</h3>
            <p className="small">{next.words}</p>
          </div>
        </div>
      )}
    </section>
  )
}
