/** What is done with the lesson as a whole: taken back, begun anew, opened, saved, led. */
import { Icon } from '../instrument/Icon.tsx'
import type { Lesson } from '../store/lesson.ts'
import { OpenButton, StartButtons } from './EditorStart.tsx'
import { useDraft, useDraftStore } from './editor-context.ts'

interface BarProps {
  readonly hasErrors: boolean
  readonly done: string
  readonly onStart: (lesson: Lesson) => void
  readonly onFile: (file: File) => void
  readonly onSave: () => void
  readonly onLead: () => void
}

function Steps() {
  const draft = useDraftStore()
  const canUndo = useDraft(({ past }) => past.length > 0)
  const canRedo = useDraft(({ future }) => future.length > 0)
  return (
    <>
      <button type="button" className="button" aria-disabled={!canUndo} onClick={draft.undo}>
        <Icon name="undo" />
        Undo
      </button>
      <button type="button" className="button" aria-disabled={!canRedo} onClick={draft.redo}>
        <Icon name="redo" />
        Redo
      </button>
    </>
  )
}

export function EditorBar({ hasErrors, done, onStart, onFile, onSave, onLead }: BarProps) {
  const isKept = useDraft((now) => now.isKept)
  return (
    <div className="editor-bar">
      <div className="editor-buttons">
        <Steps />
        <details className="editor-new">
          <summary className="button">New lesson</summary>
          <div>
            <p className="small">It takes the place of this one; Undo brings this one back.</p>
            <StartButtons onStart={onStart} />
          </div>
        </details>
        <OpenButton onFile={onFile} />
        <button type="button" className="button" aria-disabled={hasErrors} onClick={onSave}>
          Save to a file
        </button>
        <button type="button" className="button" aria-disabled={hasErrors} onClick={onLead}>
          Lead it from here
        </button>
      </div>
      <p className="small" role="status">
        {done !== ''
          ? done
          : isKept
            ? 'Kept in this browser as it is written.'
            : 'This browser does not keep it: save it to a file before the page is closed.'}
      </p>
    </div>
  )
}
