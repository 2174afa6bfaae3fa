/** The sheet in which a machine is chosen, opened, saved and handed on. */
import { useEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import type { Machine } from '../../sim/machine/machine.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { FileButton } from '../instrument/FileButton.tsx'
import { Icon } from '../instrument/Icon.tsx'
import { writeAddress } from './address.ts'
import type { Autosave } from './autosave.ts'
import { CopyLink } from './CopyLink.tsx'
import { MachineList } from './MachineList.tsx'
import { OpenProblems, type Outcome } from './OpenProblems.tsx'
import { saveMachine } from './open-save.ts'
import { linkFor } from './link-for.ts'
import { ownState } from './workshop-state.ts'
import './machine-sheet.css'

interface MachineSheetProps {
  readonly autosave: Autosave
  readonly onMachine: (machine: Machine) => void
  readonly onFiles: (files: readonly File[]) => void
  readonly last: Outcome | null
}

const SAVED = {
  'nothing yet': 'Changes are saved in this browser.',
  waiting: 'Saving in this browser.',
  saved: 'Saved in this browser.',
}

function Saved({ autosave }: Pick<MachineSheetProps, 'autosave'>) {
  const { status, reason } = useStore(autosave.store)
  return <p className="small">{status === 'not saved' ? reason : SAVED[status]}</p>
}

/** What was just done is said in here: while the sheet is open, nothing outside of it is heard. */
function Contents({ autosave, onMachine, onFiles, last }: MachineSheetProps) {
  const workshop = useWorkshop()
  const [done, setDone] = useState('')
  const address = () => {
    const { way } = workshop.view.getState()
    return `${location.href.split('#')[0]}${writeAddress(way, linkFor(workshop))}`
  }
  const save = () => setDone(`Saved as ${saveMachine(ownState(workshop).machine)}.`)
  return (
    <>
      <MachineList onChoose={onMachine} />
      <div className="machine-files">
        <FileButton text="Open a file" label="Machine file" onFiles={onFiles} />
        <button type="button" className="button" onClick={save}>
          Save to a file
        </button>
        <CopyLink address={address} say={setDone} />
      </div>
      <div className="machine-lines">
        <Saved autosave={autosave} />
        <p className="small" role="status">
          {done}
        </p>
      </div>
      <div className="machine-outcome" role="status">
        {last && last.problems.length > 0 && <OpenProblems {...last} />}
      </div>
    </>
  )
}

export function MachineSheet(props: MachineSheetProps) {
  const { view } = useWorkshop()
  const open = useView(({ sheet }) => sheet === 'machines')
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    if (open) dialog.current?.showModal()
    else dialog.current?.close()
  }, [open])
  const close = () => {
    if (view.getState().sheet === 'machines') view.setState({ sheet: 'none' })
  }
  return (
    <dialog
      ref={dialog}
      className="machine-sheet"
      closedby="any"
      aria-labelledby="machine-sheet-title"
      onClose={close}
    >
      <div className="machine-sheet-page">
        <header>
          <h2 id="machine-sheet-title">Machine</h2>
          <button type="button" className="button plain icon" onClick={close}>
            <Icon name="close" />
            <span className="unseen">Close</span>
          </button>
        </header>
        {open && <Contents {...props} />}
      </div>
    </dialog>
  )
}
