/** Every part as a button: the way by keyboard to what a click on the picture does. */
import { type PartName, partsOf } from '../../sim/pose/parts.ts'
import { useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import './parts.css'

export function PartList() {
  const { view } = useWorkshop()
  const machine = useMachine((now) => now)
  const selected = useView((now) => now.selected)
  const select = (part: PartName) => view.setState({ selected: selected === part ? null : part })
  return (
    <ul className="part-list" aria-label="Parts">
      {partsOf(machine).map(({ part, name }) => (
        <li key={part}>
          <button
            type="button"
            className="button plain"
            aria-pressed={selected === part}
            onClick={() => select(part)}
          >
            {name}
          </button>
        </li>
      ))}
    </ul>
  )
}
