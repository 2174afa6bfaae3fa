/** The topics, to go to any of them, with the time that each was given and has taken. */
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { clockText, spentOn } from './clock.ts'
import { useConnected, usePresenter } from './presenter-context.ts'
import { minutesText } from './presenter-words.ts'
import { useNow } from './use-now.ts'

export function TopicList() {
  const { lesson, beat, seen } = useStore(useWorkshop().lesson)
  const { end, clock: store } = usePresenter()
  const clock = useStore(store, (kept) => kept.clock)
  const connected = useConnected()
  const now = useNow(clock !== null && clock.since !== null)
  return (
    <section className="presenter-card presenter-list" aria-label="Topics">
      <h2>Topics</h2>
      <ol className="presenter-topics">
        {lesson?.beats.map(({ id, title, minutes, extra }, place) => {
          const spent = clock ? spentOn(clock, id, now) : 0
          return (
            <li key={id}>
              <button
                type="button"
                className="button plain"
                aria-current={place === beat ? 'step' : undefined}
                aria-disabled={!connected}
                onClick={() => end.send('goTo', place)}
              >
                <span className="presenter-topic-seen">
                  {seen.includes(id) && <Icon name="check" size={16} />}
                </span>
                <span className="number">{place + 1}</span>
                <span className="presenter-topic-title">
                  {title}
                  {seen.includes(id) && <span className="unseen">, seen</span>}
                </span>
                <span className="small">
                  {spent >= 1000 && <span className="number">{clockText(spent)} of </span>}
                  {minutesText(minutes)}
                  {extra && ', extra'}
                </span>
              </button>
            </li>
          )
        })}
      </ol>
      <button type="button" className="button" aria-disabled={!connected} onClick={() => end.send('close')}>
        Close the lesson
      </button>
    </section>
  )
}
