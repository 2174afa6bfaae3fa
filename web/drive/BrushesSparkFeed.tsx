/** Tells the stage how hard the brushes spark while the motor turns under power; draws nothing itself. */
import { useEffect } from 'react'
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import type { Readout } from '../store/readout.ts'
import { brushFigures, type BrushedMachine, isBrushed } from './brushes-state.ts'
import { sparkLevel } from './brushes-words.ts'

export function BrushesSparkFeed() {
  const machine = useMachine((now) => now)
  const { view, readout } = useWorkshop()
  useEffect(() => {
    if (!isBrushed(machine)) return undefined
    const tell = (now: Readout) => {
      const sparking = sparkingNow(machine, now)
      if (sparking !== view.getState().sparking) view.setState({ sparking })
    }
    tell(readout.getState())
    const end = readout.subscribe(tell)
    return () => {
      end()
      view.setState({ sparking: 0 })
    }
  }, [machine, view, readout])
  return null
}

/** Nothing turns over at rest, and without current nothing is to turn over. */
export function sparkingNow(machine: BrushedMachine, { motion, reading }: Readout): number {
  if (motion !== 'running' || reading.currentRms === 0 || reading.wormSpeed === 0) return 0
  return sparkLevel(brushFigures(machine, reading).worse)
}
