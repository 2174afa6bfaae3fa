/** Everything on the page that has to do with files: the machine sheet, the drop of a file, and what came of it. */
import { useCallback, useState } from 'react'
import type { Machine } from '../../sim/machine/machine.ts'
import type { Problem } from '../../sim/machine/problem.ts'
import { useWorkshop } from '../frame/workshop.ts'
import type { Autosave } from './autosave.ts'
import { DropTarget } from './DropTarget.tsx'
import { MachineSheet } from './MachineSheet.tsx'
import { OpenProblems } from './OpenProblems.tsx'
import { openMachine, readMachineFile } from './open-save.ts'
import { useFileDrop } from './use-file-drop.ts'
import './file.css'

/** What came of the last thing opened: a sentence and the problems. */
export interface Outcome {
  readonly outcome: string
  readonly problems: readonly Problem[]
}

interface FileDeskProps {
  readonly autosave: Autosave
  /** What came of the link or the autosave that the page opened with; null when all was well. */
  readonly first?: Outcome | null
}

function useOpening(first: Outcome | null) {
  const workshop = useWorkshop()
  const [last, setLast] = useState(first)
  const openFiles = useCallback(
    async (files: readonly File[]) => {
      const [file] = files
      if (!file) return
      const { name, machine, problems } = await readMachineFile(file)
      const rest = files.length > 1 ? ' Only the first file was read.' : ''
      const outcome = machine
        ? `${machine.name} is on the bench, from ${name}.${rest}`
        : `${name} was not opened. The machine on the bench is still there.${rest}`
      if (machine) openMachine(workshop, machine)
      workshop.announcer.say(outcome)
      const toTell = machine ? problems.filter(({ severity }) => severity !== 'note') : problems
      setLast({ outcome, problems: toTell })
      workshop.view.setState({ sheet: toTell.length > 0 ? 'machines' : 'none' })
    },
    [workshop],
  )
  const choose = (machine: Machine) => {
    openMachine(workshop, machine)
    workshop.announcer.say(`${machine.name} is on the bench.`)
    setLast(null)
    workshop.view.setState({ sheet: 'none' })
  }
  return { last, openFiles, choose }
}

export function FileDesk({ autosave, first = null }: FileDeskProps) {
  const { last, openFiles, choose } = useOpening(first)
  const onFiles = useCallback((files: readonly File[]) => void openFiles(files), [openFiles])
  const over = useFileDrop(onFiles)
  return (
    <>
      <MachineSheet autosave={autosave} onMachine={choose} onFiles={onFiles}>
        {last && last.problems.length > 0 && <OpenProblems {...last} />}
      </MachineSheet>
      {over && <DropTarget />}
    </>
  )
}
