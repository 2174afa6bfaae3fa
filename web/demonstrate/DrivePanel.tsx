/** What the bench gives the machine: power, its sense, and what each wheel has to do. */
import { useBench, useMachine, useWorkshop } from '../frame/workshop.ts'
import { isReversible } from '../store/bench.ts'
import type { Side } from '../../sim/gear/gear-numbers.ts'
import { SupplyFields } from './SupplyFields.tsx'

const JAMMED = 'jammed'

function WheelLoad({ side }: { readonly side: Side }) {
  const { bench } = useWorkshop()
  const loads = useMachine((machine) => machine.outputs.loads)
  const key = side === 'left' ? 'leftLoad' : 'rightLoad'
  const load = useBench((now) => now[key])
  const jammed = useBench((now) => now.jammed)
  const choose = (value: string) => {
    if (value === JAMMED) bench.setState({ jammed: side })
    else bench.setState({ [key]: Number(value), jammed: jammed === side ? 'none' : jammed })
  }
  return (
    <label className="field row">
      <span>{side === 'left' ? 'Left wheel carries' : 'Right wheel carries'}</span>
      <select value={jammed === side ? JAMMED : load} onChange={(event) => choose(event.target.value)}>
        {loads.map((each, index) => (
          <option key={each.name} value={index}>
            {each.name}
          </option>
        ))}
        <option value={JAMMED}>Jammed</option>
      </select>
    </label>
  )
}

export function DrivePanel() {
  const { bench } = useWorkshop()
  const supply = useMachine((machine) => machine.supply.kind)
  const reversible = useMachine(isReversible)
  const pluggedIn = useBench((now) => now.pluggedIn)
  const sense = useBench((now) => now.sense)
  const words = supply === 'crank' ? ['Let go of the crank', 'Take the crank'] : ['Unplug', 'Plug in']
  return (
    <div className="load-and-plug">
      <WheelLoad side="left" />
      <WheelLoad side="right" />
      <div className="pairs">
        <button type="button" className="button" onClick={() => bench.setState({ pluggedIn: !pluggedIn })}>
          {pluggedIn ? words[0] : words[1]}
        </button>
        {reversible && (
          <button
            type="button"
            className="button"
            aria-pressed={sense < 0}
            onClick={() => bench.setState({ sense: sense > 0 ? -1 : 1 })}
          >
            {supply === 'crank' ? 'Crank the other way' : 'Swap the poles'}
          </button>
        )}
      </div>
      <SupplyFields />
      {supply === 'mains' && (
        <p className="small">
          A real machine of this kind holds mains voltage. Unplug it before the case is opened, wait until it
          stands still, and leave repairs to people who are licensed for them; local rules come first.
        </p>
      )}
    </div>
  )
}
