/** The notes of a topic, large enough to read from a lectern. */
interface NotesProps {
  readonly notes: readonly string[]
  /** The card of cautions stands on the stage. */
  readonly safety: boolean
}

export function Notes({ notes, safety }: NotesProps) {
  return (
    <section className="presenter-notes" aria-label="Notes">
      {notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      {notes.length === 0 && <p className="small">No notes for this topic.</p>}
      {safety && <p className="small">The cautions stand on the stage.</p>}
    </section>
  )
}
