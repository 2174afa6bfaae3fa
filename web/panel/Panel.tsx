/** The one panel of the right column: a row of tabs, and what belongs to the tab that is chosen. */
import { type KeyboardEvent, Suspense } from 'react'
import { useView, useWorkshop } from '../frame/workshop.ts'
import {
  BrushesPanel,
  ContactPanel,
  DesignFacts,
  ForcesPanel,
  HeatPanel,
  ModelsPanel,
  PowerPanel,
  Readings,
  TimingPanel,
  TorquePanel,
  WavesPanel,
} from '../later.ts'
import type { PanelName } from '../store/view.ts'
import { PANELS, PANEL_ROWS, openPanel, panelLabel } from './panels.ts'
import './panel.css'

const STEPS: Readonly<Record<string, (at: number) => number>> = {
  ArrowRight: (at) => at + 1,
  ArrowLeft: (at) => at - 1,
  Home: () => 0,
  End: () => -1,
}

const tabId = (panel: PanelName) => `tab-${panel}`

export function Panel({ panel }: { readonly panel: PanelName }) {
  const workshop = useWorkshop()
  const way = useView((view) => view.way)
  const ready = useView((view) => view.pictureReady || view.plan !== 'no')
  const step = (event: KeyboardEvent) => {
    const to = STEPS[event.key]?.(PANELS.indexOf(panel))
    const next = to === undefined ? undefined : PANELS.at(to % PANELS.length)
    if (next === undefined) return
    event.preventDefault()
    openPanel(workshop, next)
    document.getElementById(tabId(next))?.focus()
  }
  return (
    <div className="panel">
      <div className="panel-tabs" role="tablist" aria-label="Panel">
        {PANEL_ROWS.map(({ title, panels }) => (
          <div key={title} className="panel-row" role="presentation">
            <span className="panel-row-title" aria-hidden="true">
              {title}
            </span>
            {panels.map((each) => (
              <button
                key={each}
                type="button"
                role="tab"
                id={tabId(each)}
                aria-selected={each === panel}
                aria-controls={each === panel ? 'panel' : undefined}
                tabIndex={each === panel ? 0 : -1}
                onClick={() => openPanel(workshop, each)}
                onKeyDown={step}
              >
                {panelLabel(each, way)}
              </button>
            ))}
          </div>
        ))}
      </div>
      <div className="panel-body" role="tabpanel" id="panel" aria-labelledby={tabId(panel)} key={panel}>
        <Suspense fallback={<p className="loading">Loading</p>}>
          {ready && <Content panel={panel} design={way === 'design'} />}
        </Suspense>
      </div>
    </div>
  )
}

function Content({ panel, design }: { readonly panel: PanelName; readonly design: boolean }) {
  switch (panel) {
    case 'figures':
      return design ? <DesignFacts /> : <Readings />
    case 'waves':
      return <WavesPanel />
    case 'torque':
      return <TorquePanel />
    case 'power':
      return <PowerPanel />
    case 'heat':
      return <HeatPanel />
    case 'brushes':
      return <BrushesPanel />
    case 'contact':
      return (
        <>
          <h2 className="unseen">Contact</h2>
          <ContactPanel />
        </>
      )
    case 'forces':
      return <ForcesPanel />
    case 'timing':
      return (
        <>
          <h2 className="unseen">Timing</h2>
          <TimingPanel />
        </>
      )
    case 'models':
      return <ModelsPanel />
  }
}
