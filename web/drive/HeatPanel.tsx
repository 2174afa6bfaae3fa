/** How warm the motor gets in the long run, what it bears, and what that does to it. */
import { useMachine } from '../frame/workshop.ts'
import { HeatSection } from './HeatSection.tsx'
import { HeatSources } from './HeatSources.tsx'
import { HeatSettings } from './HeatSettings.tsx'
import { Thermometer } from './Thermometer.tsx'
import { HeatClass } from './HeatClass.tsx'
import { type ThermalMachine, hasHeat } from './heat-machine.ts'
import { useSettled } from './heat-work.ts'
import './power.css'
import './heat.css'

export function HeatPanel() {
  const machine = useMachine((now) => now)
  return (
    <div className="panel-column drive-panel heat">
      {hasHeat(machine) ? (
        <Described machine={machine} />
      ) : (
        <>
          <h2>Temperature over hours</h2>
          <p>
            {machine.motor === null
              ? 'A hand turns this machine. It has no winding that a current warms, so there is no temperature to follow. Friction turns part of the hand’s work into heat, which gears and bearings give to the air.'
              : 'The file of this machine does not say where its heat goes, so no temperature can be told.'}
          </p>
        </>
      )}
    </div>
  )
}

function Described({ machine }: { readonly machine: ThermalMachine }) {
  const all = useSettled()
  return (
    <>
      <HeatSection machine={machine} all={all} />
      <div className="heat-beside">
        <HeatSettings machine={machine} all={all} />
        <HeatSources machine={machine} />
      </div>
      <div className="heat-beside">
        <Thermometer machine={machine} />
        <HeatClass thermal={machine.thermal} />
      </div>
      <p className="heat-caution">
        A motor case that is too hot to hold is usual after a long run, and the winding inside is hotter.
        Unplug a real machine and let it cool before you touch or open it; leave work on mains parts to
        licensed people and follow local rules.
      </p>
    </>
  )
}
