/** How long the topic and the whole have taken, beside what was planned. */
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'
import { beatOf } from '../lesson/progress.ts'
import { clockText, paused, resetClock, resumed, spentInAll, spentOn } from './clock.ts'
import { usePresenter } from './presenter-context.ts'
import { minutesText } from './presenter-words.ts'
import { useNow } from './use-now.ts'

interface TimeProps {
  readonly name: string
  readonly spent: number
  /** [min] */
  readonly planned: number
}

const Time = ({ name, spent, planned }: TimeProps) => (
  <div>
    <dt>{name}</dt>
    <dd>
      <span className="presenter-time number" role="timer" aria-label={`${name}, time taken`}>
        {clockText(spent)}
      </span>
      <span className="small">
        of {minutesText(planned)}
        {spent > planned * 60_000 && <b>, over</b>}
      </span>
    </dd>
  </div>
)

export function ClockCard() {
  const state = useStore(useWorkshop().lesson)
  const { clock: store } = usePresenter()
  const clock = useStore(store, (kept) => kept.clock)
  const running = clock !== null && clock.since !== null
  const now = Math.max(useNow(running), clock?.since ?? 0)
  const beat = beatOf(state)
  if (!clock || !beat || !state.lesson) return null
  const planned = state.lesson.beats.reduce((sum, { minutes }) => sum + minutes, 0)
  return (
    <section className="presenter-card presenter-clock" aria-label="Clock">
      <dl>
        <Time name="This topic" spent={spentOn(clock, beat.id, now)} planned={beat.minutes} />
        <Time name="The whole" spent={spentInAll(clock, now)} planned={planned} />
      </dl>
      <div className="presenter-clock-buttons">
        <button
          type="button"
          className="button"
          onClick={() => store.setState({ clock: (running ? paused : resumed)(clock, Date.now()) })}
        >
          {running ? 'Pause the clock' : 'Run the clock'}
        </button>
        <button
          type="button"
          className="button"
          onClick={() => store.setState({ clock: resetClock(clock, Date.now()) })}
        >
          Reset
        </button>
      </div>
    </section>
  )
}
