/** The editor itself: topics on the left, the chosen one on the right, what is wrong above both. */
import { useDeferredValue, useId, useMemo, useRef, useState } from 'react'
import { flushSync } from 'react-dom'
import type { Problem } from '../../sim/machine/problem.ts'
import { counted } from '../../sim/question/value-text.ts'
import { DEMO_MACHINES } from '../file/demo-machines.ts'
import { saveFile } from '../file/save-file.ts'
import { OpenProblems, type Outcome } from '../file/OpenProblems.tsx'
import { useWorkshop } from '../frame/workshop.ts'
import { Problems } from '../instrument/Problems.tsx'
import type { Beat, Lesson } from '../store/lesson.ts'
import { EditorBar } from './EditorBar.tsx'
import { TextField } from './EditorFields.tsx'
import { OpenButton, StartButtons } from './EditorStart.tsx'
import { EditorTopic } from './EditorTopic.tsx'
import { EditorTopics } from './EditorTopics.tsx'
import { plainBeatStage, ownId } from './edit-lesson.ts'
import { useDraft, useDraftStore } from './editor-context.ts'
import { restored } from './editor-restored.ts'
import { beatOfPath, placeOf } from './editor-words.ts'
import { checkLessonFile, printLesson } from './lesson-file.ts'
import { readLessonFile } from './open-lesson-file.ts'
import { openLesson } from './play.ts'
import { READY_LESSONS } from './ready-lessons.ts'
import '../file/machine-sheet.css'
import './editor.css'

const NO_PROBLEMS: readonly Problem[] = []

/** Opens a file into the draft; one that is not a whole lesson is opened as far as it can be mended. */
function useOpening(say: (done: string) => void) {
  const draft = useDraftStore()
  const [outcome, setOutcome] = useState<Outcome | null>(null)
  const start = (lesson: Lesson) => {
    const before = draft.store.getState().lesson
    setOutcome(null)
    draft.replace(lesson)
    say(`“${lesson.name}” is open.${before ? ` Undo brings “${before.name}” back.` : ''}`)
  }
  const open = async (file: File) => {
    const { lesson, problems } = await readLessonFile(file)
    if (lesson) {
      start(lesson)
      return
    }
    const mended = restored(await file.text().catch(() => ''), plainBeatStage(DEMO_MACHINES[0].id))
    if (mended) draft.replace(mended)
    const came = mended ? 'was opened as far as it has a form; mend it here' : 'could not be read as a lesson'
    setOutcome({ outcome: `${file.name} ${came}.`, problems })
  }
  return { outcome, start, open }
}

function LessonFields({ lesson }: { readonly lesson: Lesson }) {
  const draft = useDraftStore()
  const write = (change: Partial<Lesson>, field: string) =>
    draft.edit((last) => ({ ...last, ...change }), field)
  return (
    <div className="editor-lesson">
      <TextField
        label="Name of the lesson"
        value={lesson.name}
        most={80}
        onChange={(name) => write({ name, id: ownId(name, READY_LESSONS) }, 'lesson name')}
      />
      <details className="editor-about">
        <summary>Summary and seed</summary>
        <div>
          <TextField
            label="What it is about"
            value={lesson.summary}
            most={300}
            rows={2}
            onChange={(summary) => write({ summary }, 'lesson summary')}
          />
          <TextField
            label="Seed of drawn questions"
            value={lesson.seed}
            most={40}
            hint="The same seed asks every class the same."
            onChange={(seed) => write({ seed }, 'lesson seed')}
          />
        </div>
      </details>
    </div>
  )
}

/** Where only one of the two has room: the list, or the topic that was chosen in it. */
function usePanes() {
  const [pane, setPane] = useState<'list' | 'topic'>('list')
  const panes = useRef<HTMLDivElement>(null)
  const show = (next: 'list' | 'topic') => {
    flushSync(() => setPane(next))
    panes.current?.scrollIntoView({ block: 'start' })
  }
  return { pane, panes, show }
}

const errorsOf = (lesson: Lesson): readonly Problem[] =>
  checkLessonFile(lesson).problems.filter(({ severity }) => severity === 'error')

/** What is wrong with the lesson, while there is time to look, and for certain when it is handed on. */
function useErrors(lesson: Lesson, say: (done: string) => void) {
  const checked = useDeferredValue(lesson)
  const errors = useMemo(() => errorsOf(checked), [checked])
  const isWhole = () => {
    const found = errorsOf(lesson).length
    if (found > 0) say('First mend what is listed here.')
    return found === 0
  }
  return { errors, ofNow: checked === lesson ? errors : NO_PROBLEMS, isWhole }
}

interface ErrorsProps {
  readonly errors: readonly Problem[]
  readonly onGoTo: (path: string) => void
}

function Errors({ errors, onGoTo }: ErrorsProps) {
  const titleId = useId()
  if (errors.length === 0) return null
  return (
    <section className="editor-problems" aria-labelledby={titleId}>
      <h3 id={titleId}>{counted(errors.length, 'thing')} to mend before it can be saved or led</h3>
      <Problems problems={errors} labelOf={placeOf} onGoTo={onGoTo} />
    </section>
  )
}

interface WritingProps {
  readonly lesson: Lesson
  readonly done: string
  readonly say: (done: string) => void
  readonly onShow: (beat: Beat, question: number | null) => void
  readonly opening: ReturnType<typeof useOpening>
}

function Writing({ lesson, done, say, onShow, opening }: WritingProps) {
  const draft = useDraftStore()
  const workshop = useWorkshop()
  const selected = useDraft((now) => now.selected)
  const { errors, ofNow, isWhole } = useErrors(lesson, say)
  const { pane, panes, show } = usePanes()
  const found = lesson.beats.findIndex(({ id }) => id === selected)
  const place = Math.max(0, found)
  const beat = lesson.beats[place]
  const save = () => {
    if (!isWhole()) return
    saveFile(`${lesson.id}.json`, 'application/json', printLesson(lesson))
    say(`Saved as ${lesson.id}.json.`)
  }
  const lead = () => {
    if (isWhole()) openLesson(workshop, lesson, { builtIn: false, mode: 'lead', beat: place })
  }
  const goTo = (path: string) => {
    const to = lesson.beats[beatOfPath(path) ?? -1]
    if (to) draft.select(to.id)
    show(to ? 'topic' : 'list')
  }
  return (
    <div className="editor" data-pane={pane}>
      <EditorBar
        hasErrors={errors.length > 0}
        done={done}
        onStart={opening.start}
        onFile={(file) => void opening.open(file)}
        onSave={save}
        onLead={lead}
      />
      <div role="status">{opening.outcome && <OpenProblems {...opening.outcome} />}</div>
      <Errors errors={errors} onGoTo={goTo} />
      <div className="editor-panes" ref={panes}>
        <div className="editor-list">
          <LessonFields lesson={lesson} />
          <EditorTopics lesson={lesson} say={say} onOpen={() => show('topic')} />
        </div>
        <EditorTopic
          key={beat?.id}
          lesson={lesson}
          place={place}
          problems={ofNow}
          say={say}
          onShow={(question) => beat && onShow(beat, question)}
          onList={() => show('list')}
        />
      </div>
    </div>
  )
}

interface EditorProps {
  readonly done: string
  readonly say: (done: string) => void
  readonly onShow: (beat: Beat, question: number | null) => void
}

export function Editor({ done, say, onShow }: EditorProps) {
  const lesson = useDraft((now) => now.lesson)
  const opening = useOpening(say)
  if (lesson) return <Writing lesson={lesson} done={done} say={say} onShow={onShow} opening={opening} />
  return (
    <div className="editor-start">
      <p>
        A lesson is a row of topics. Each has a stage, a sentence, and questions if you like. Begin with one
        of these; it is kept in this browser as you write.
      </p>
      <div className="editor-buttons">
        <StartButtons onStart={opening.start} />
        <OpenButton onFile={(file) => void opening.open(file)} />
      </div>
      <div role="status">{opening.outcome && <OpenProblems {...opening.outcome} />}</div>
    </div>
  )
}
