/** What is seen in the waves, why, and one caution. */
import { type Told, flowSentence, meterSentence, rippleSentence } from './waves-words.ts'
import type { Seen } from './waves-seen.ts'
import { type LaneId } from './waves-lanes.ts'

export function WavesWords({ seen }: { readonly seen: Seen }) {
  const metersOf = (...ids: readonly LaneId[]) => {
    const lane = seen.lanes.find(({ id }) => ids.includes(id))
    return lane ? seen.meters(lane) : null
  }
  const current = metersOf('motor-current')!
  const told: Told = {
    circuit: seen.circuit,
    flow: seen.flow,
    speed: seen.speed,
    emf: seen.emf,
    current,
    resolved: seen.circuit.chopper !== null && seen.span < 3 * seen.circuit.chopper.period,
    smoothed: seen.circuit.capacitance > 0 ? metersOf('capacitor-voltage') : null,
  }
  const supply = seen.lanes.find(({ id }) => id === 'supply-current')
  const shape = seen.circuit.source.angularFrequency > 0 ? (supply ?? null) : null
  return (
    <div className="waves-sentences">
      <p>{flowSentence(told)}</p>
      <p className="small">
        {shape ? meterSentence(shape.name, seen.meters(shape)) : meterSentence('Motor current', current)}
        {rippleSentence(seen.ripple)}
      </p>
      {seen.circuit.source.angularFrequency > 0 && (
        <p className="small">
          Mains voltage stands at the socket: measuring there is for licensed people, by local rules.
        </p>
      )}
    </div>
  )
}
