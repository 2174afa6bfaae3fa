/** What opens under the buttons of the stage. */
import { partsOf } from '../../sim/pose/parts.ts'
import { useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { hold } from '../frame/frame.ts'
import { VIEWS } from '../scene/views.ts'
import type { CaseState } from '../store/view.ts'

const CASES: readonly { readonly state: CaseState; readonly label: string }[] = [
  { state: 'closed', label: 'Closed' },
  { state: 'clear', label: 'Clear' },
  { state: 'off', label: 'Off' },
]

function ViewsPanel() {
  const { view } = useWorkshop()
  const now = useView((state) => state.view.name)
  const plan = useView((state) => state.plan)
  const go = (name: (typeof VIEWS)[number]['view']) =>
    view.setState((state) => ({ view: { name, nonce: state.view.nonce + 1 }, camera: null }))
  return (
    <div className="column">
      {VIEWS.map((each) => (
        <button
          key={each.view}
          type="button"
          className="button"
          aria-pressed={now === each.view}
          onClick={() => go(each.view)}
        >
          {each.name}
        </button>
      ))}
      <button
        type="button"
        className="button"
        aria-pressed={plan !== 'no'}
        disabled={plan === 'no-webgl'}
        onClick={() => view.setState({ plan: plan === 'no' ? 'chosen' : 'no' })}
      >
        Plan view
      </button>
    </div>
  )
}

function CasePanel() {
  const { view } = useWorkshop()
  const caseState = useView((state) => state.caseState)
  const motorCut = useView((state) => state.motorCut)
  const motor = useMachine((machine) => machine.motor !== null)
  return (
    <div className="column">
      {CASES.map(({ state, label }) => (
        <button
          key={state}
          type="button"
          className="button"
          aria-pressed={caseState === state}
          onClick={() => view.setState({ caseState: state })}
        >
          {label}
        </button>
      ))}
      {motor && (
        <button
          type="button"
          className="button"
          aria-pressed={motorCut}
          onClick={() => view.setState({ motorCut: !motorCut })}
        >
          Motor cut open
        </button>
      )}
    </div>
  )
}

function ApartPanel() {
  const { view, frame } = useWorkshop()
  const apart = useView((state) => state.apart)
  const change = (next: number) => {
    if (next > 0) hold(frame)
    view.setState({ apart: next })
  }
  return (
    <label className="apart-slider">
      <span>Apart</span>
      <input
        type="range"
        min="0"
        max="1"
        step="0.01"
        value={apart}
        aria-valuetext={apart === 0 ? 'together' : `${Math.round(apart * 100)} percent apart`}
        onChange={(event) => change(Number(event.target.value))}
      />
      <span className="small">Together at the left. Parts move along the way they are assembled.</span>
    </label>
  )
}

function PartsPanel() {
  const { view } = useWorkshop()
  const machine = useMachine((now) => now)
  const selected = useView((state) => state.selected)
  return (
    <div className="column">
      {partsOf(machine).map((each) => (
        <button
          key={each.part}
          type="button"
          className="button"
          aria-pressed={selected === each.part}
          onClick={() => view.setState({ selected: selected === each.part ? null : each.part })}
        >
          {each.name}
        </button>
      ))}
    </div>
  )
}

const PANELS = { Views: ViewsPanel, Case: CasePanel, Apart: ApartPanel, Parts: PartsPanel }

export function StageChoices({ of }: { readonly of: keyof typeof PANELS }) {
  const Choices = PANELS[of]
  return <Choices />
}
