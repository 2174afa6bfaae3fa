/** The stage: the 3D picture, or the drawn plan where there is none, with the labels that stand on it. */
import { Suspense, useEffect, useMemo, useState } from 'react'
import { isHeld, useCovered } from '../frame/asking.ts'
import { useBench, useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { drawnBy } from '../frame/frame-state.ts'
import { beginDrag, dragTo, endDrag, runFrame } from '../frame/frame.ts'
import { HeatScale, StageLabels, WayInLarge } from '../later.ts'
import { PlanView } from '../instrument/PlanView.tsx'
import type { StageFrame } from '../scene/stage-props.ts'
import { requestFrame } from '../scene/ticker.ts'
import { fillsCanvas } from '../scene/views.ts'
import { type PartHeat, partHeat } from '../store/part-heat.ts'
import { IDEAL, NO_SIGNS, POWER_STOPS, type PowerStop, type View } from '../store/view.ts'
import { useFreeArea } from './free-area.ts'
import { useReducedMotion } from './reduced-motion.ts'

type StagePicture = (typeof import('../scene/Stage.tsx'))['Stage']
const loadStage = import('../scene/Stage.tsx').then(({ Stage }) => Stage)

/** Null until the stage is fetched. Suspense would show it only 300 ms after the page, however soon it came. */
function useStage(): StagePicture | null {
  const [stage, setStage] = useState<StagePicture | null>(null)
  useEffect(() => void loadStage.then((loaded) => setStage(() => loaded)), [])
  return stage
}

/** The part of the frame that the scene reads and drives. */
function useStageFrame(painters: ReadonlySet<() => void>): StageFrame {
  const { frame } = useWorkshop()
  return useMemo(
    () => ({
      turns: frame.state.turns,
      play: frame.play,
      anchors: {},
      advance: (elapsed: number) => runFrame(frame, elapsed),
      placed: () => {
        for (const painter of painters) painter()
      },
      get modelTime() {
        return frame.state.time
      },
      get pace() {
        return frame.pace
      },
      get wormTurnsPerSecond() {
        return frame.drawnSpeed
      },
      get sense() {
        return frame.sense
      },
      get needsFrame() {
        return frame.motion !== 'still'
      },
    }),
    [frame, painters],
  )
}

/** Where there are no panels, nothing leads away from a close view, and the marks could not be counted there. */
const notClose = ({ view, camera }: View): View['view'] =>
  camera === null && fillsCanvas(view.name) ? { ...view, name: 'gears' } : view

/** Whether the light on the power's way has yet to come as far as this stop. */
const isBefore = (stop: PowerStop, lit: View['lit']): boolean =>
  lit !== null && POWER_STOPS.indexOf(lit) < POWER_STOPS.indexOf(stop)

/** How warm the parts are shown; null where they are not. */
function usePartHeat(shown: boolean): PartHeat | null {
  const machine = useMachine((now) => now)
  const winding = useBench((bench) => bench.winding)
  const magnet = useBench((bench) => bench.magnet)
  const look = useView((view) => view.heatLook)
  return useMemo(
    () => (shown ? partHeat(machine, { winding, magnet }, look) : null),
    [shown, machine, winding, magnet, look],
  )
}

function Picture({ Stage }: { readonly Stage: StagePicture }) {
  const workshop = useWorkshop()
  const { view, frame } = workshop
  const machine = useMachine((now) => now)
  const state = useView((now) => now)
  const sense = useBench((bench) => bench.sense)
  const pluggedIn = useBench((bench) => bench.pluggedIn)
  const setting = useBench((bench) => bench.setting)
  const [painters] = useState(() => new Set<() => void>())
  const stageFrame = useStageFrame(painters)
  useEffect(() => drawnBy(frame, requestFrame), [frame])
  const reducedMotion = useReducedMotion()
  const freeArea = useFreeArea()
  const covered = useCovered()
  const open = state.way !== 'measure' && (state.way !== 'predict' || !covered)
  const shown = open && !covered
  const signs = shown ? state.gearSigns : NO_SIGNS
  const heat = usePartHeat(signs.heat)
  // Near the gears and the light the names would stand across the picture; forces and heat bring words of their own.
  const near = state.view.name === 'mesh' || state.view.name === 'commutator' || isBefore('worm', state.lit)
  const named = !signs.forces && !heat && !(open && near)
  return (
    <>
      <Stage
        machine={machine}
        theme={state.theme}
        caseState={state.caseState}
        motorCut={state.motorCut}
        apart={state.apart}
        view={open ? state.view : notClose(state)}
        marks
        arrows={!covered}
        quality={state.quality}
        reducedMotion={reducedMotion}
        selected={shown && state.way !== 'predict' ? state.selected : null}
        lit={open ? state.lit : null}
        pluggedIn={pluggedIn}
        setting={setting}
        freeArea={freeArea}
        gearSigns={signs}
        misplaced={signs.contact || signs.compound ? state.misplaced : IDEAL}
        sense={sense}
        meshSide={state.meshSide}
        support={state.support}
        forceArrows={state.forceArrows}
        sparking={shown && state.sparks ? state.sparking : 0}
        partHeat={heat}
        frame={stageFrame}
        onSelect={(selected) => view.setState({ selected })}
        onHandDrag={({ phase: drag, wormTurns }) => {
          if (isHeld(workshop)) return
          if (drag === 'start') beginDrag(frame)
          else if (drag === 'move') dragTo(frame, wormTurns)
          else endDrag(frame)
        }}
        onQuality={(level, why) => view.setState({ drawn: { level, slow: why === 'slow' } })}
        onCamera={(camera) => view.setState({ camera })}
        onFirstPicture={() => view.setState({ pictureReady: true })}
        onContextLost={() => view.setState({ plan: 'lost' })}
        onNoWebGl={() => view.setState({ plan: 'no-webgl' })}
      />
      {state.drawn.slow && state.quality === 'auto' && (
        <p className="drawn-plainly small">Drawn plainly to keep up. Counts are not affected.</p>
      )}
      <Suspense>
        {open && state.large && state.lit !== null && <WayInLarge left={freeArea.left + 16} />}
      </Suspense>
      <Suspense>{heat && <HeatScale heat={heat} left={freeArea.left + 16} />}</Suspense>
      <Suspense>
        {state.pictureReady && state.caseState !== 'closed' && named && (
          <StageLabels painters={painters} frame={stageFrame} free={freeArea} />
        )}
      </Suspense>
    </>
  )
}

export function StageView() {
  const plan = useView((view) => view.plan)
  const ready = useView((view) => view.pictureReady)
  const Stage = useStage()
  return (
    <section className="stage" aria-label="Stage">
      {plan === 'no' ? (
        <>
          {!ready && <PlanView ghost />}
          {Stage && <Picture Stage={Stage} />}
        </>
      ) : (
        <PlanView ghost={false} />
      )}
    </section>
  )
}
