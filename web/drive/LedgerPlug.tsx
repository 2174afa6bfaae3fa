/** What a meter at the wall plug, or at the battery, shows: real power, apparent power and their ratio. */
import type { OperatingPoint } from '../../sim/drive/operating-point.ts'
import type { Reading } from '../../sim/drive/reading.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { useMachine } from '../frame/workshop.ts'
import { type Unit, quantityText } from '../instrument/reading-text.ts'
import { useNowOrSteady } from '../instrument/use-reading.ts'

interface PlugFact {
  readonly name: string
  readonly unit: Unit
  readonly value: (reading: Reading) => number
}

const VOLTAGE: PlugFact = { name: 'Voltage', unit: 'V', value: (r) => r.wallVoltage }
const CURRENT: PlugFact = { name: 'Current', unit: 'A', value: (r) => r.wallCurrent }
const REAL: PlugFact = { name: 'Real power', unit: 'W', value: (r) => r.wallPower }
const MAINS: readonly PlugFact[] = [
  VOLTAGE,
  CURRENT,
  { name: 'Apparent power', unit: 'VA', value: (r) => r.apparentPower },
  REAL,
  { name: 'Power factor', unit: '', value: (r) => r.powerFactor },
]
const BATTERY: readonly PlugFact[] = [VOLTAGE, CURRENT, { ...REAL, name: 'Power' }]

export function LedgerPlug({ steady }: { readonly steady: OperatingPoint | null }) {
  const supply = useMachine((machine) => machine.supply.kind)
  const words = useMachine(plugWords)
  const reading = useNowOrSteady(steady)
  if (supply === 'crank' || !reading) return null
  const facts = supply === 'mains' ? MAINS : BATTERY
  return (
    <section aria-label={supply === 'mains' ? 'At the wall plug' : 'At the battery'}>
      <h3>{supply === 'mains' ? 'At the wall plug' : 'At the battery'}</h3>
      <dl className="plug-facts">
        {facts.map(({ name, unit, value }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className="number">{quantityText(value(reading), unit)}</dd>
          </div>
        ))}
      </dl>
      {supply === 'mains' && <p className="small">{words}</p>}
    </section>
  )
}

function plugWords({ transformer, control }: Machine): string {
  const why = control.kind === 'phase' ? 'begins late in each half wave' : 'does not have the voltage’s shape'
  const core = transformer ? ', and the current that magnetises the transformer swings to and fro' : ''
  return (
    `Voltage times current is more than the power that is used: the current ${why}${core}. ` +
    'Wires and fuse must bear that current; the meter counts the real power.'
  )
}
