/** What is shown of the machine, and from where. */
import { Suspense, useEffect, useRef, useState } from 'react'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { StageChoices } from '../later.ts'
import { openPanel } from '../panel/panels.ts'
import { Popover } from '../instrument/Popover.tsx'
import type { PanelName, View } from '../store/view.ts'

const CHOICES = ['Views', 'Case', 'Apart', 'Parts'] as const

/** Where the page scrolls, the panel that is opened below is brought into view, with this row above it. */
function useBroughtIntoView(panel: View['panel']) {
  const row = useRef<HTMLDivElement>(null)
  const before = useRef(panel)
  useEffect(() => {
    const opened = panel !== 'none' && panel !== before.current
    before.current = panel
    if (opened && matchMedia('(max-width: 767px)').matches) row.current?.scrollIntoView({ block: 'start' })
  }, [panel])
  return row
}

export function StageButtons() {
  const workshop = useWorkshop()
  const panel = useView((state) => state.panel)
  const open = panel !== 'none'
  const row = useBroughtIntoView(panel)
  const [last, setLast] = useState<PanelName>('figures')
  if (open && panel !== last) setLast(panel)
  return (
    <div className="stage-buttons" role="group" aria-label="Stage" ref={row}>
      {CHOICES.map((each) => (
        <Popover key={each} label={each} side="below">
          <Suspense>
            <StageChoices of={each} />
          </Suspense>
        </Popover>
      ))}
      <button
        type="button"
        className="button"
        aria-pressed={open}
        onClick={() => openPanel(workshop, open ? 'none' : last)}
      >
        Panel
      </button>
    </div>
  )
}
