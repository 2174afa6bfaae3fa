/** The electrical parts, once their code has been fetched; until then, and without any, null. */
import { useEffect, useMemo, useState } from 'react'
import type { MachineBodies } from '../machine-bodies.ts'
import type { ElectricBodies } from './electric-bodies.ts'

type Making = typeof import('./electric-bodies.ts')

/** When there is no rest [ms] */
const SOON = 300

/** Calls back when the page has nothing better to do: the first picture comes first. */
function whenIdle(act: () => void): () => void {
  if (typeof requestIdleCallback === 'undefined') {
    const timer = setTimeout(act, SOON)
    return () => clearTimeout(timer)
  }
  const request = requestIdleCallback(act, { timeout: SOON })
  return () => cancelIdleCallback(request)
}

export function useElectric({ machine, layout, detail }: MachineBodies): ElectricBodies | null {
  const [making, setMaking] = useState<Making | null>(null)
  useEffect(() => whenIdle(() => void import('./electric-bodies.ts').then(setMaking)), [])
  const bodies = useMemo(
    () => making && making.electricBodies(machine, layout, detail),
    [making, machine, layout, detail],
  )
  useEffect(() => () => void (bodies && making?.disposeElectric(bodies)), [bodies, making])
  return bodies
}
