/** The keys of a presenter's remote while a lesson is open. Arrow keys turn the worm outside of one. */
import { useEffect } from 'react'
import { type Workshop, useWorkshop } from '../frame/workshop.ts'
import { typing } from '../instrument/typing.ts'
import { back, first, next, setBlank } from './play.ts'

type Press = (workshop: Workshop) => void

const REMOTE: Readonly<Record<string, Press>> = { PageDown: next, PageUp: back, Home: first }
const ARROWS: Readonly<Record<string, Press>> = { ArrowRight: next, ArrowLeft: back }

const toggleBlank: Press = (workshop) => setBlank(workshop, !workshop.lesson.getState().blank)
/** In Large only: elsewhere the full stop is faster. */
const BLANK: Readonly<Record<string, Press>> = { '.': toggleBlank, b: toggleBlank, B: toggleBlank }

/** Where the arrow keys go from tab to tab, or from card to card. */
const takesArrows = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('[role="tablist"], .powers-way, [data-takes-arrows]') !== null

function pressOf(event: KeyboardEvent, { view }: Workshop): Press | undefined {
  const { large, singleKeys } = view.getState()
  const remote = REMOTE[event.key]
  if (remote) return remote
  if (!takesArrows(event.target) && ARROWS[event.key]) return ARROWS[event.key]
  return large && singleKeys ? BLANK[event.key] : undefined
}

export function useLessonKeys(): void {
  const workshop = useWorkshop()
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      const chord = event.altKey || event.ctrlKey || event.metaKey || event.shiftKey
      if (chord || typing(event.target) || workshop.view.getState().sheet !== 'none') return
      const press = pressOf(event, workshop)
      if (!press) return
      event.preventDefault()
      event.stopPropagation()
      // A held key of a remote goes on by one.
      if (!event.repeat) press(workshop)
    }
    addEventListener('keydown', pressed, { capture: true })
    return () => removeEventListener('keydown', pressed, { capture: true })
  }, [workshop])
}
