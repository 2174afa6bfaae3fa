/** Worm and wheels for a printer: choices, what they come to, and the two files. */
import { useMemo } from 'react'
import { gearProblems } from '../../sim/gear/gear-problems.ts'
import { Problems } from '../instrument/Problems.tsx'
import { labelOfPath } from '../instrument/labels.ts'
import { begin } from './model-client.ts'
import { PrintChoices } from './PrintChoices.tsx'
import type { MeshFormat } from './print-order.ts'
import { groupedCount, sizeWords, stlWords, volumeWords } from './print-words.ts'
import { modelFileName, saveModel } from './save-model.ts'
import { type Print, type Measured, useMeasure, usePrint } from './use-print.ts'
import type { Saving } from './use-saving.ts'

const REMEDY = 'Choose the light surface or one part alone, and try again.'

export function PrintPart({ saving }: { readonly saving: Saving }) {
  const print = usePrint()
  const measured = useMeasure(print.order)
  return (
    <section aria-label="For a printer">
      <h3>For a printer</h3>
      <PrintChoices print={print} />
      <CutShort print={print} />
      <Facts measured={measured} />
      <SaveMesh print={print} saving={saving} />
      <p className="models-caution">
        Printed gears are models for showing and for turning by hand: keep fingers clear, do not load them or
        drive them from the mains.
      </p>
    </section>
  )
}

/** Errors and warnings of the teeth as they would be printed. */
function CutShort({ print }: { readonly print: Print }) {
  const { gearing } = print.order
  const problems = useMemo(
    () => gearProblems(gearing).filter(({ severity }) => severity !== 'note'),
    [gearing],
  )
  if (problems.length === 0) return null
  const hasError = problems.some(({ severity }) => severity === 'error')
  return (
    <div className="models-problems" role="note">
      <p>
        {hasError
          ? 'No whole pair of gears comes of these numbers. The model is cut short where the exact tooth ends, because:'
          : 'The model can be made, but look at this first:'}
      </p>
      <Problems problems={problems} labelOf={labelOfPath(print.machine)} />
    </div>
  )
}

function Facts({ measured: { measure, state } }: { readonly measured: Measured }) {
  const told = (words: string | null) => (measure === null || words === null ? '–' : words)
  return (
    <>
      <dl className="models-facts" data-old={state === 'busy'}>
        <div className="gear-fact">
          <dt>Triangles</dt>
          <dd className="number">{told(measure && groupedCount(measure.triangles))}</dd>
        </div>
        <div className="gear-fact">
          <dt>Size on the bed</dt>
          <dd className="number">{told(measure && sizeWords(measure))}</dd>
        </div>
        <div className="gear-fact">
          <dt>Volume, solid</dt>
          <dd className="number">{told(measure && volumeWords(measure))}</dd>
        </div>
        <div className="gear-fact">
          <dt>STL file</dt>
          <dd className="number">{told(measure && stlWords(measure))}</dd>
        </div>
      </dl>
      {state === 'failed' && <p role="alert">This model could not be measured. {REMEDY}</p>}
    </>
  )
}

function SaveMesh({ print, saving }: { readonly print: Print; readonly saving: Saving }) {
  const { machine, order } = print
  const save = (format: MeshFormat) => {
    const name = modelFileName(machine, `${order.what}-mm`, format)
    const work = (tell: (progress: string) => void) => {
      const { done, cancel } = begin({ order, format }, tell)
      const handed = done.then((answer) => {
        const file = answer?.file
        return file ? () => saveModel(name, format, file) : null
      })
      return { done: handed, cancel }
    }
    saving.save({ name, work, remedy: REMEDY })
  }
  const busy = saving.progress !== null
  return (
    <div className="models-buttons">
      <button type="button" className="button main" aria-disabled={busy} onClick={() => save('stl')}>
        Save STL (mm)
      </button>
      <button type="button" className="button" aria-disabled={busy} onClick={() => save('3mf')}>
        Save 3MF (mm)
      </button>
    </div>
  )
}
