/** What a topic puts on the stage: taken from the stage as it is, and shown there again. */
import { useWorkshop } from '../frame/workshop.ts'
import type { Beat } from '../store/lesson.ts'
import { CheckField, Section } from './EditorFields.tsx'
import { stageOf } from './beat-stage.ts'
import { stageWords } from './editor-words.ts'

interface StageProps {
  readonly beat: Beat
  readonly place: number
  readonly say: (done: string) => void
  readonly onShow: () => void
  readonly onChange: (change: Partial<Beat>) => void
}

export function EditorStage({ beat, place, say, onShow, onChange }: StageProps) {
  const workshop = useWorkshop()
  const { stage } = beat
  const take = () => {
    onChange({ stage: { ...stageOf(workshop), walk: stage.walk } })
    say(`The stage as it is now belongs to topic ${place + 1}.`)
  }
  return (
    <Section title="Stage">
      <p className="editor-stage-words">{stageWords(stage)}</p>
      <div className="editor-buttons">
        <button type="button" className="button" onClick={take}>
          Take this stage
        </button>
        <button type="button" className="button" onClick={onShow}>
          Show on the stage
        </button>
      </div>
      <p className="small">
        Shown there, it can be changed with everything the page has, and taken again. Your own machine waits
        meanwhile.
      </p>
      <CheckField
        label="Next walks the light along the power’s way, place by place"
        value={stage.walk}
        onChange={(walk) => onChange({ stage: { ...stage, walk } })}
      />
    </Section>
  )
}
