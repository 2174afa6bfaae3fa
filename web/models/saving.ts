/** One file at a time: what is being done, how to give it up, and how it ended. It goes on when its panel is left. */
import { createStore } from 'zustand/vanilla'
import type { Workshop } from '../frame/workshop.ts'

export interface SavingState {
  /** What is being done now; null when nothing is. */
  readonly progress: string | null
  /** How the last one ended. */
  readonly outcome: string
}

export interface Job {
  readonly name: string
  /** Does the work, and gives null where it was given up. */
  readonly work: (tell: (progress: string) => void) => {
    readonly done: Promise<(() => void) | null>
    readonly cancel: () => void
  }
  /** What to do when it cannot be done. */
  readonly remedy: string
}

const reasonOf = (fault: unknown): string => (fault instanceof Error ? fault.message : 'no reason was given')

/** `unseen` is told how a job ended that no panel shows. */
export function createSaving(unseen: (outcome: string) => void) {
  const store = createStore<SavingState>(() => ({ progress: null, outcome: '' }))
  let stop = () => {}
  let panels = 0
  const end = (outcome: string) => {
    store.setState({ progress: null, outcome })
    if (panels === 0) unseen(outcome)
  }
  return {
    store,
    save: ({ name, work, remedy }: Job): void => {
      if (store.getState().progress !== null) return
      store.setState({ progress: 'Starting', outcome: '' })
      const { done, cancel } = work((progress) => store.setState({ progress }))
      stop = cancel
      done.then(
        (hand) => {
          hand?.()
          end(hand ? `Saved as ${name}.` : `${name} was not made, as you asked.`)
        },
        (fault: unknown) => end(`${name} could not be made: ${reasonOf(fault)}. ${remedy}`),
      )
    },
    cancel: () => stop(),
    /** A panel shows it from now on, until what is returned is called; how an older one ended is old news then. */
    watch: (): (() => void) => {
      panels++
      return () => {
        panels--
        if (store.getState().progress === null) store.setState({ outcome: '' })
      }
    },
  }
}

export type SavingDesk = ReturnType<typeof createSaving>

const desks = new WeakMap<Workshop, SavingDesk>()

/** The one of this workshop, whichever panel asks. */
export function savingOf(workshop: Workshop): SavingDesk {
  const desk = desks.get(workshop) ?? createSaving(workshop.announcer.say)
  desks.set(workshop, desk)
  return desk
}
