/** Everything on the page that has to do with files: the machine sheet, the drop of a file, and what came of it. */
import { Suspense, lazy, useCallback, useState } from 'react'
import type { Machine } from '../../sim/machine/machine.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import type { Autosave } from './autosave.ts'
import { DropTarget } from './DropTarget.tsx'
import type { Outcome } from './OpenProblems.tsx'
import { useFileDrop } from './use-file-drop.ts'

const MachineSheet = lazy(async () => ({ default: (await import('./MachineSheet.tsx')).MachineSheet }))

const fetchOpening = () => import('./open-machine.ts')

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
      const { droppedLesson, readMachineFile } = await import('./open-save.ts')
      const { name, machine, problems, lesson } = await readMachineFile(file)
      if (lesson !== null) {
        droppedLesson.setState({ name, text: lesson }, true)
        workshop.view.setState({ sheet: 'lessons' })
        return
      }
      const rest = files.length > 1 ? ' Only the first file was read.' : ''
      const outcome = machine
        ? `${machine.name} is on the bench, from ${name}.${rest}`
        : `${name} was not opened. The machine on the bench is still there.${rest}`
      if (machine) (await fetchOpening()).openMachine(workshop, machine)
      workshop.announcer.say(outcome)
      const toTell = machine ? problems.filter(({ severity }) => severity !== 'note') : problems
      setLast({ outcome, problems: toTell })
      workshop.view.setState({ sheet: toTell.length > 0 ? 'machines' : 'none' })
    },
    [workshop],
  )
  const choose = async (machine: Machine) => {
    const { openMachine } = await fetchOpening()
    openMachine(workshop, machine)
    workshop.announcer.say(`${machine.name} is on the bench.`)
    setLast(null)
    workshop.view.setState({ sheet: 'none' })
  }
  return { last, openFiles, choose }
}

/** The sheet is fetched when it is first opened; from then on it stays, so that it can hand the focus back. */
function useSheetWanted(): boolean {
  const open = useView(({ sheet }) => sheet === 'machines')
  const [wanted, setWanted] = useState(open)
  if (open && !wanted) setWanted(true)
  return wanted
}

export function FileDesk({ autosave, first = null }: FileDeskProps) {
  const { last, openFiles, choose } = useOpening(first)
  const onFiles = useCallback((files: readonly File[]) => void openFiles(files), [openFiles])
  const over = useFileDrop(onFiles)
  const sheet = useSheetWanted()
  return (
    <>
      <Suspense>
        {sheet && (
          <MachineSheet
            autosave={autosave}
            onMachine={(machine) => void choose(machine)}
            onFiles={onFiles}
            last={last}
          />
        )}
      </Suspense>
      {over && <DropTarget />}
    </>
  )
}
