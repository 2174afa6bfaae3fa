/** The power's way: the light on the stage goes from stop to stop, and here stands what happens there. */
import { type KeyboardEvent, type ReactNode, useEffect } from 'react'
import { type Workshop, useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import type { PowerStop } from '../store/view.ts'
import { PowersWayStop } from './PowersWayStop.tsx'
import { type WayStop, powersWay, stopFrom } from './powers-way.ts'
import './powers-way.css'

/** The parts have to be together and the case open to the eye. */
const light = ({ view }: Workshop, lit: PowerStop | null): void =>
  view.setState(({ apart, caseState, lit: before, selected }) => ({
    lit,
    selected: lit === null ? selected : null,
    apart: lit === null && before === null ? apart : 0,
    caseState: lit !== null && caseState === 'closed' ? 'clear' : caseState,
  }))

const STEPS: Readonly<Record<string, 1 | -1>> = {
  ArrowRight: 1,
  ArrowDown: 1,
  PageDown: 1,
  ArrowLeft: -1,
  ArrowUp: -1,
  PageUp: -1,
}

const typing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input, select, textarea, dialog, [role="slider"]') !== null

export function PowersWay() {
  const workshop = useWorkshop()
  const machine = useMachine((now) => now)
  const lit = useView((view) => view.lit)
  const way = powersWay(machine)
  const at = way.findIndex(({ stop }) => stop === lit)
  const stop = way[at]
  useClickers(workshop, way)
  if (!stop) return <Start first={way[0]!} begin={() => light(workshop, way[0]!.stop)} />
  const go = (by: 1 | -1) => {
    const next = stopFrom(
      way.map((each) => each.stop),
      stop.stop,
      by,
    )
    if (next !== null) light(workshop, next)
  }
  const press = (event: KeyboardEvent) => {
    const by = STEPS[event.key]
    if (by === undefined || typing(event.target)) return
    event.preventDefault()
    event.stopPropagation()
    go(by)
  }
  return (
    <section className="powers-way" aria-label="The power’s way" onKeyDown={press}>
      <h2 className="unseen">The power’s way</h2>
      <Walk way={way} at={at} go={go} jump={(to) => light(workshop, to)} />
      <PowersWayStop stop={stop} />
    </section>
  )
}

function Start({ first, begin }: { readonly first: WayStop; readonly begin: () => void }) {
  return (
    <section className="powers-way start" aria-label="The power’s way">
      <p>Follow the power from the {first.name.toLowerCase()} to both outputs, one part at a time.</p>
      <button type="button" className="button" onClick={begin}>
        Follow the power
      </button>
    </section>
  )
}

/** What a presenter's remote sends, wherever the focus is, while the light is on. */
function useClickers(workshop: Workshop, way: readonly WayStop[]): void {
  useEffect(() => {
    const press = (event: globalThis.KeyboardEvent) => {
      const { lit } = workshop.view.getState()
      const by = event.key === 'PageDown' ? 1 : event.key === 'PageUp' ? -1 : null
      if (lit === null || by === null || event.defaultPrevented || typing(event.target)) return
      event.preventDefault()
      const stops = way.map(({ stop }) => stop)
      light(workshop, stopFrom(stops, lit, by) ?? lit)
    }
    addEventListener('keydown', press)
    return () => removeEventListener('keydown', press)
  }, [workshop, way])
}

interface WalkProps {
  readonly way: readonly WayStop[]
  readonly at: number
  readonly go: (by: 1 | -1) => void
  readonly jump: (to: PowerStop | null) => void
}

function Walk({ way, at, go, jump }: WalkProps) {
  return (
    <>
      <div className="powers-way-walk">
        <Step by={-1} off={at === 0} go={go}>
          <Icon name="back" size={16} />
          <span className="unseen">Previous</span>
        </Step>
        <label>
          <span className="unseen">Part on the way</span>
          <select
            className="box"
            value={way[at]!.stop}
            onChange={(event) => jump(event.target.value as PowerStop)}
          >
            {way.map(({ stop, name }, place) => (
              <option key={stop} value={stop}>
                {place + 1}. {name}
              </option>
            ))}
          </select>
        </label>
        <Step by={1} off={at === way.length - 1} go={go}>
          Next
        </Step>
        <button type="button" className="button icon plain" onClick={() => jump(null)}>
          <Icon name="close" size={16} />
          <span className="unseen">Put the light out</span>
        </button>
      </div>
      <ol className="powers-way-line" aria-hidden="true">
        {way.map(({ stop }, place) => (
          <li key={stop} data-place={place < at ? 'passed' : place === at ? 'here' : 'ahead'} />
        ))}
      </ol>
    </>
  )
}

interface StepProps {
  readonly by: 1 | -1
  readonly off: boolean
  readonly go: (by: 1 | -1) => void
  readonly children: ReactNode
}

const Step = ({ by, off, go, children }: StepProps) => (
  <button type="button" className="button" aria-disabled={off} onClick={() => off || go(by)}>
    {children}
  </button>
)
