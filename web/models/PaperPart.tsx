/** The scene, the drawing and the printed sheet: the machine as it is, without what a printer needs. */
import { useState } from 'react'
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import { PrintedPage } from './PrintedPage.tsx'
import { fileDrawing } from './drawing.ts'
import { svgFile } from './marks.ts'
import { modelFileName, saveModel } from './save-model.ts'
import type { Saving } from './use-saving.ts'

export function PaperPart({ saving }: { readonly saving: Saving }) {
  const { frame, view, bench } = useWorkshop()
  const machine = useMachine((now) => now)
  const [printing, setPrinting] = useState(false)
  const busy = saving.progress !== null

  const saveScene = () => {
    const name = modelFileName(machine, 'scene-m', 'glb')
    const { apart, motorCut, caseState } = view.getState()
    const { setting, pluggedIn } = bench.getState()
    const { play, state } = frame
    const moment = {
      machine,
      turns: { ...state.turns },
      play,
      apart,
      motorCut,
      setting,
      pluggedIn,
      closed: caseState === 'closed',
    }
    const work = (tell: (progress: string) => void) => {
      tell('Writing the scene')
      const made = import('./scene-file.ts').then(({ sceneFile }) => sceneFile(moment))
      return { done: made.then((file) => () => saveModel(name, 'glb', file)), cancel: () => {} }
    }
    saving.save({ name, work, remedy: 'Reload the page and try again.' })
  }
  const saveDrawing = () => {
    const name = modelFileName(machine, 'drawing-mm', 'svg')
    const drawn = Promise.resolve().then(() => svgFile(fileDrawing(machine.name, machine.gearing)))
    const work = () => ({ done: drawn.then((svg) => () => saveModel(name, 'svg', svg)), cancel: () => {} })
    saving.save({ name, work, remedy: 'Look at the checks of this design first.' })
  }
  return (
    <section aria-label="For a screen and for paper">
      <h3>For a screen and for paper</h3>
      <p className="small">
        The machine as it is, with its own backlash and bore, and as it stands on the stage now.
      </p>
      <div className="models-buttons" data-stacked="true">
        <button type="button" className="button" aria-disabled={busy} onClick={saveScene}>
          Save glTF of the scene (m)
        </button>
        <button type="button" className="button" aria-disabled={busy} onClick={saveDrawing}>
          Save drawing (SVG, mm)
        </button>
        <button type="button" className="button" onClick={() => setPrinting(true)}>
          Print data sheet
        </button>
      </div>
      {printing && <PrintedPage onDone={() => setPrinting(false)} />}
    </section>
  )
}
