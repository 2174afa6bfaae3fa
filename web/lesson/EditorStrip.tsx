/** While a topic's stage is arranged: which topic it is, and the way back, in a band over the stage. */
import { useEffect, useRef } from 'react'
import { useWorkshop } from '../frame/workshop.ts'

interface StripProps {
  readonly topic: string
  readonly onTake: () => void
  readonly onBack: () => void
  readonly onEnd: () => void
}

export function EditorStrip({ topic, onTake, onBack, onEnd }: StripProps) {
  const { view, lesson } = useWorkshop()
  const first = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    first.current?.focus()
    // on a telephone the stage is the top of a long page
    scrollTo(0, 0)
  }, [])
  useEffect(() => {
    const ends = [
      view.subscribe(({ way }) => way === 'predict' && onEnd()),
      lesson.subscribe((now) => now.lesson !== null && onEnd()),
    ]
    return () => {
      for (const end of ends) end()
    }
  }, [view, lesson, onEnd])
  return (
    <section className="editor-strip" aria-label="Stage of a topic">
      <p>
        <b>Stage of {topic}</b> Change it as you like, then take it.
      </p>
      <button ref={first} type="button" className="button main" onClick={onTake}>
        Take this stage
      </button>
      <button type="button" className="button" onClick={onBack}>
        Back, leaving it as it was
      </button>
    </section>
  )
}
