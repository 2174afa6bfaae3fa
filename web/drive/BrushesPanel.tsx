/** How the current gets into the turning armature, and what that costs the brushes. */
import { useMachine } from '../frame/workshop.ts'
import { BrushesCommutator } from './BrushesCommutator.tsx'
import { BrushesNumbers } from './BrushesNumbers.tsx'
import { BrushesSparking } from './BrushesSparking.tsx'
import { BrushesSettings } from './BrushesSettings.tsx'
import { BrushesWear } from './BrushesWear.tsx'
import { useBrushesNow } from './brushes-now.ts'
import { type BrushedMachine, isBrushed } from './brushes-state.ts'
import './brushes.css'

export function BrushesPanel() {
  const machine = useMachine((now) => now)
  return (
    <div className="panel-column brushes">
      <h2 className="unseen">Brushes and commutator</h2>
      {machine.motor === null ? (
        <p>A hand turns this machine. It has no motor, so there is no commutator and no carbon brush.</p>
      ) : isBrushed(machine) ? (
        <Described machine={machine} />
      ) : (
        <p>
          The file of this machine does not describe its commutator and brushes, so nothing can be told about
          them.
        </p>
      )}
    </div>
  )
}

function Described({ machine }: { readonly machine: BrushedMachine }) {
  const now = useBrushesNow(machine)
  if (!now)
    return <p>Steady running is not computed for this machine as set. Turn it to see its brushes at work.</p>
  return (
    <>
      <BrushesCommutator machine={machine} now={now} />
      <BrushesNumbers machine={machine} now={now} />
      <BrushesSparking machine={machine} now={now} />
      <BrushesSettings machine={machine} now={now} />
      <BrushesWear machine={machine} now={now} />
      <p className="brushes-caution">
        Carbon dust conducts and does the lungs no good, and a commutator stays hot after a run. Unplug a real
        machine and let it stand before opening it; leave work on mains parts to licensed people and follow
        local rules.
      </p>
    </>
  )
}
