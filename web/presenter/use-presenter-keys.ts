/** The keys of a presenter's remote, in this window: each press is one command. */
import { useEffect } from 'react'
import type { Command } from '../channel/message.ts'
import { type Workshop, useWorkshop } from '../frame/workshop.ts'
import { typing } from '../instrument/typing.ts'
import { usePresenter } from './presenter-context.ts'

type Press = readonly [command: Command, value: number]

const REMOTE: Readonly<Record<string, Press>> = {
  PageDown: ['next', 0],
  ArrowRight: ['next', 0],
  PageUp: ['back', 0],
  ArrowLeft: ['back', 0],
  Home: ['goTo', 0],
}

function pressOf(key: string, { view }: Workshop): Press | undefined {
  if (REMOTE[key]) return REMOTE[key]
  if (!view.getState().large) return undefined
  if (key === 'Escape') return ['large', 0]
  return ['.', 'b', 'B'].includes(key) ? ['cover', 0] : undefined
}

export function usePresenterKeys(): void {
  const mirror = useWorkshop()
  const { end } = usePresenter()
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      const chord = event.altKey || event.ctrlKey || event.metaKey || event.shiftKey
      if (chord || typing(event.target)) return
      const press = pressOf(event.key, mirror)
      if (!press) return
      event.preventDefault()
      // A held key of a remote goes on by one.
      if (!event.repeat) end.send(...press)
    }
    addEventListener('keydown', pressed)
    return () => removeEventListener('keydown', pressed)
  }, [mirror, end])
}
