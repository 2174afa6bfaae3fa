/** What the socket or the battery gives, what protects the machine, and what its capacitor still holds. */
import { useStore } from 'zustand'
import { resetProtection } from '../../sim/drive/protection.ts'
import { checkMachine } from '../../sim/machine/check.ts'
import { type FieldInstance, fieldsOf, valueAt, withValue } from '../../sim/machine/fields.ts'
import { show } from '../frame/frame.ts'
import { useBench, useMachine, useWorkshop } from '../frame/workshop.ts'
import { StepField } from '../instrument/StepField.tsx'
import { unitText } from '../instrument/field-text.ts'
import { labelOfPath } from '../instrument/labels.ts'
import { Problems } from '../instrument/Problems.tsx'
import { ChargeLeft } from './ChargeLeft.tsx'

const PATHS = ['supply.voltage', 'supply.frequency']

function SupplyField({ field }: { readonly field: FieldInstance }) {
  const { document } = useWorkshop()
  const value = useMachine((machine) => valueAt(machine, field.path))
  const change = (to: number) => {
    const next = withValue(document.store.getState().machine, field.path, to)
    const refused = checkMachine(next).find(({ severity }) => severity === 'error')
    if (refused) return refused.message
    document.edit(() => next)
    return null
  }
  return (
    <StepField
      label={field.label}
      value={value}
      min={field.min}
      max={field.max}
      step={field.step}
      less={`Less ${field.label.toLowerCase()}`}
      more={`More ${field.label.toLowerCase()}`}
      suffix={unitText(field.unit)}
      onChange={change}
      onGesture={(phase) => (phase === 'begin' ? document.beginGesture() : document.endGesture())}
    />
  )
}

/** How far a fuse or an overload switch is on its way, and the way back once it has opened. */
function ProtectionState() {
  const workshop = useWorkshop()
  const { frame } = workshop
  const kind = useMachine((machine) => machine.protection.kind)
  const warmth = useStore(workshop.readout, ({ reading }) => Math.min(100, Math.floor(100 * reading.fuse)))
  const isOpen = useStore(workshop.readout, ({ reading }) => reading.isOpen)
  if (kind !== 'fuse' && kind !== 'overload') return null
  const renew = () => {
    resetProtection(frame.state)
    workshop.copyReading()
    show(frame)
  }
  const name = kind === 'fuse' ? 'Fuse' : 'Overload switch'
  if (!isOpen)
    return (
      <p className="small">
        {name}: <span className="number">{warmth} %</span> of the way to opening.
      </p>
    )
  return (
    <p className="protection-open">
      {name}: open. Clear what overloaded the machine first.{' '}
      <button type="button" className="button" onClick={renew}>
        {kind === 'fuse' ? 'Put a new fuse in' : 'Close it again'}
      </button>
    </p>
  )
}

export function SupplyFields() {
  const machine = useMachine((now) => now)
  const pluggedIn = useBench((bench) => bench.pluggedIn)
  const fields = fieldsOf(machine).filter(({ path }) => PATHS.includes(path))
  const problems = checkMachine(machine).filter(({ path }) => PATHS.includes(path))
  return (
    <>
      {fields.length > 0 && (
        <div className="supply-fields">
          {fields.map((field) => (
            <SupplyField key={`${field.path} ${field.when}`} field={field} />
          ))}
        </div>
      )}
      {problems.length > 0 && <Problems problems={problems} labelOf={labelOfPath(machine)} />}
      <ProtectionState />
      {!pluggedIn && <ChargeLeft />}
    </>
  )
}
