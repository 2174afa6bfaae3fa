/** The bearing patterns that panel and stage share, worked out once by another thread. */
import { useEffect } from 'react'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { GearNumbers } from '../../sim/gear/gear-numbers.ts'
import type { Misplacement } from '../store/view.ts'
import { type FlankPatterns, type PatternRequest, flankPatterns } from './flank-patterns.ts'
import { type NewestClient, type WorkThread, createNewestClient } from './newest-client.ts'

/** Patterns with what they were worked out for. */
export interface PatternsFound extends PatternRequest {
  readonly patterns: FlankPatterns
}

function openPatternThread(): WorkThread | null {
  if (typeof Worker === 'undefined') return null
  return new Worker(new URL('./pattern.worker.ts', import.meta.url), { type: 'module' })
}

/** Asks once for what several want, and lets go of the thread with the last of them. */
export function createPatternDesk(open: () => WorkThread | null) {
  const found = createStore<PatternsFound | null>(() => null)
  let users = 0
  let client: NewestClient<PatternRequest> | null = null
  let newest: PatternRequest | null = null
  return {
    found,
    /** Until what it returns is called. */
    use(): () => void {
      users++
      return () => {
        if (--users > 0) return
        client?.dispose()
        client = newest = null
      }
    },
    ask(gearing: GearNumbers, misplaced: Misplacement): void {
      if (newest?.gearing === gearing && newest.misplaced === misplaced) return
      newest = { gearing, misplaced }
      client ??= createNewestClient(open(), flankPatterns, (request, patterns) =>
        found.setState({ ...request, patterns }, true),
      )
      client.ask(newest)
    },
  }
}

const desk = createPatternDesk(openPatternThread)

/** The newest patterns of this gearing; those of an earlier setting until the new ones are there, null without any. */
export function usePatterns(gearing: GearNumbers, misplaced: Misplacement): FlankPatterns | null {
  useEffect(() => desk.use(), [])
  useEffect(() => desk.ask(gearing, misplaced), [gearing, misplaced])
  const found = useStore(desk.found)
  return found?.gearing === gearing ? found.patterns : null
}
