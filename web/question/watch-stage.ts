/** Plays the explanation of a question: looks where there is something to see, and turns the machine as it says. */
import { TICKS_PER_TURN } from '../../sim/drive/turns.ts'
import type { Sight } from '../../sim/question/family.ts'
import type { Question } from '../../sim/question/question.ts'
import { hold, turnByDrive, zero } from '../frame/frame.ts'
import type { Workshop } from '../frame/workshop.ts'
import { openPanel } from '../panel/panels.ts'
import { lookFrom } from '../panel/stage-look.ts'
import type { PanelName, PowerStop, ViewName } from '../store/view.ts'
import { runToEnd, senseOf } from './trial-run.ts'

interface Seen {
  readonly view?: ViewName
  readonly panel?: PanelName
  readonly lit?: PowerStop
}

const SIGHTS: Readonly<Record<Sight, Seen>> = {
  marks: { view: 'gears' },
  teeth: { view: 'top' },
  underside: { view: 'brushes' },
  motor: { view: 'motor' },
  readings: { panel: 'figures' },
  waves: { panel: 'waves' },
  torque: { panel: 'torque' },
  power: { panel: 'power' },
  heat: { panel: 'heat' },
  brushes: { panel: 'brushes' },
  forces: { panel: 'forces' },
  timing: { panel: 'timing' },
  'supply chain': { panel: 'power', lit: 'socket' },
}

/** The panel that an explanation is read from; null where the stage shows it. */
export const panelOf = ({ watch }: Question): PanelName | null => (watch && SIGHTS[watch.sight].panel) ?? null

/** Looks there without turning anything. */
function lookAt(workshop: Workshop, sight: Sight): void {
  const { view: name, panel, lit } = SIGHTS[sight]
  openPanel(workshop, panel ?? 'none')
  workshop.view.setState((now) => ({
    ...(name ? lookFrom(now, name) : {}),
    ...(name === 'motor' ? { motorCut: true } : {}),
    lit: lit ?? null,
    apart: 0,
  }))
}

/** From the marks at their pointers, exactly as many worm turns as the explanation says; returns what stops it. */
export function playWatch(workshop: Workshop, question: Question): () => void {
  const { watch } = question
  const { frame, bench } = workshop
  if (!watch) return () => undefined
  lookAt(workshop, watch.sight)
  if (watch.turns === null) {
    bench.setState({ pluggedIn: true })
    if (!frame.drive.notComputed) turnByDrive(frame)
    return () => {
      if (frame.motion === 'running') hold(frame)
    }
  }
  if (watch.turns === 0) {
    hold(frame)
    return () => undefined
  }
  zero(frame)
  return runToEnd(frame, Math.round(senseOf(question) * watch.turns * TICKS_PER_TURN))
}
