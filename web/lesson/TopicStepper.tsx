/** Topic by topic through the lesson: back, where it is, next. */
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'

export function TopicStepper() {
  const { lesson } = useWorkshop()
  const place = useStore(lesson, ({ beat, lesson: open }) => `${beat + 1} of ${open?.beats.length}`)
  return <p className="number">{place}</p>
}
