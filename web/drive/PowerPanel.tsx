/** From the socket, the battery or the hand to both outputs: where each watt goes. */
import { useWorkshop } from '../frame/workshop.ts'
import { Formulas } from '../instrument/use-formula.tsx'
import { useSteady } from '../instrument/use-reading.ts'
import { LedgerSection } from './LedgerSection.tsx'
import { LedgerPlug } from './LedgerPlug.tsx'
import { PowersWay } from './PowersWay.tsx'
import './power.css'

export function PowerPanel() {
  const steady = useSteady()
  const { frame } = useWorkshop()
  return (
    <div className="panel-column drive-panel">
      <PowersWay />
      <Formulas>
        {frame.drive.notComputed ? <p>{frame.drive.notComputed}</p> : <LedgerSection steady={steady} />}
        <LedgerPlug steady={steady} />
      </Formulas>
    </div>
  )
}
