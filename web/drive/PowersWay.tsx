/** The power's way: the light on the stage goes from stop to stop, and here stands what happens there. */
import { type ReactNode, type RefObject, useEffect, useMemo, useRef, useState } from 'react'
import { useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import type { PowerStop } from '../store/view.ts'
import { PowersWayStop } from './PowersWayStop.tsx'
import { type WayStop, powersWay, stopFrom } from './powers-way.ts'
import './powers-way.css'
import { light, useWalkingKeys } from './use-walking-keys.ts'

export function PowersWay() {
  const workshop = useWorkshop()
  const machine = useMachine((now) => now)
  const lit = useView((view) => view.lit)
  const way = useMemo(() => powersWay(machine), [machine])
  const at = way.findIndex(({ stop }) => stop === lit)
  const stop = way[at]
  const section = useRef<HTMLElement>(null)
  const [begun, setBegun] = useState(lit !== null)
  useWalkingKeys(workshop, way, section)
  useEffect(() => {
    // Another machine may lack what was lit.
    if (lit !== null && !stop) light(workshop, null)
  }, [workshop, lit, stop])
  const begin = () => {
    setBegun(true)
    light(workshop, way[0]!.stop)
  }
  if (!stop) return <Start first={way[0]!} again={begun} begin={begin} />
  const go = (by: 1 | -1) => {
    const next = stopFrom(
      way.map((each) => each.stop),
      stop.stop,
      by,
    )
    if (next !== null) light(workshop, next)
  }
  return (
    <section className="powers-way" aria-label="The power’s way" ref={section}>
      <h2 className="unseen">The power’s way</h2>
      <Walk way={way} at={at} go={go} jump={(to) => light(workshop, to)} />
      <PowersWayStop stop={stop} />
    </section>
  )
}

/** A button that takes the focus when the one that had it has gone. */
function useFocusLeft(wanted: boolean): RefObject<HTMLButtonElement | null> {
  const button = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    if (wanted && document.activeElement === document.body) button.current?.focus({ preventScroll: true })
  }, [wanted])
  return button
}

interface StartProps {
  readonly first: WayStop
  /** The light has been on before. */
  readonly again: boolean
  readonly begin: () => void
}

function Start({ first, again, begin }: StartProps) {
  const button = useFocusLeft(again)
  return (
    <section className="powers-way start" aria-label="The power’s way">
      <p>Follow the power from the {first.name.toLowerCase()} to both outputs, one part at a time.</p>
      <button type="button" className="button" ref={button} onClick={begin}>
        Follow the power
      </button>
    </section>
  )
}

interface WalkProps {
  readonly way: readonly WayStop[]
  readonly at: number
  readonly go: (by: 1 | -1) => void
  readonly jump: (to: PowerStop | null) => void
}

function Walk({ way, at, go, jump }: WalkProps) {
  const next = useFocusLeft(true)
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
        <Step by={1} off={at === way.length - 1} go={go} button={next}>
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
  readonly button?: RefObject<HTMLButtonElement | null>
  readonly children: ReactNode
}

const Step = ({ by, off, go, button, children }: StepProps) => (
  <button ref={button} type="button" className="button" aria-disabled={off} onClick={() => off || go(by)}>
    {children}
  </button>
)
