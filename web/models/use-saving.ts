/** One file at a time: what is being done, how to give it up, and how it ended. */
import { useEffect, useRef, useState } from 'react'

export interface Saving {
  /** What is being done now; null when nothing is. */
  readonly progress: string | null
  /** How the last one ended. */
  readonly outcome: string
  readonly save: (job: Job) => void
  readonly cancel: () => void
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

export function useSaving(): Saving {
  const [progress, setProgress] = useState<string | null>(null)
  const [outcome, setOutcome] = useState('')
  const stop = useRef(() => {})
  useEffect(() => () => stop.current(), [])
  const save = ({ name, work, remedy }: Job) => {
    if (progress !== null) return
    setOutcome('')
    setProgress('Starting')
    const { done, cancel } = work(setProgress)
    stop.current = cancel
    done.then(
      (hand) => {
        hand?.()
        setProgress(null)
        setOutcome(hand ? `Saved as ${name}.` : `${name} was not made, as you asked.`)
      },
      (fault: unknown) => {
        setProgress(null)
        setOutcome(`${name} could not be made: ${reasonOf(fault)}. ${remedy}`)
      },
    )
  }
  return { progress, outcome, save, cancel: () => stop.current() }
}
