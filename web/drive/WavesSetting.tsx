/** Which lanes are on, and how long a stretch of time they show. */
import type { LaneId } from './waves-lanes.ts'
import { type Look, type Seen, looksOf } from './waves-seen.ts'

interface WavesSettingProps {
  readonly seen: Seen
  readonly look: Look
  readonly onLook: (look: Look) => void
  readonly on: readonly LaneId[]
  readonly onLanes: (on: readonly LaneId[]) => void
}

const PERIODS = [
  { periods: 1, label: 'One period' },
  { periods: 2, label: 'Two periods' },
] as const

export function WavesSetting({ seen, look, onLook, on, onLanes }: WavesSettingProps) {
  const looks = looksOf(seen.circuit)
  const swap = (id: LaneId) => onLanes(on.includes(id) ? on.filter((each) => each !== id) : [...on, id])
  return (
    <section className="waves-setting" aria-label="What is shown">
      <h3>Lanes</h3>
      <div className="waves-choices" role="group" aria-label="Lanes">
        {seen.lanes.map(({ id, name }) => (
          <button
            key={id}
            type="button"
            className="button"
            aria-pressed={on.includes(id)}
            onClick={() => swap(id)}
          >
            {name}
          </button>
        ))}
      </div>
      <h3>Stretch of time</h3>
      <div className="waves-choices" role="group" aria-label="Stretch of time">
        {PERIODS.map(({ periods, label }) => (
          <button
            key={periods}
            type="button"
            className="button"
            aria-pressed={look.periods === periods}
            onClick={() => onLook({ ...look, periods })}
          >
            {label}
          </button>
        ))}
      </div>
      {looks.length > 1 && (
        <div className="waves-choices" role="group" aria-label="Period of">
          {looks.map((of) => (
            <button
              key={of}
              type="button"
              className="button"
              aria-pressed={look.of === of}
              onClick={() => onLook({ ...look, of })}
            >
              {of === 'mains' ? 'Of the mains' : 'Of the switching'}
            </button>
          ))}
        </div>
      )}
    </section>
  )
}
