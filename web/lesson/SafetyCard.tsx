/** What comes before anybody opens a real machine. In Ask only what gives no order away. */
import { Icon } from '../instrument/Icon.tsx'

const BEFORE = [
  'Unplug it, and keep the plug in your hand or in your sight.',
  'Capacitors may hold a charge: wait, measure, bleed what is left through a resistor.',
  'Let hot parts cool. Keep hair, sleeves and cords away.',
] as const

export function SafetyCard({ covered }: { readonly covered: boolean }) {
  return (
    <aside className="note safety-card" aria-label="Safety">
      <span>
        <Icon name="look" />
      </span>
      <div>
        <p>
          <b>Mains kills.</b> Local codes and licensed practice come first.{' '}
          <span className="safety-more">This picture is no permission to open a mains machine.</span>
        </p>
        {!covered && (
          <ul>
            {BEFORE.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        )}
      </div>
    </aside>
  )
}
