/** Puts the light on the power's way somewhere, and walks it with keys. */
import { type RefObject, useEffect } from 'react'
import type { Workshop } from '../frame/workshop.ts'
import { typing } from '../instrument/typing.ts'
import type { PowerStop } from '../store/view.ts'
import { type WayStop, stopFrom } from './powers-way.ts'

/** The parts have to be together and the case open to the eye. */
export const light = ({ view }: Workshop, lit: PowerStop | null): void =>
  view.setState(({ apart, caseState, lit: before, selected }) => ({
    lit,
    selected: lit === null ? selected : null,
    apart: lit === null && before === null ? apart : 0,
    caseState: lit !== null && caseState === 'closed' ? 'clear' : caseState,
  }))

const STEPS: Readonly<Record<string, 1 | -1>> = {
  ArrowRight: 1,
  ArrowDown: 1,
  PageDown: 1,
  ArrowLeft: -1,
  ArrowUp: -1,
  PageUp: -1,
}

/**
 * Arrow keys while the focus is in the section; anywhere what a presenter's remote sends, while the light is on. Arrow
 * keys turn the shaft elsewhere, so that here they are kept from going on.
 */
export function useWalkingKeys(
  workshop: Workshop,
  way: readonly WayStop[],
  section: RefObject<HTMLElement | null> | null,
): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const { lit } = workshop.view.getState()
      const by = STEPS[event.key]
      const near = event.target instanceof Node && section?.current?.contains(event.target)
      if (lit === null || by === undefined || typing(event.target)) return
      const remote = event.key.startsWith('Page')
      // A lesson has the remote while it is open, and walks the light itself.
      if (remote ? workshop.lesson.getState().lesson : !near) return
      event.preventDefault()
      event.stopPropagation()
      const stops = way.map(({ stop }) => stop)
      light(workshop, stopFrom(stops, lit, by) ?? lit)
    }
    addEventListener('keydown', press, { capture: true })
    return () => removeEventListener('keydown', press, { capture: true })
  }, [workshop, way, section])
}
