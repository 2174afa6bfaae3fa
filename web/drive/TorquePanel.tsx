/** Motor and load: where they meet, and how the motor's torque divides between the two wheels. */
import { TorqueBalance } from './TorqueBalance.tsx'
import { TorqueSection } from './TorqueSection.tsx'
import './power.css'
import './torque.css'

export function TorquePanel() {
  return (
    <div className="panel-column drive-panel">
      <TorqueSection />
      <TorqueBalance />
    </div>
  )
}
