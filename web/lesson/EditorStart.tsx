/** Where a lesson of one's own begins: empty, from a copy of a ready one, or from a file. */
import { FileButton } from '../instrument/FileButton.tsx'
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

export const OpenButton = ({ onFile }: OpenButtonProps) => (
  <FileButton text="Open a file" label="Lesson file to edit" onFiles={([file]) => file && onFile(file)} />
)

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
