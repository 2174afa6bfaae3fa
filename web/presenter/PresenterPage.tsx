/** The presenter window: what to say, what is asked, what comes next, how long it takes, and the stage's commands. */
import { useEffect } from 'react'
import { useStore } from 'zustand'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { Mark } from '../instrument/Mark.tsx'
import { beatOf } from '../lesson/progress.ts'
import { ClockCard } from './ClockCard.tsx'
import { Commands } from './Commands.tsx'
import { Live } from './Live.tsx'
import { NextCard } from './NextCard.tsx'
import { Notes } from './Notes.tsx'
import { QuestionCard } from './QuestionCard.tsx'
import { RoomCheckCard } from './RoomCheckCard.tsx'
import { TopicList } from './TopicList.tsx'
import { usePresenter } from './presenter-context.ts'
import { CONNECTION, whereWords } from './presenter-words.ts'
import { usePresenterKeys } from './use-presenter-keys.ts'
import './presenter.css'

function Head() {
  const mirror = useWorkshop()
  const { end } = usePresenter()
  const { stage } = useStore(end.store)
  const { lesson, blank } = useStore(mirror.lesson)
  const large = useView((view) => view.large)
  const theme = useView((view) => view.theme)
  const other = theme === 'dark' ? 'light' : 'dark'
  return (
    <header className="presenter-head">
      <Mark size={28} />
      <p className="presenter-lesson">{lesson?.name ?? 'Presenter window'}</p>
      <p className="presenter-connection" role="status" data-connected={stage === 'connected'}>
        <Icon name={stage === 'connected' ? 'check' : 'look'} size={18} />
        {CONNECTION[stage]}
        {stage === 'connected' && large && (blank ? ', covered' : ', large')}
      </p>
      <button
        type="button"
        className="button plain icon"
        title={`Make this window ${other}`}
        onClick={() => mirror.view.setState({ theme: other })}
      >
        <Icon name="theme" />
        <span className="unseen">Make this window {other}</span>
      </button>
    </header>
  )
}

/** What to do while there is no stage; the notes stay where they were. */
function NotConnected() {
  const { end } = usePresenter()
  const { stage } = useStore(end.store)
  const { lesson } = useStore(useWorkshop().lesson)
  if (stage === 'connected' || stage === 'looking') return null
  return (
    <div className="note presenter-note">
      <span>
        <Icon name="look" />
      </span>
      <p>
        <b>{CONNECTION[stage]}.</b>{' '}
        {stage === 'lost'
          ? `Open the stage again, and ${lesson ? `go on with ${lesson.name} from its list of lessons` : 'a lesson there'}. It comes back to where it was.`
          : 'Open a lesson there to lead a room, and this window follows it.'}
      </p>
      <a className="button plain" href="./index.html" target="_blank" rel="noopener">
        Open the stage
      </a>
    </div>
  )
}

function Looking() {
  return (
    <main className="presenter-alone">
      <h1>Presenter window</h1>
      <p>Looking for the stage. It is there while a lesson is led: open one under Lessons.</p>
    </main>
  )
}

function Topic() {
  const mirror = useWorkshop()
  const state = useStore(mirror.lesson)
  const beat = beatOf(state)
  if (!beat) return null
  return (
    <main className="presenter-main">
      <p className="presenter-where">{whereWords(mirror)}</p>
      <h1>{beat.title}</h1>
      {beat.words !== '' && <p className="presenter-said">On the stage: {beat.words}</p>}
      <NotConnected />
      <Notes key={beat.id} notes={beat.notes} safety={beat.safety} />
      <QuestionCard />
    </main>
  )
}

export function PresenterPage() {
  const { lesson } = useStore(useWorkshop().lesson)
  const theme = useView((view) => view.theme)
  usePresenterKeys()
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme
  }, [theme])
  return (
    <div className="presenter">
      <Head />
      {lesson ? <Topic /> : <Looking />}
      {lesson && (
        <>
          <aside className="presenter-side" aria-label="What comes next, the clock, and the machine">
            <NextCard />
            <ClockCard />
            <Live />
            <TopicList />
            <RoomCheckCard />
          </aside>
          <Commands />
        </>
      )}
    </div>
  )
}
