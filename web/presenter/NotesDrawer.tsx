/** One window for both: notes and answer in a drawer on the stage's page, only where they were asked for. */
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { beatOf } from '../lesson/progress.ts'
import { Notes } from './Notes.tsx'
import { QuestionCard } from './QuestionCard.tsx'
import { nextWords } from './presenter-words.ts'
import './presenter.css'

export function NotesDrawer({ onClose }: { readonly onClose: () => void }) {
  const workshop = useWorkshop()
  const beat = beatOf(useStore(workshop.lesson))
  if (!beat) return null
  return (
    <aside className="notes-drawer" aria-label="Notes on this page">
      <div className="notes-drawer-head">
        <h2>{beat.title}</h2>
        <button type="button" className="button plain icon" title="Close the notes" onClick={onClose}>
          <Icon name="close" />
          <span className="unseen">Close the notes</span>
        </button>
      </div>
      <p className="small">Whoever sees this page sees the notes. {nextWords(workshop)}</p>
      <Notes key={beat.id} notes={beat.notes} safety={beat.safety} />
      <QuestionCard />
    </aside>
  )
}
