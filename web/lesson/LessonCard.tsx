/** What the lesson says now: where the caption stands otherwise. */
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'

export function LessonCard() {
  const workshop = useWorkshop()
  const title = useStore(workshop.lesson, ({ lesson, beat }) => lesson?.beats[beat]?.title)
  return (
    <section className="caption" data-covers="left" aria-label="Lesson">
      <h1>{title}</h1>
    </section>
  )
}
