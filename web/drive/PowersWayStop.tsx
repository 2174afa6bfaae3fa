/** One stop on the power's way: what happens, its numbers, what is lost, what can hurt, and its wave. */
import { useMachine } from '../frame/workshop.ts'
import type { Situation } from '../instrument/situation.ts'
import { useNowText, useReadout, useSteady, useSteadySituation } from '../instrument/use-reading.ts'
import type { PowerStop } from '../store/view.ts'
import { PowersWayWave } from './PowersWayWave.tsx'
import { lossText, onwardText, stopNumbers } from './powers-way-numbers.ts'
import { lanesAt } from './powers-way-waves.ts'
import type { WayStop } from './powers-way.ts'

export function PowersWayStop({ stop }: { readonly stop: WayStop }) {
  const machine = useMachine((now) => now)
  const steady = useSteadySituation(useSteady())
  const lanes = lanesAt(machine, stop.stop)
  return (
    <>
      <div aria-live="polite" aria-atomic="true">
        <h3 className="unseen">{stop.name}</h3>
        <p>{stop.happens}</p>
      </div>
      <Numbers stop={stop.stop} steady={steady} />
      <Loss stop={stop.stop} steady={steady} />
      {stop.caution && (
        <p className="powers-way-caution">
          <b>Caution.</b> {stop.caution}
        </p>
      )}
      {lanes.length > 0 && <PowersWayWave lanes={lanes} />}
    </>
  )
}

interface NumbersProps {
  readonly stop: PowerStop
  /** Null where steady running is not computed */
  readonly steady: Situation | null
}

/** Of now while the machine runs, or coasts; else of steady running. */
function Numbers({ stop, steady }: NumbersProps) {
  const running = useReadout(({ motion }) => motion === 'running')
  const which = useNowText((now) =>
    stopNumbers(stop, now)
      .map(({ name }) => name)
      .join('\n'),
  ).split('\n')
  if (!running && !steady) return <p className="small">Turn the machine to read its numbers.</p>
  return (
    <dl className="powers-way-numbers">
      {which.map((name, place) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd className="number">
            <Text steady={steady} of={(each) => stopNumbers(stop, each)[place]?.text ?? ''} />
          </dd>
        </div>
      ))}
    </dl>
  )
}

function Loss({ stop, steady }: NumbersProps) {
  const running = useReadout(({ motion }) => motion === 'running')
  if (!running && !steady) return null
  return (
    <p>
      <b>
        <Text steady={steady} of={(each) => lossText(stop, each)} />
      </b>{' '}
      <Text steady={steady} of={(each) => onwardText(stop, each)} />{' '}
      <span className="small">{running ? 'As it runs now.' : 'When running steadily as set.'}</span>
    </p>
  )
}

interface TextProps {
  readonly steady: Situation | null
  readonly of: (situation: Situation) => string
}

function Text({ steady, of }: TextProps) {
  return useNowText((now, { motion }) => of(motion === 'running' || !steady ? now : steady))
}
