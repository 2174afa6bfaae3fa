/** One page: a bar, a stage, the band that counts, and what each way puts beside them. */
import { Suspense, useEffect } from 'react'
import { useStore } from 'zustand'
import { Bar } from './bar/Bar.tsx'
import { useIdle } from './bar/idle.ts'
import { useKeys } from './bar/keys.ts'
import { Caption } from './demonstrate/Caption.tsx'
import { SpokenSummary } from './demonstrate/SpokenSummary.tsx'
import { StageButtons } from './demonstrate/StageButtons.tsx'
import { StageView } from './demonstrate/StageView.tsx'
import { Transport } from './demonstrate/Transport.tsx'
import { useReducedMotion } from './demonstrate/reduced-motion.ts'
import { FileDesk } from './file/FileDesk.tsx'
import { useCovered } from './frame/asking.ts'
import { setCuts } from './frame/frame-state.ts'
import { useView, useWorkshop } from './frame/workshop.ts'
import { Panel } from './panel/Panel.tsx'
import { TurnBand } from './instrument/TurnBand.tsx'
import {
  DesignSheet,
  ForceArrowsFeed,
  LessonCard,
  LessonStart,
  PartCard,
  PredictionSheet,
  SparkFeed,
  StageNote,
  fetchLater,
} from './later.ts'
import { MeasureNotYet } from './measure/MeasureNotYet.tsx'
import type { OpenBench } from './opening.ts'
import { Sheets } from './Sheets.tsx'
import { WAYS, type Way } from './store/view.ts'
import './demonstrate/demonstrate.css'

function LeftOfStage({ way }: { readonly way: Way }) {
  const inLesson = useStore(useWorkshop().lesson, ({ lesson }) => lesson !== null)
  if (way === 'demonstrate') {
    return inLesson ? (
      <Suspense>
        <LessonCard />
      </Suspense>
    ) : (
      <Caption />
    )
  }
  return (
    <aside className="sheet-column" aria-label={way === 'predict' ? 'Prediction sheet' : 'Parameters'}>
      <Suspense>{inLesson && way === 'design' && <LessonCard />}</Suspense>
      {way === 'measure' && <MeasureNotYet />}
      <Suspense fallback={<p className="loading">Loading</p>}>
        {way === 'predict' && <PredictionSheet />}
        {way === 'design' && <DesignSheet />}
      </Suspense>
    </aside>
  )
}

function RightOfStage({ way }: { readonly way: Way }) {
  const large = useView((view) => view.large)
  const panel = useView((view) => view.panel)
  const selected = useView((view) => view.selected)
  const covered = useCovered()
  if (way === 'measure' || (way === 'predict' && (covered || panel === 'none'))) return null
  const design = way === 'design'
  const open = design && panel === 'none' ? 'figures' : panel
  const covers = !design && !large && (open !== 'none' || selected)
  return (
    <aside
      className="right-column"
      data-covers={covers ? 'right' : 'nothing'}
      aria-label={design ? 'What follows' : 'Panels'}
    >
      {way === 'demonstrate' && <StageButtons />}
      <Suspense>{selected && !covered && way !== 'predict' && <PartCard part={selected} />}</Suspense>
      {open !== 'none' && (design || !large) && <Panel panel={open} />}
    </aside>
  )
}

type AppProps = Pick<OpenBench, 'autosave' | 'opened'>

export function App({ autosave, opened }: AppProps) {
  const workshop = useWorkshop()
  const way = useView((view) => view.way)
  const theme = useView((view) => view.theme)
  // a prediction sheet is one learner's: before a room, a lesson asks
  const large = useView((view) => view.large && view.way !== 'predict')
  const covered = useCovered()
  const reducedMotion = useReducedMotion()
  const last = useStore(opened)
  const idle = useIdle(large)
  useKeys()
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme
  }, [theme])
  const ready = useView((view) => view.pictureReady || view.plan !== 'no')
  useEffect(() => {
    if (ready) fetchLater()
  }, [ready])
  useEffect(() => setCuts(workshop.frame, reducedMotion), [workshop, reducedMotion])
  const asking = way === 'predict'
  const linked = useStore(workshop.linked, ({ lesson }) => lesson !== null)
  const wide = useView((view) => view.panelWide && view.panel !== 'none')
  const forces = useView(({ gearSigns }) => gearSigns.forces)
  const sparks = useView((view) => view.sparks)
  return (
    <div className="app" data-way={way} data-large={large} data-wide={wide} data-idle={idle}>
      <Bar />
      <LeftOfStage way={way} />
      <main className="stage-area">
        {way !== 'demonstrate' && <h1 className="unseen">{WAYS.find((each) => each.way === way)?.label}</h1>}
        <StageView />
        <Suspense>{ready && <StageNote />}</Suspense>
      </main>
      <footer className="band">
        {!asking && <Transport />}
        <TurnBand size={asking ? 'predict' : large ? 'large' : 'normal'} covered={covered} />
      </footer>
      <RightOfStage way={way} />
      <Suspense>{forces && !covered && <ForceArrowsFeed />}</Suspense>
      <Suspense>{ready && sparks && <SparkFeed />}</Suspense>
      <Suspense>{linked && <LessonStart />}</Suspense>
      <SpokenSummary />
      <Sheets />
      <FileDesk key={last.nonce} autosave={autosave} first={last.outcome} />
    </div>
  )
}
