/** Opens the lesson that a link named, alone, at its topic. Shows nothing. */
import { useEffect } from 'react'
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'
import { openLesson } from './play.ts'
import { READY_LESSONS } from './ready-lessons.ts'

export function LessonStart() {
  const workshop = useWorkshop()
  const place = useStore(workshop.linked, ({ lesson }) => lesson)
  useEffect(() => {
    if (!place) return
    workshop.linked.setState({ lesson: null })
    const lesson = READY_LESSONS.find(({ id }) => id === place.id)
    const beat = lesson?.beats.findIndex(({ id }) => id === place.beat) ?? -1
    if (lesson) openLesson(workshop, lesson, { builtIn: true, mode: 'alone', beat: Math.max(0, beat) })
    else workshop.announcer.say('The lesson of this link is not known here.')
  }, [workshop, place])
  return null
}
