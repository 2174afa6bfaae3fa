/** The readings: what turns how fast, with what torque and power, where the power goes, and what goes in. */
import { useBench, useMachine, useWorkshop } from '../frame/workshop.ts'
import { EFFICIENCY, valueText } from './quantities.ts'
import { NowNumber, ReadingsTable } from './ReadingsTable.tsx'
import { ratioText } from './reading-text.ts'
import type { Situation } from './situation.ts'
import { SupplyReadings } from './SupplyReadings.tsx'
import { FormulaButton, Formulas } from './use-formula.tsx'
import { byHand, useReadout, useSteady, useSteadySituation } from './use-reading.ts'
import { WithoutLosses } from './WithoutLosses.tsx'
import './readings.css'

export function Readings() {
  const steady = useSteady()
  const situation = useSteadySituation(steady)
  return (
    <div className="readings">
      <Formulas>
        <header className="readings-head">
          <h2>Readings</h2>
          <Moment stalled={steady?.stalled ?? false} locked={steady?.locked ?? false} />
        </header>
        <Ratio steady={situation} />
        {steady && situation ? (
          <>
            <ReadingsTable steady={situation} />
            <p className="readings-key small">Large: now. Below it: running steadily as set.</p>
            <WithoutLosses steady={situation} />
            <SupplyReadings steady={situation} overLimit={steady.overLimit} />
          </>
        ) : (
          <NotComputed />
        )}
      </Formulas>
    </div>
  )
}

function Moment({ stalled, locked }: { readonly stalled: boolean; readonly locked: boolean }) {
  const setting = useBench((bench) => bench.setting) + 1
  const pluggedIn = useBench((bench) => bench.pluggedIn)
  const now = useReadout((readout) => {
    if (byHand(readout)) return 'By hand, no power'
    if (readout.motion === 'still') return 'Standing still'
    if (!pluggedIn) return 'Coasting, no power'
    return `Under power, setting ${setting}`
  })
  return (
    <p className="small">
      {now}
      {locked && <>. A wheel is jammed, so steady running is a standstill.</>}
      {stalled && !locked && <>. At this setting the motor cannot turn this load.</>}
    </p>
  )
}

function Ratio({ steady }: { readonly steady: Situation | null }) {
  const ratio = useMachine(ratioText)
  return (
    <dl className="readings-first">
      <div>
        <dt>Ratio</dt>
        <dd>
          <output className="number" aria-live="off" aria-label="Ratio">
            {ratio}
          </output>
          <FormulaButton id="ratio" of="Ratio" />
        </dd>
      </div>
      {steady && (
        <div>
          <dt>Efficiency</dt>
          <dd>
            <NowNumber quantity={EFFICIENCY} />
            <span className="readings-steady number">
              <span className="unseen">steady </span>
              {valueText(EFFICIENCY, steady)}
            </span>
            <FormulaButton id="efficiency" of="Efficiency" />
          </dd>
        </div>
      )}
    </dl>
  )
}

function NotComputed() {
  const { frame } = useWorkshop()
  const starts = useMachine(({ gearing }) => gearing.wormStarts)
  const teeth = useMachine(({ gearing }) => gearing.wheelTeeth)
  return (
    <div className="readings-not">
      <p>{frame.drive.notComputed}</p>
      <p className="small">
        Counts and ratio hold all the same: {starts} {starts === 1 ? 'start' : 'starts'} on the worm, {teeth}{' '}
        teeth on each wheel.
      </p>
    </div>
  )
}
