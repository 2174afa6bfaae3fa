/** The clock follows the lesson from topic to topic, and is kept in this browser for when the window is opened again. */
import { type StoreApi, createStore } from 'zustand/vanilla'
import { type Keeper, keep, kept } from '../file/storage.ts'
import type { Workshop } from '../frame/workshop.ts'
import { type Clock, begunClock, clockAt, readClock } from './clock.ts'

const CLOCK_KEY = 'counterturn.clock'

export function keepClock(
  { lesson }: Workshop,
  keeper: Keeper | null,
): StoreApi<{ readonly clock: Clock | null }> {
  const store = createStore<{ readonly clock: Clock | null }>(() => ({
    clock: readClock(kept(keeper, CLOCK_KEY)),
  }))
  const placed = () => {
    const { lesson: open, beat, run } = lesson.getState()
    const id = open?.beats[beat]?.id
    if (id === undefined) return
    const now = Date.now()
    const { clock } = store.getState()
    const next = clock ? clockAt(clock, { run, beat: id }, now) : begunClock(run, id, now)
    if (next !== clock) store.setState({ clock: next })
  }
  lesson.subscribe(placed)
  store.subscribe(({ clock }) => {
    if (clock) keep(keeper, CLOCK_KEY, JSON.stringify(clock))
  })
  return store
}
