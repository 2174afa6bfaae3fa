/** Covers the stage with what the last row has to see: lines at the stage's sizes, the three marks, one that turns. */
import { Icon } from '../instrument/Icon.tsx'
import { type MarkedPart, MarkSign } from '../instrument/MarkSign.tsx'

const MARKS: readonly { readonly part: MarkedPart; readonly words: readonly [string, string] }[] = [
  { part: 'left', words: ['Left wheel', 'two dashes'] },
  { part: 'worm', words: ['Worm', 'one dash'] },
  { part: 'right', words: ['Right wheel', 'a dot'] },
]

/** A disc with one mark, which makes a turn each time `spins` goes up. */
const Disc = ({ spins }: { readonly spins: number }) => (
  <svg className="room-disc" viewBox="-50 -50 100 100" role="img" aria-label="A disc with a mark">
    <circle r="46" className="room-rim" />
    <g key={spins} className={spins > 0 ? 'room-turning' : undefined}>
      <circle cy="-32" r="9" className="room-dot" />
    </g>
    <path d="M0 -50l5 -8h-10z" className="room-pointer" transform="translate(0 12)" />
  </svg>
)

interface RoomCheckProps {
  readonly spins: number
  readonly onEnd: () => void
}

export function RoomCheck({ spins, onEnd }: RoomCheckProps) {
  return (
    <section className="room-check" aria-label="Room check">
      <div className="room-lines">
        <p className="room-count number">20.35</p>
        <p className="room-headline">Both marks are back</p>
        <p className="room-sentence">No sentence on the stage is smaller than this one.</p>
      </div>
      <ul className="room-marks">
        {MARKS.map(({ part, words }) => (
          <li key={part}>
            <MarkSign part={part} size={112} />
            <p>
              {words[0]}
              <br />
              {words[1]}
            </p>
          </li>
        ))}
        <li>
          <Disc spins={spins} />
          <p>A mark that turns</p>
        </li>
      </ul>
      <button type="button" className="button plain icon room-end" title="End the room check" onClick={onEnd}>
        <Icon name="close" />
        <span className="unseen">End the room check</span>
      </button>
    </section>
  )
}
