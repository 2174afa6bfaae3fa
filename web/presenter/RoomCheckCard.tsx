/** Before the room fills: what the last row has to read, tell apart, see turn and hear, tried on the stage itself. */
import { type ReactNode, useState } from 'react'
import { useStore } from 'zustand'
import { useConnected, usePresenter } from './presenter-context.ts'

interface ItemProps {
  readonly label: string
  /** What helps where it fails */
  readonly help: string
  readonly children?: ReactNode
}

function Item({ label, help, children }: ItemProps) {
  const [fine, setFine] = useState(false)
  return (
    <li>
      <label>
        <input type="checkbox" checked={fine} onChange={({ target }) => setFine(target.checked)} />
        <span>{label}</span>
      </label>
      {!fine && <p className="small">{help}</p>}
      {children}
    </li>
  )
}

const HEARD = {
  untried: '',
  played: 'Played on the stage.',
  blocked: 'The browser plays nothing until the stage has been clicked once.',
} as const

function Items() {
  const { end } = usePresenter()
  const { sound } = useStore(end.store)
  return (
    <ul className="presenter-check">
      <Item label="The count is read" help="If not: sit nearer, or make the picture larger." />
      <Item label="The headline is read" help="If not: say headlines aloud." />
      <Item label="The sentence is read" help="If not: read sentences aloud; use Large." />
      <Item label="The three marks are told apart" help="If not: take the light theme; count by shape." />
      <Item label="The mark turns evenly" help="If not: slow the pace; counts stay exact.">
        <button type="button" className="button" onClick={() => end.send('spin')}>
          Turn the mark
        </button>
      </Item>
      <Item label="The tick is heard" help="If not: turn up the sound, or count aloud.">
        <button type="button" className="button" onClick={() => end.send('tick')}>
          Tick
        </button>
        <p className="small" role="status">
          {HEARD[sound]}
        </p>
      </Item>
    </ul>
  )
}

export function RoomCheckCard() {
  const { end } = usePresenter()
  const { checks } = useStore(end.store)
  const connected = useConnected()
  return (
    <section className="presenter-card presenter-room" aria-label="Room check">
      <button
        type="button"
        className="button"
        aria-pressed={checks}
        aria-disabled={!connected}
        onClick={() => end.send('check', checks ? 0 : 1)}
      >
        {checks ? 'End the room check' : 'Room check'}
      </button>
      {checks && <Items />}
    </section>
  )
}
