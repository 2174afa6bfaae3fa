/** What can be taken away: parts for a printer, the scene, the drawing and the data sheet. */
import { useLayoutEffect, useRef } from 'react'
import { PaperPart } from './PaperPart.tsx'
import { PrintPart } from './PrintPart.tsx'
import { type Saving, useSaving } from './use-saving.ts'
import '../gears/gears.css'
import './models.css'

export function ModelsPanel() {
  const saving = useSaving()
  return (
    <div className="panel-column gear-panel models-panel">
      <h2 className="gear-head">Models to take away</h2>
      <PrintPart saving={saving} />
      <PaperPart saving={saving} />
      <Progress saving={saving} />
    </div>
  )
}

/** Stays at the lower edge of the panel, so that it is seen from every button. */
function Progress({ saving: { progress, outcome, cancel } }: { readonly saving: Saving }) {
  const words = useRef<HTMLParagraphElement>(null)
  const held = useRef(false)
  const busy = progress !== null
  // the button goes with the work, and with it the focus would go to nowhere
  useLayoutEffect(() => {
    if (!busy && held.current) words.current?.focus()
    held.current = false
  }, [busy])
  return (
    <div className="models-progress" data-empty={!busy && outcome === ''}>
      <p role="status" tabIndex={-1} ref={words}>
        {progress ?? outcome}
      </p>
      {busy && (
        <button
          type="button"
          className="button"
          onClick={cancel}
          onFocus={() => (held.current = true)}
          onBlur={() => (held.current = false)}
        >
          Cancel
        </button>
      )}
    </div>
  )
}
