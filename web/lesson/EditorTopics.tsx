/** The topics of the lesson in their order: chosen, moved by buttons or by Alt with an arrow key, added. */
import type { KeyboardEvent } from 'react'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import type { Beat, Lesson } from '../store/lesson.ts'
import { stageOf } from './beat-stage.ts'
import { totalMinutes, withBeatMoved, withNewBeat } from './edit-lesson.ts'
import { useDraft, useDraftStore } from './editor-context.ts'
import { beatSummary } from './editor-words.ts'

interface TopicsProps {
  readonly lesson: Lesson
  /** Says what was done, inside the sheet. */
  readonly say: (done: string) => void
  readonly onOpen: () => void
}

interface RowProps {
  readonly beat: Beat
  readonly place: number
  readonly count: number
  readonly isSelected: boolean
  readonly onSelect: () => void
  readonly onMove: (by: 1 | -1) => void
}

function Row({ beat, place, count, isSelected, onSelect, onMove }: RowProps) {
  const byKey = (event: KeyboardEvent) => {
    const by = ({ ArrowUp: -1, ArrowDown: 1 } as const)[event.key]
    if (by === undefined || !event.altKey) return
    event.preventDefault()
    onMove(by)
  }
  const move = (by: 1 | -1) => (
    <button
      type="button"
      className="button icon plain editor-move"
      data-up={by < 0}
      aria-disabled={by < 0 ? place === 0 : place === count - 1}
      onKeyDown={byKey}
      onClick={() => onMove(by)}
    >
      <Icon name="down" />
      <span className="unseen">
        {beat.title}: {by < 0 ? 'earlier' : 'later'}
      </span>
    </button>
  )
  return (
    <li className="editor-topic" data-selected={isSelected}>
      <button
        type="button"
        className="editor-pick"
        aria-current={isSelected ? 'true' : undefined}
        aria-keyshortcuts="Alt+ArrowUp Alt+ArrowDown"
        onKeyDown={byKey}
        onClick={onSelect}
      >
        <span className="number">{place + 1}</span>
        <span className="editor-pick-words">
          <b>{beat.title === '' ? 'No title yet' : beat.title}</b>
          <span className="small">{beatSummary(beat)}</span>
        </span>
      </button>
      {move(-1)}
      {move(1)}
    </li>
  )
}

export function EditorTopics({ lesson, say, onOpen }: TopicsProps) {
  const draft = useDraftStore()
  const workshop = useWorkshop()
  const selected = useDraft((now) => now.selected)
  const { beats } = lesson
  const move = (place: number, by: 1 | -1) => {
    const to = place + by
    if (!(to in beats)) return
    draft.edit(withBeatMoved(place, to))
    say(`${beats[place]?.title}: topic ${to + 1} of ${beats.length}.`)
  }
  const add = () => {
    const at = beats.findIndex(({ id }) => id === selected)
    const [next, id] = withNewBeat(lesson, at < 0 ? beats.length - 1 : at, stageOf(workshop))
    draft.edit(() => next)
    draft.select(id)
    say('A topic was added; it has the stage as it is now.')
    onOpen()
  }
  const short = totalMinutes(beats.filter(({ extra }) => !extra))
  const whole = totalMinutes(beats)
  return (
    <div className="editor-topics">
      <h3>Topics</h3>
      <p className="small">
        {beats.length} {beats.length === 1 ? 'topic' : 'topics'}, {whole} min
        {short < whole && `; ${short} min without those that can be left out`}
      </p>
      <ol>
        {beats.map((beat, place) => (
          <Row
            key={beat.id}
            beat={beat}
            place={place}
            count={beats.length}
            isSelected={beat.id === selected}
            onSelect={() => {
              draft.select(beat.id)
              onOpen()
            }}
            onMove={(by) => move(place, by)}
          />
        ))}
      </ol>
      <button type="button" className="button" onClick={add}>
        <Icon name="plus" size={16} />
        Add a topic
      </button>
    </div>
  )
}
