/** Lessons that come with the program, where one was, a file of one's own, and what else belongs to a lesson. */
import { useEffect, useState } from 'react'
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'
import { CopyLink } from '../file/CopyLink.tsx'
import { OpenProblems, type Outcome } from '../file/OpenProblems.tsx'
import { writeAddress } from '../file/address.ts'
import { linkFor } from '../file/link-for.ts'
import { droppedLesson } from '../file/open-save.ts'
import { FileButton } from '../instrument/FileButton.tsx'
import { SheetDialog } from '../instrument/SheetDialog.tsx'
import type { Lesson } from '../store/lesson.ts'
import type { CheckedLesson } from './check-lesson.ts'
import { type KeptPlace, keptPlace } from './keep-place.ts'
import { lengthWords } from './lesson-words.ts'
import { parseLesson } from './lesson-file.ts'
import { readLessonFile } from './open-lesson-file.ts'
import { closeLesson, openLesson } from './play.ts'
import { READY_LESSONS } from './ready-lessons.ts'
import '../file/machine-sheet.css'
import './lessons-sheet.css'

const WAYS = { lead: 'leading a room', alone: 'alone' } as const

interface WayProps {
  readonly words: string
  readonly name: string
  readonly onOpen: () => void
}

const Way = ({ words, name, onOpen }: WayProps) => (
  <button type="button" className="button" aria-label={`${words}: ${name}`} onClick={onOpen}>
    {words}
  </button>
)

interface LessonRowProps {
  readonly lesson: Lesson
  readonly builtIn: boolean
  readonly place: KeptPlace | null
}

function LessonRow({ lesson, builtIn, place }: LessonRowProps) {
  const workshop = useWorkshop()
  const { name, summary, beats } = lesson
  const open = (mode: 'lead' | 'alone') => openLesson(workshop, lesson, { builtIn, mode })
  const mine = place && place.builtIn === builtIn && place.lesson.id === lesson.id ? place : null
  return (
    <li className="lesson-row">
      <h3>{name}</h3>
      <p>{summary}</p>
      <p className="small">{lengthWords(lesson)}</p>
      <div className="lesson-ways">
        <Way words="Lead a room" name={name} onOpen={() => open('lead')} />
        <Way words="Work through it alone" name={name} onOpen={() => open('alone')} />
        {mine && mine.seen.length > 1 && (
          <Way
            words={`Go on at topic ${mine.beat + 1} of ${beats.length}, ${WAYS[mine.mode]}`}
            name={name}
            onOpen={() => openLesson(workshop, mine.lesson, mine)}
          />
        )}
      </div>
    </li>
  )
}

interface OpenFileProps {
  readonly onRead: (name: string, checked: CheckedLesson) => void
}

function OpenFile({ onRead }: OpenFileProps) {
  const open = async (file: File | undefined) => {
    if (file) onRead(file.name, await readLessonFile(file))
  }
  return <FileButton text="Open a lesson file" label="Lesson file" onFiles={([file]) => void open(file)} />
}

function OpenNow() {
  const workshop = useWorkshop()
  const { lesson, beat, builtIn } = useStore(workshop.lesson)
  const [said, setSaid] = useState('')
  if (!lesson) return null
  const close = () => {
    closeLesson(workshop)
    workshop.view.setState({ sheet: 'none' })
  }
  const address = () => `${location.href.split('#')[0]}${writeAddress('demonstrate', linkFor(workshop))}`
  return (
    <div className="lesson-open">
      <p>
        <b>{lesson.name}</b> is open at topic {beat + 1} of {lesson.beats.length}.
      </p>
      <div className="lesson-ways">
        {builtIn && <CopyLink address={address} say={setSaid} />}
        <button type="button" className="button" onClick={close}>
          Close the lesson
        </button>
      </div>
      {!builtIn && <p className="small">A lesson of your own has no link. Hand on its file.</p>}
      <p className="small" role="status">
        {said}
      </p>
    </div>
  )
}

function outcomeOf(name: string, { lesson, problems }: CheckedLesson): Outcome {
  const outcome = lesson ? `${name} was read, but not all of it.` : `${name} could not be read as a lesson.`
  return { outcome, problems: problems.filter(({ severity }) => severity !== 'note') }
}

function Contents() {
  const { view } = useWorkshop()
  const [place] = useState(keptPlace)
  const [own, setOwn] = useState(place && !place.builtIn ? place.lesson : null)
  const [outcome, setOutcome] = useState<Outcome | null>(null)
  const onRead = (name: string, checked: CheckedLesson) => {
    setOutcome(outcomeOf(name, checked))
    if (checked.lesson) setOwn(checked.lesson)
  }
  const dropped = useStore(droppedLesson)
  useEffect(() => {
    if (dropped) onRead(dropped.name, parseLesson(dropped.text))
    droppedLesson.setState(null, true)
  }, [dropped])
  return (
    <>
      <OpenNow />
      <ul className="lesson-list">
        {READY_LESSONS.map((lesson) => (
          <LessonRow key={lesson.id} lesson={lesson} builtIn place={place} />
        ))}
        {own && <LessonRow lesson={own} builtIn={false} place={place} />}
      </ul>
      <div className="lesson-ways">
        <OpenFile onRead={onRead} />
        <button type="button" className="button" onClick={() => view.setState({ sheet: 'editor' })}>
          Lesson editor
        </button>
        <button type="button" className="button" onClick={() => view.setState({ sheet: 'worksheet' })}>
          Worksheet
        </button>
        <button type="button" className="button" onClick={() => view.setState({ sheet: 'record' })}>
          My record
        </button>
      </div>
      <div role="status">{outcome && outcome.problems.length > 0 && <OpenProblems {...outcome} />}</div>
    </>
  )
}

export function LessonsSheet() {
  return (
    <SheetDialog sheet="lessons" title="Lessons">
      <Contents />
    </SheetDialog>
  )
}
