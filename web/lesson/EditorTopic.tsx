/** All that one topic says, shows and asks. */
import { useState } from 'react'
import { Icon } from '../instrument/Icon.tsx'
import { StepField } from '../instrument/StepField.tsx'
import type { Problem } from '../../sim/machine/problem.ts'
import type { Beat, Lesson } from '../store/lesson.ts'
import { CheckField, Section, TextField } from './EditorFields.tsx'
import { EditorQuestions } from './EditorQuestions.tsx'
import { EditorStage } from './EditorStage.tsx'
import { notesFrom, replaced, withBeat, withCopiedBeat, without, withoutBeat } from './edit-lesson.ts'
import { useDraftStore } from './editor-context.ts'

const MOST_FACTS = 6

interface TopicProps {
  readonly lesson: Lesson
  readonly place: number
  readonly problems: readonly Problem[]
  readonly say: (done: string) => void
  /** The topic's stage, or that of one of its questions */
  readonly onShow: (question: number | null) => void
  /** Back to the list, where there is room for one of the two only. */
  readonly onList: () => void
}

interface PartProps {
  readonly beat: Beat
  readonly onChange: (change: Partial<Beat>, field?: string) => void
}

/** The text as it is typed, empty lines and all, as long as it means these notes. */
function Notes({ beat, onChange }: PartProps) {
  const [text, setText] = useState(beat.notes.join('\n\n'))
  if (notesFrom(text).join('\n') !== beat.notes.join('\n')) setText(beat.notes.join('\n\n'))
  return (
    <TextField
      label="Notes, for the presenter alone"
      value={text}
      most={7200}
      rows={5}
      hint="Each line is a note of its own. They are never on the stage."
      onChange={(next) => {
        setText(next)
        onChange({ notes: notesFrom(next) }, 'notes')
      }}
    />
  )
}

function Facts({ beat, onChange }: PartProps) {
  const { facts } = beat
  return (
    <Section title="Facts on the card">
      {facts.map((fact, i) => (
        <div key={i} className="editor-row">
          <TextField
            label={`Quantity ${i + 1}`}
            value={fact.name}
            most={40}
            onChange={(name) => onChange({ facts: replaced(facts, i, { ...fact, name }) }, `fact ${i} name`)}
          />
          <TextField
            label={`Its value ${i + 1}`}
            value={fact.value}
            most={40}
            onChange={(value) =>
              onChange({ facts: replaced(facts, i, { ...fact, value }) }, `fact ${i} value`)
            }
          />
          <button
            type="button"
            className="button icon"
            onClick={() => onChange({ facts: without(facts, i) })}
          >
            <Icon name="close" size={16} />
            <span className="unseen">Take out fact {i + 1}</span>
          </button>
        </div>
      ))}
      {facts.length < MOST_FACTS && (
        <button
          type="button"
          className="button"
          onClick={() => onChange({ facts: [...facts, { name: '', value: '' }] })}
        >
          Add a fact
        </button>
      )}
    </Section>
  )
}

function Head({ lesson, place, say, onList }: Pick<TopicProps, 'lesson' | 'place' | 'say' | 'onList'>) {
  const draft = useDraftStore()
  const { beats } = lesson
  const copy = () => {
    const [next, id] = withCopiedBeat(lesson, place)
    draft.edit(() => next)
    draft.select(id)
    say(`Topic ${place + 2} is a copy of topic ${place + 1}.`)
  }
  const remove = () => {
    const neighbour = beats[place + 1] ?? beats[place - 1]
    draft.edit(withoutBeat(place))
    if (neighbour) draft.select(neighbour.id)
    say(`Topic ${place + 1} was taken out. Undo brings it back.`)
  }
  return (
    <div className="editor-topic-head">
      <button type="button" className="button editor-to-list" onClick={onList}>
        <Icon name="back" size={16} />
        All topics
      </button>
      <h3>
        Topic {place + 1} of {beats.length}
      </h3>
      <button type="button" className="button" onClick={copy}>
        Duplicate
      </button>
      <button type="button" className="button" disabled={beats.length === 1} onClick={remove}>
        Take out
      </button>
    </div>
  )
}

function Times({ beat, onChange }: PartProps) {
  return (
    <div className="editor-times">
      <StepField
        label="Minutes"
        value={beat.minutes}
        min={0.5}
        max={240}
        step={0.5}
        less="Half a minute less"
        more="Half a minute more"
        onChange={(minutes) => {
          onChange({ minutes }, 'minutes')
          return null
        }}
      />
      <div className="editor-checks">
        <CheckField
          label="Can be left out where time is short"
          value={beat.extra}
          onChange={(extra) => onChange({ extra })}
        />
        <CheckField
          label="Card of cautions on the stage"
          value={beat.safety}
          onChange={(safety) => onChange({ safety })}
        />
      </div>
    </div>
  )
}

export function EditorTopic({ lesson, place, problems, say, onShow, onList }: TopicProps) {
  const draft = useDraftStore()
  const beat = lesson.beats[place]
  if (!beat) return null
  const onChange = (change: Partial<Beat>, field = '') =>
    draft.edit(withBeat(place, change), field && `${beat.id} ${field}`)
  return (
    <div className="editor-beat">
      <Head lesson={lesson} place={place} say={say} onList={onList} />
      <TextField
        label="Title"
        value={beat.title}
        most={80}
        onChange={(title) => onChange({ title }, 'title')}
      />
      <TextField
        label="Words on the stage"
        value={beat.words}
        most={160}
        rows={2}
        hint="One sentence; the back row reads it."
        onChange={(words) => onChange({ words }, 'words')}
      />
      <Times beat={beat} onChange={onChange} />
      <EditorStage beat={beat} place={place} say={say} onShow={() => onShow(null)} onChange={onChange} />
      <EditorQuestions
        beat={beat}
        place={place}
        seed={lesson.seed}
        problems={problems}
        onShow={onShow}
        onChange={onChange}
      />
      <Notes beat={beat} onChange={onChange} />
      <Facts beat={beat} onChange={onChange} />
    </div>
  )
}
