/** On the stage's page while a room is led: opens the presenter window, and shows what is commanded there. */
import { useEffect, useState } from 'react'
import { createPortal } from 'react-dom'
import { useStore } from 'zustand'
import { roomOf } from '../channel/room.ts'
import { stageEndOf } from '../channel/stage-ends.ts'
import { GONE_AFTER, type StageEnd } from '../channel/stage-end.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { setBlank } from '../lesson/play.ts'
import { NotesDrawer } from './NotesDrawer.tsx'
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

interface LinkNoteProps {
  readonly words: string
  readonly actions: readonly { readonly label: string; readonly act: () => void }[]
}

const LinkNote = ({ words, actions }: LinkNoteProps) => (
  <div className="note stage-link-note" role="alert">
    <span>
      <Icon name="look" />
    </span>
    <p>{words}</p>
    <div>
      {actions.map(({ label, act }) => (
        <button key={label} type="button" className="button plain" onClick={act}>
          {label}
        </button>
      ))}
    </div>
  </div>
)

type Opening = 'none' | 'blocked' | 'opened'

/** Whether and how the second window was last opened, and whether it has not answered for a while. */
function useOpening(presenter: boolean) {
  const [opening, setOpening] = useState<Opening>('none')
  const [late, setLate] = useState(false)
  // Once it has answered, that it is closed again is no fault.
  if (presenter && opening === 'opened') setOpening('none')
  useEffect(() => {
    setLate(false)
    if (opening !== 'opened') return undefined
    const timer = setTimeout(() => setLate(true), 2 * GONE_AFTER)
    return () => clearTimeout(timer)
  }, [opening])
  return { opening, setOpening, failed: opening === 'blocked' || (opening === 'opened' && late) }
}

function Linked({ end }: { readonly end: StageEnd }) {
  const { presenter, asks, checks, spins } = useStore(end.store)
  const { opening, setOpening, failed } = useOpening(presenter)
  const [notes, setNotes] = useState(false)
  const open = () => setOpening(openPresenter(end) ? 'opened' : 'blocked')
  const showNotes = () => {
    setNotes(true)
    setOpening('none')
  }
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
              actions={[
                { label: 'Lead from here', act: end.lead },
                { label: 'Leave it there', act: end.leave },
              ]}
            />
          )}
          {failed && (
            <LinkNote
              words={
                opening === 'blocked'
                  ? 'The browser opened no second window.'
                  : 'The second window does not reach this page.'
              }
              actions={[
                { label: 'Try again', act: open },
                { label: 'Notes on this page', act: showNotes },
                { label: 'Go on without', act: () => setOpening('none') },
              ]}
            />
          )}
          {notes && <NotesDrawer onClose={() => setNotes(false)} />}
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
