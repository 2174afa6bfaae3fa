/** Voltages and currents over one or two periods, and over a start, a jam and a pull of the plug. */
import { useMachine, useWorkshop } from '../frame/workshop.ts'
import { WavesScope } from './WavesScope.tsx'
import { WavesTransient } from './WavesTransient.tsx'
import { useMoment } from './waves-moment.ts'
import './waves.css'

export function WavesPanel() {
  const cranked = useMachine(({ supply }) => supply.kind === 'crank')
  return (
    <div className="waves">
      <h2 className="unseen">Voltages and currents over time</h2>
      {cranked ? <Cranked /> : <Scope />}
    </div>
  )
}

function Cranked() {
  return (
    <p>
      A hand turns this machine: there is no voltage and no current to look at. Open a machine with a motor to
      see its waves.
    </p>
  )
}

function Scope() {
  const moment = useMoment()
  const notComputed = useNotComputed()
  if (!moment) return <p>{notComputed}</p>
  return (
    <>
      <WavesScope moment={moment} />
      <WavesTransient />
    </>
  )
}

/** Why there is no wave, as a sentence. */
function useNotComputed(): string {
  const { frame } = useWorkshop()
  useMachine((machine) => machine)
  return (
    frame.drive.notComputed ??
    'Its load drives this machine ever faster, so there is no steady running to show. Turn it to see the waves of the moment.'
  )
}
