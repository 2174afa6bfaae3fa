/** On the stage's page while a room is led: opens the presenter window, and shows what is commanded there. */
import { Suspense, useEffect, useState } from 'react'
import { createPortal } from 'react-dom'
import { useStore } from 'zustand'
import { roomOf } from '../channel/room.ts'
import { stageEndOf } from '../channel/stage-ends.ts'
import { GONE_AFTER, type StageEnd } from '../channel/stage-end.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { NotesDrawer } from '../later.ts'
import { setBlank } from '../lesson/play.ts'
import { RoomCheck } from './RoomCheck.tsx'
import './stage-link.css'

const WINDOW = 'popup,width=760,height=900'

function openPresenter(end: StageEnd): boolean {
  const room = roomOf()
  const opened = window.open(new URL(`presenter.html#${room}`, location.href), `presenter-${room}`, WINDOW)
  if (opened) end.reach(opened)
  return opened !== null
}

/** Covers the stage on purpose; a press anywhere uncovers it. */
function Cover() {
  const workshop = useWorkshop()
  const { blank } = useStore(workshop.lesson)
  const large = useView((view) => view.large)
  if (!blank || !large) return null
  return (
    <button type="button" className="stage-cover" onClick={() => setBlank(workshop, false)}>
      <span className="unseen">Uncover the stage</span>
    </button>
  )
}

interface StageNoteProps {
  readonly words: string
  readonly first: { readonly label: string; readonly act: () => void }
  readonly second: { readonly label: string; readonly act: () => void }
}

const LinkNote = ({ words, first, second }: StageNoteProps) => (
  <div className="note stage-link-note" role="alert">
    <span>
      <Icon name="look" />
    </span>
    <p>{words}</p>
    <div>
      {[first, second].map(({ label, act }) => (
        <button key={label} type="button" className="button plain" onClick={act}>
          {label}
        </button>
      ))}
    </div>
  </div>
)

type Opening = 'none' | 'blocked' | 'opened'

/** Whether a window that was opened has not answered for a while. */
function useUnanswered(opening: Opening, presenter: boolean): boolean {
  const [late, setLate] = useState(false)
  useEffect(() => {
    setLate(false)
    if (opening !== 'opened' || presenter) return undefined
    const timer = setTimeout(() => setLate(true), 2 * GONE_AFTER)
    return () => clearTimeout(timer)
  }, [opening, presenter])
  return late
}

function Linked({ end }: { readonly end: StageEnd }) {
  const { presenter, asks, checks, spins } = useStore(end.store)
  const [opening, setOpening] = useState<Opening>('none')
  const [notes, setNotes] = useState(false)
  const unanswered = useUnanswered(opening, presenter)
  const open = () => setOpening(openPresenter(end) ? 'opened' : 'blocked')
  const showNotes = () => {
    setNotes(true)
    setOpening('none')
  }
  const failed = opening === 'blocked' || (unanswered && !presenter)
  return (
    <>
      <button
        type="button"
        className="button plain"
        title={
          presenter ? 'It is open and follows this stage' : 'Notes and answers, in a window of their own'
        }
        onClick={open}
      >
        {presenter && <Icon name="check" size={16} />}
        Presenter window
      </button>
      {createPortal(
        <>
          {checks && <RoomCheck spins={spins} onEnd={end.endCheck} />}
          <Cover />
          {asks && (
            <LinkNote
              words="Another window leads this lesson. Which of the two shall lead?"
              first={{ label: 'Lead from here', act: end.lead }}
              second={{ label: 'Leave it there', act: end.leave }}
            />
          )}
          {failed && (
            <LinkNote
              words={
                opening === 'blocked'
                  ? 'The browser opened no second window.'
                  : 'The second window does not reach this page.'
              }
              first={{ label: 'Try again', act: open }}
              second={{ label: 'Notes on this page', act: showNotes }}
            />
          )}
          <Suspense>{notes && <NotesDrawer onClose={() => setNotes(false)} />}</Suspense>
        </>,
        document.body,
      )}
    </>
  )
}

/** Nobody presents where a lesson is worked through alone. */
export function StageLink() {
  const workshop = useWorkshop()
  const led = useStore(workshop.lesson, ({ lesson, mode }) => lesson !== null && mode === 'lead')
  const [end, setEnd] = useState<StageEnd | null>(null)
  useEffect(() => setEnd(led ? stageEndOf(workshop) : null), [workshop, led])
  return end && <Linked end={end} />
}
