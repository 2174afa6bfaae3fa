/** The keys. Single keys are off while a field has focus, in an open dialog, and when they are switched off. */
import { useEffect } from 'react'
import {
  changePace,
  nextCase,
  nextView,
  toggleApart,
  toggleLarge,
  togglePlan,
  toggleTheme,
} from './view-actions.ts'
import { type HandStep, handTurn, turnOrStop, zeroCounts } from '../frame/turning.ts'
import { hold } from '../frame/frame.ts'
import { type Workshop, useWorkshop } from '../frame/workshop.ts'
import { WAYS } from '../store/view.ts'
import { typing } from '../instrument/typing.ts'

const STEPS: Readonly<Record<string, HandStep>> = {
  Digit1: 'wheel',
  Digit2: 'turn',
  Digit3: 'quarter',
  Digit4: 'tooth',
  Digit5: 'degree',
}

type Action = (workshop: Workshop) => void

const ACTIONS: Readonly<Record<string, Action>> = {
  '0': zeroCounts,
  ',': (workshop) => changePace(workshop, 1),
  '.': (workshop) => changePace(workshop, -1),
  v: nextView,
  c: nextCase,
  x: (workshop) => {
    hold(workshop.frame)
    toggleApart(workshop)
  },
  l: toggleLarge,
  t: toggleTheme,
  p: togglePlan,
  '?': ({ view }) => view.setState({ sheet: 'keys' }),
  arrowright: (workshop) => handTurn(workshop, 'degree', 1),
  arrowleft: (workshop) => handTurn(workshop, 'degree', -1),
}

const pressing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('button, a, summary') !== null

/** Ctrl or Command with Z or Y, and Alt with 1 to 4; true when the key was one of them. */
function chord(event: KeyboardEvent, { document }: Workshop): boolean {
  const key = event.key.toLowerCase()
  if (event.altKey) {
    const way = WAYS[Number(event.code.replace('Digit', '')) - 1]
    if (way) location.hash = `#/${way.way}`
    return way !== undefined
  }
  if (!event.ctrlKey && !event.metaKey) return false
  const undo = key === 'z' && !event.shiftKey
  const redo = key === 'y' || (key === 'z' && event.shiftKey)
  if (undo) document.undo()
  else if (redo) document.redo()
  return undo || redo
}

function single(event: KeyboardEvent, workshop: Workshop): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false
  const step = STEPS[event.code]
  if (step) handTurn(workshop, step, event.shiftKey ? -1 : 1)
  else if (event.key === ' ' && !pressing(event.target)) turnOrStop(workshop)
  else if (event.shiftKey && event.key !== '?') return false
  else {
    const action = ACTIONS[event.key.toLowerCase()]
    if (!action) return false
    action(workshop)
  }
  return true
}

export function useKeys(): void {
  const workshop = useWorkshop()
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (event.defaultPrevented) return
      const { view } = workshop
      if (event.key === 'Escape' && view.getState().sheet === 'none')
        view.setState({ large: false, selected: null })
      if (typing(event.target) && !(event.altKey && event.code.startsWith('Digit'))) return
      const done = chord(event, workshop) || (view.getState().singleKeys && single(event, workshop))
      if (done) event.preventDefault()
    }
    addEventListener('keydown', pressed)
    return () => removeEventListener('keydown', pressed)
  }, [workshop])
}
