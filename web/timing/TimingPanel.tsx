/** How the two outputs pass each other: the dial, the teeth to choose from, and putting it back together. */
import { useEffect, useRef } from 'react'
import { clearanceAt } from '../../sim/gear/row-clearance.ts'
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import { Dial } from './Dial.tsx'
import { DistanceStrip } from './DistanceStrip.tsx'
import { FirstMeeting } from './FirstMeeting.tsx'
import { PhaseList } from './PhaseList.tsx'
import { ReassemblySteps } from './ReassemblySteps.tsx'
import { RowsPicture } from './RowsPicture.tsx'
import { leftRowAngle, rightRowAngle } from './row-angles.ts'
import { aheadText, angleText, distanceText, headline, rowsWord, zonesText } from './timing-words.ts'
import { useReassembly } from './use-reassembly.ts'
import { type Timing, useTiming } from './use-timing.ts'
import './timing.css'

export function TimingPanel() {
  const timing = useTiming(useMachine((machine) => machine))
  const reassembly = useReassembly(timing)
  const { exercise, done } = reassembly
  const covered = exercise.step !== 'together' && !done
  const head = covered ? null : <Head key="head" timing={timing} />
  const tooth = exercise.step === 'out' ? exercise.tooth : timing.chosen.toothOffset
  const picture = <RowsPicture key="picture" timing={timing} out={exercise.step === 'out'} tooth={tooth} />
  const distances = covered ? null : <Distances key="distances" timing={timing} />
  const steps = <ReassemblySteps key="steps" timing={timing} reassembly={reassembly} />
  const list = covered ? null : <PhaseList key="list" timing={timing} />
  return (
    <div className="panel-column timing">
      {exercise.step === 'together'
        ? [head, picture, distances, steps, list]
        : [picture, steps, head, distances, list]}
      {covered && <p className="small">Dial and teeth are covered until the hand has turned.</p>}
    </div>
  )
}

function Head({ timing }: { readonly timing: Timing }) {
  const { pair, chosen, zones } = timing
  return (
    <section className="timing-head">
      <p className="timing-headline">{headline(chosen, pair)}</p>
      <Dial timing={timing} />
      <div className="timing-angle">
        <span className="number">{angleText(chosen.offset)}</span>
        <p>
          {aheadText(pair)} {zonesText(zones, pair)}
        </p>
      </div>
    </section>
  )
}

function Distances({ timing }: { readonly timing: Timing }) {
  const { pair, chosen } = timing
  return (
    <section>
      <h3>Distance of the {rowsWord(pair)}</h3>
      <dl className="timing-distances">
        <div>
          <dt>Now</dt>
          <dd>
            <DistanceNow timing={timing} />
          </dd>
        </div>
        <div>
          <dt>Least in a turn</dt>
          <dd className="number">{distanceText(chosen.distance)}</dd>
        </div>
        <div>
          <dt>Needed</dt>
          <dd className="number">{distanceText(pair.need)}</dd>
        </div>
      </dl>
      <DistanceStrip timing={timing} />
      {chosen.distance <= pair.need && <FirstMeeting timing={timing} />}
    </section>
  )
}

/** Painted with every frame. */
function DistanceNow({ timing }: { readonly timing: Timing }) {
  const { frame } = useWorkshop()
  const now = useRef<HTMLSpanElement>(null)
  const { layout, pair } = timing
  useEffect(() => {
    const painter = () => {
      const u = rightRowAngle(layout, frame.state.turns, frame.play)
      const offset = u - leftRowAngle(layout, frame.state.turns, frame.play)
      const text = distanceText(clearanceAt(pair.rows, u, offset))
      if (now.current && now.current.textContent !== text) now.current.textContent = text
    }
    frame.painters.add(painter)
    painter()
    return () => void frame.painters.delete(painter)
  }, [frame, layout, pair])
  return <span ref={now} className="number" />
}
