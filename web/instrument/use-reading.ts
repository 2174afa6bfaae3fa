/** The readings as React takes them: as texts, so that a component renders only when its own text changes. */
import { useMemo } from 'react'
import { useStore } from 'zustand'
import type { OperatingPoint } from '../../sim/drive/operating-point.ts'
import type { Reading } from '../../sim/drive/reading.ts'
import { steadyNow } from '../frame/steady.ts'
import { useBench, useMachine, useWorkshop } from '../frame/workshop.ts'
import type { Readout } from '../store/readout.ts'
import { type Situation, situationOf } from './situation.ts'

export const useReadout = <T>(select: (readout: Readout) => T): T => useStore(useWorkshop().readout, select)

/** While a hand turns the machine there is no power in it, and its speed is the hand's own. */
export const byHand = ({ motion }: Readout): boolean => motion === 'hand' || motion === 'dragged'

/** Steady running at the present setting and loads; null where it is not computed. */
export function useSteady(): OperatingPoint | null {
  const { frame } = useWorkshop()
  const machine = useMachine((now) => now)
  const bench = useBench((now) => now)
  return useMemo(
    // The frame's drive is that machine's: the workshop compiles it before anything renders.
    () => (machine ? steadyNow(frame.drive, bench) : null),
    [frame, machine, bench],
  )
}

/** While the machine turns by itself, of this moment; else of steady running, null where that is not computed. */
export const useNowOrSteady = (steady: OperatingPoint | null): Reading | null =>
  useReadout((now) => (now.motion === 'running' ? now.reading : (steady?.reading ?? null)))

/** A text about the reading of this moment. */
export function useNowText(text: (situation: Situation, readout: Readout) => string): string {
  const { document, bench } = useWorkshop()
  return useReadout((readout) =>
    text(situationOf(document.store.getState().machine, bench.getState(), readout.reading), readout),
  )
}

export function useSteadySituation(steady: OperatingPoint | null): Situation | null {
  const machine = useMachine((now) => now)
  const bench = useBench((now) => now)
  return useMemo(
    () => (steady ? situationOf(machine, bench, steady.reading) : null),
    [machine, bench, steady],
  )
}
