/** The sheet in which a lesson is written, and the band that leads back to it while a stage is arranged. */
import { useCallback, useState } from 'react'
import { DEMO_MACHINES } from '../file/demo-machines.ts'
import { browserKeeper } from '../file/storage.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { SheetDialog } from '../instrument/SheetDialog.tsx'
import type { Beat } from '../store/lesson.ts'
import { Editor } from './Editor.tsx'
import { EditorStrip } from './EditorStrip.tsx'
import { arrange, endArranging } from './arrange.ts'
import { stageOf } from './beat-stage.ts'
import { plainBeatStage, withStageOf } from './edit-lesson.ts'
import { DraftProvider } from './editor-context.ts'
import { createDraft } from './editor-draft.ts'

/** The stage that is arranged: of a topic, or of one of its questions. */
interface Arranged {
  readonly id: string
  readonly question: number | null
}

export function EditorSheet() {
  const workshop = useWorkshop()
  const [draft] = useState(() => createDraft(browserKeeper(), plainBeatStage(DEMO_MACHINES[0].id)))
  const [done, setDone] = useState('')
  const [arranged, setArranged] = useState<Arranged | null>(null)
  const closed = useView((view) => view.sheet === 'none')
  const end = useCallback(() => setArranged(null), [])
  const show = (beat: Beat, question: number | null) => {
    const own = question === null ? undefined : beat.questions[question]?.stage
    arrange(workshop, own ?? beat.stage)
    setArranged({ id: beat.id, question })
  }
  const { lesson } = draft.store.getState()
  const place = lesson?.beats.findIndex(({ id }) => id === arranged?.id) ?? -1
  const beat = lesson?.beats[place]
  const which = arranged?.question ?? null
  const whose = `topic ${place + 1}${which === null ? '' : `, question ${which + 1}`}`
  const back = (said: string) => {
    setDone(said)
    endArranging(workshop)
    setArranged(null)
    workshop.view.setState({ sheet: 'editor' })
  }
  const take = () => {
    if (!beat || !arranged) return
    const { walk } = beat.stage
    draft.edit(withStageOf(place, arranged.question, { ...stageOf(workshop), walk }))
    back(`The stage as it was belongs to ${whose}.`)
  }
  return (
    <DraftProvider value={draft}>
      <SheetDialog sheet="editor" title="Lesson editor">
        <Editor done={done} say={setDone} onShow={show} />
      </SheetDialog>
      {closed && beat && (
        <EditorStrip topic={`${whose}: “${beat.title}”.`} onTake={take} onBack={() => back('')} onEnd={end} />
      )}
    </DraftProvider>
  )
}
