/** The way of the power from the socket up to where the light stands, drawn round the leads with an edge of ink; it stands still. */
import { BackSide } from 'three'
import type { PowerStop } from '../../store/view.ts'
import type { ElectricBodies } from './electric-bodies.ts'
import { INK, LOOK_HERE } from '../../material/sign-colours.ts'

/** How many of the leads lie before the stop: all of them once the current is in the motor. */
function leadsUpTo({ leads }: ElectricBodies, stop: PowerStop): number {
  if (stop === 'socket') return 0
  const last = leads.findIndex(({ to }) => to === stop)
  return last < 0 || stop === 'brushes' ? leads.length : last + 1
}

export function LightPath({
  electric,
  stop,
}: {
  readonly electric: ElectricBodies
  readonly stop: PowerStop
}) {
  return electric.leads.slice(0, leadsUpTo(electric, stop)).map(({ light, ink }, at) => (
    <group key={at}>
      <mesh geometry={ink}>
        <meshBasicMaterial color={INK} side={BackSide} toneMapped={false} />
      </mesh>
      <mesh geometry={light}>
        <meshBasicMaterial color={LOOK_HERE} toneMapped={false} />
      </mesh>
    </group>
  ))
}
