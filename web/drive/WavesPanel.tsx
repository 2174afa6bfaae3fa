/** Voltages and currents over one or two periods, and over a start, a jam and a pull of the plug. */
import { WavesScope } from './WavesScope.tsx'
import { WavesTransient } from './WavesTransient.tsx'
import { useMoment } from './waves-moment.ts'
import './waves.css'

export function WavesPanel() {
  const moment = useMoment()
  return (
    <div className="panel-column waves">
      <h2 className="unseen">Voltages and currents over time</h2>
      {typeof moment === 'string' ? (
        <p>{moment}</p>
      ) : (
        <>
          <WavesScope moment={moment} />
          <WavesTransient />
        </>
      )}
    </div>
  )
}
