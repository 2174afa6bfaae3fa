/** The band on top: which way, which machine, how slowed, undo, and how it looks. */
import { useStore } from 'zustand'
import { useBench, useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { Mark } from '../instrument/Mark.tsx'
import { PACES } from '../store/bench.ts'
import { canRedo, canUndo } from '../store/document.ts'
import { WAYS } from '../store/view.ts'
import { toggleLarge, toggleTheme } from './view-actions.ts'
import './bar.css'

function Ways() {
  const way = useView((view) => view.way)
  return (
    <nav className="ways" aria-label="Ways">
      {WAYS.map((each) => (
        <a key={each.way} href={`#/${each.way}`} aria-current={each.way === way ? 'page' : undefined}>
          {each.label}
        </a>
      ))}
    </nav>
  )
}

const paceWords = (pace: number) => (pace === 1 ? 'Real speed' : `Slowed ${pace}×`)

function Pace() {
  const { bench } = useWorkshop()
  const pace = useBench((now) => now.pace)
  return (
    <label className="pace" title="Pace: how many times slower than real (, and . keys)">
      <Icon name="slow" />
      <span className="unseen">Pace</span>
      <select value={pace} onChange={(event) => bench.setState({ pace: Number(event.target.value) })}>
        {PACES.map((each) => (
          <option key={each} value={each}>
            {paceWords(each)}
          </option>
        ))}
      </select>
    </label>
  )
}

function UndoRedo() {
  const { document } = useWorkshop()
  const undoable = useStore(document.store, canUndo)
  const redoable = useStore(document.store, canRedo)
  return (
    <div className="undo-redo">
      <button
        type="button"
        className="button plain icon"
        title="Undo (Ctrl+Z)"
        aria-disabled={!undoable}
        onClick={() => document.undo()}
      >
        <Icon name="undo" />
        <span className="unseen">Undo</span>
      </button>
      <button
        type="button"
        className="button plain icon"
        title="Redo (Ctrl+Shift+Z)"
        aria-disabled={!redoable}
        onClick={() => document.redo()}
      >
        <Icon name="redo" />
        <span className="unseen">Redo</span>
      </button>
    </div>
  )
}

export function Bar() {
  const workshop = useWorkshop()
  const name = useMachine((machine) => machine.name)
  const large = useView((view) => view.large)
  const open = (sheet: 'machines' | 'keys') => workshop.view.setState({ sheet })
  return (
    <header className="bar" data-covers="top">
      <div className="wordmark">
        <Mark />
        <span>Counterturn</span>
      </div>
      <Ways />
      <button type="button" className="button plain machine-button" onClick={() => open('machines')}>
        <Icon name="file" />
        <span className="unseen">Machine: </span>
        <span className="machine-name">{name}</span>
      </button>
      <UndoRedo />
      <Pace />
      <button
        type="button"
        className="button plain large-button"
        aria-pressed={large}
        title="Large, for a projector (L)"
        onClick={() => toggleLarge(workshop)}
      >
        <Icon name="large" />
        <span>Large</span>
      </button>
      <button
        type="button"
        className="button plain icon theme-button"
        title="Light or dark (T)"
        onClick={() => toggleTheme(workshop)}
      >
        <Icon name="theme" />
        <span className="unseen">Light or dark</span>
      </button>
      <button
        type="button"
        className="button plain icon"
        title="Keys and help (?)"
        onClick={() => open('keys')}
      >
        <Icon name="help" />
        <span className="unseen">Keys and help</span>
      </button>
    </header>
  )
}
