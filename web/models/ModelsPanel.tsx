/** What can be taken away: parts for a printer, the scene, the drawing and the data sheet. */
import { PaperPart } from './PaperPart.tsx'
import { PrintPart } from './PrintPart.tsx'
import { type Saving, useSaving } from './use-saving.ts'
import '../gears/gears.css'
import './models.css'

export function ModelsPanel() {
  const saving = useSaving()
  return (
    <div className="gear-panel models-panel">
      <h2 className="gear-head">Models to take away</h2>
      <PrintPart saving={saving} />
      <PaperPart saving={saving} />
      <Progress saving={saving} />
    </div>
  )
}

/** Stays at the lower edge of the panel, so that it is seen from every button. */
function Progress({ saving: { progress, outcome, cancel } }: { readonly saving: Saving }) {
  return (
    <div className="models-progress" data-empty={progress === null && outcome === ''}>
      <p role="status">{progress ?? outcome}</p>
      {progress !== null && (
        <button type="button" className="button" onClick={cancel}>
          Cancel
        </button>
      )}
    </div>
  )
}
