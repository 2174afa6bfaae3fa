/** Where a lesson of one's own begins: empty, from a copy of a ready one, or from a file. */
import { useRef } from 'react'
import { Icon } from '../instrument/Icon.tsx'
import { randomId } from '../record/random-id.ts'
import type { Lesson } from '../store/lesson.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { stageOf } from './beat-stage.ts'
import { copyOf, emptyLesson } from './edit-lesson.ts'
import { READY_LESSONS } from './ready-lessons.ts'

/** Signs of a seed that is drawn for a new lesson; enough that no two classes share one by chance */
const SEED_LENGTH = 8

const newSeed = (): string => randomId().slice(0, SEED_LENGTH)

interface OpenButtonProps {
  readonly onFile: (file: File) => void
}

export function OpenButton({ onFile }: OpenButtonProps) {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <button type="button" className="button" onClick={() => input.current?.click()}>
        <Icon name="file" />
        Open a file
      </button>
      <input
        ref={input}
        type="file"
        hidden
        aria-label="Lesson file to edit"
        accept=".json,application/json"
        onChange={({ target }) => {
          const [file] = target.files ?? []
          if (file) onFile(file)
          target.value = ''
        }}
      />
    </>
  )
}

export function StartButtons({ onStart }: { readonly onStart: (lesson: Lesson) => void }) {
  const workshop = useWorkshop()
  return (
    <>
      <button
        type="button"
        className="button"
        onClick={() => onStart(emptyLesson(stageOf(workshop), newSeed()))}
      >
        Empty lesson
      </button>
      {READY_LESSONS.map((lesson) => (
        <button
          key={lesson.id}
          type="button"
          className="button"
          onClick={() => onStart(copyOf(lesson, newSeed()))}
        >
          Copy of “{lesson.name}”
        </button>
      ))}
    </>
  )
}
