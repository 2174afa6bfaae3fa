/** The one panel of the right column: a row of tabs, and what belongs to the tab that is chosen. */
import { type KeyboardEvent, Suspense, useState } from 'react'
import { useCovered } from '../frame/asking.ts'
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
import { Icon } from '../instrument/Icon.tsx'
import type { PanelName } from '../store/view.ts'
import { FigureBoundary } from './FigureBoundary.tsx'
import { PANEL_GROUPS, groupOf, openPanel, panelLabel } from './panels.ts'
import './panel.css'
import './print.css'

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
  const covered = useCovered()
  const { panels } = groupOf(panel)
  const step = (event: KeyboardEvent) => {
    const to = STEPS[event.key]?.(panels.indexOf(panel))
    const next = to === undefined ? undefined : panels.at(to % panels.length)
    if (next === undefined) return
    event.preventDefault()
    openPanel(workshop, next)
    document.getElementById(tabId(next))?.focus()
  }
  return (
    <div className="panel">
      <div className="panel-top">
        <PanelHead panel={panel} />
        <div className="panel-tabs" role="tablist" aria-label="Panel">
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
      </div>
      <div className="panel-body" role="tabpanel" id="panel" aria-labelledby={tabId(panel)} key={panel}>
        {covered ? (
          <p className="panel-covered">Covered until the reveal</p>
        ) : (
          <FigureBoundary key={panel}>
            <Suspense fallback={<p className="loading">Loading</p>}>
              {ready && <Content panel={panel} design={way === 'design'} />}
            </Suspense>
          </FigureBoundary>
        )}
      </div>
    </div>
  )
}

/** What the tabs below are about, each with the tab that was open there last; and how much room they have. */
function PanelHead({ panel }: { readonly panel: PanelName }) {
  const workshop = useWorkshop()
  const wide = useView((state) => state.panelWide)
  const group = groupOf(panel)
  const [last, setLast] = useState<Readonly<Record<string, PanelName>>>({})
  if (last[group.title] !== panel) setLast({ ...last, [group.title]: panel })
  return (
    <div className="panel-head">
      <div className="panel-groups" role="group" aria-label="Panels about">
        {PANEL_GROUPS.map(({ title, panels }) => (
          <button
            key={title}
            type="button"
            aria-pressed={title === group.title}
            onClick={() => openPanel(workshop, last[title] ?? panels[0])}
          >
            {title}
          </button>
        ))}
      </div>
      <button
        type="button"
        className="panel-wide"
        aria-pressed={wide}
        aria-label="Wide panel"
        title="Wide panel"
        onClick={() => workshop.view.setState({ panelWide: !wide })}
      >
        <Icon name={wide ? 'narrow' : 'wide'} />
      </button>
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
