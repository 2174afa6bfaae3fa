/** The state of the brushes that is shown: as it runs, as it was held, or as it runs steadily as set. */
import { useEffect, useMemo, useState } from 'react'
import type { Drive } from '../../sim/drive/drive.ts'
import type { Reading } from '../../sim/drive/reading.ts'
import { steadyNow } from '../frame/steady.ts'
import { type Workshop, useBench, useWorkshop } from '../frame/workshop.ts'
import type { Bench } from '../store/bench.ts'
import { type BrushFigures, type BrushedMachine, brushFigures } from './brushes-state.ts'

export interface BrushNow {
  readonly kind: 'now' | 'held' | 'steady'
  readonly figures: BrushFigures
  readonly reading: Reading
  /** Sense in which the current of the armature flows; 0 without current */
  readonly flow: 1 | -1 | 0
}

interface Held {
  readonly drive: Drive
  readonly bench: Bench
  readonly reading: Reading
}

/** The last reading under way, and what it was taken of. */
function useLastRun({ frame, bench, readout }: Workshop): Held | null {
  const [held, setHeld] = useState<Held | null>(null)
  useEffect(() => {
    const look = () => {
      const { motion, reading } = readout.getState()
      if (motion === 'running') setHeld({ drive: frame.drive, bench: bench.getState(), reading })
    }
    look()
    return readout.subscribe(look)
  }, [frame, bench, readout])
  return held
}

/** Null where the drive is not computed, or settles nowhere and does not run. */
export function useBrushesNow(machine: BrushedMachine): BrushNow | null {
  const workshop = useWorkshop()
  const bench = useBench((now) => now)
  const held = useLastRun(workshop)
  const { drive } = workshop.frame
  const same = held !== null && held.drive === drive && held.bench === bench
  const running = workshop.frame.motion === 'running'
  const steady = useMemo(() => (same ? null : steadyNow(drive, bench)), [same, drive, bench])
  const reading = same ? held.reading : steady?.reading
  if (!reading) return null
  return {
    kind: same ? (running ? 'now' : 'held') : 'steady',
    figures: brushFigures(machine, reading),
    reading,
    flow: flowOf(reading, bench),
  }
}

function flowOf({ currentMean, currentRms }: Reading, { sense }: Bench): 1 | -1 | 0 {
  if (currentRms === 0) return 0
  return currentMean < 0 === sense > 0 ? -1 : 1
}
