/** A long computation as a component shows it: how far it is, or what came of it. */
import { useEffect, useMemo, useRef, useState } from 'react'
import type { AnswerTo, RunOrder } from './orders.ts'
import { startRun } from './run-client.ts'

export type Run<Answer> =
  | { readonly state: 'none' }
  | { readonly state: 'working'; readonly part: number }
  | { readonly state: 'done'; readonly answer: Answer }
  | { readonly state: 'cancelled' }
  | { readonly state: 'failed'; readonly message: string }

export interface RunControl<Answer> {
  readonly run: Run<Answer>
  /** The last answer, also while the next one is on its way */
  readonly last: Answer | null
  readonly cancel: () => void
  readonly again: () => void
}

const NOTHING = { said: 'null', run: { state: 'none' } } as const
const BEGUN = { state: 'working', part: 0 } as const

/** Runs an order whenever it says something else than before; orders are compared by what they say. */
export function useRun<Order extends RunOrder>(order: Order | null): RunControl<AnswerTo<Order>> {
  const [told, setTold] = useState<{ readonly said: string; readonly run: Run<AnswerTo<Order>> }>(NOTHING)
  const [last, setLast] = useState<AnswerTo<Order> | null>(null)
  const [attempt, setAttempt] = useState(0)
  const stop = useRef(() => {})
  const said = JSON.stringify(order)
  const same = useMemo(() => (said === 'null' ? null : (JSON.parse(said) as Order)), [said])
  useEffect(() => {
    if (same === null) return
    const setRun = (run: Run<AnswerTo<Order>>) => setTold({ said, run })
    setRun({ state: 'working', part: 0 })
    const end = startRun(same, {
      progress: (part) => setRun({ state: 'working', part }),
      done: (answer) => {
        setRun({ state: 'done', answer })
        setLast(() => answer)
      },
      failed: (message) => setRun({ state: 'failed', message }),
    })
    stop.current = end
    return end
  }, [same, said, attempt])
  return {
    // What was told of another order is not told of this one.
    run: told.said === said ? told.run : same === null ? NOTHING.run : BEGUN,
    last,
    cancel: () => {
      stop.current()
      setTold({ said, run: { state: 'cancelled' } })
    },
    again: () => setAttempt(attempt + 1),
  }
}
