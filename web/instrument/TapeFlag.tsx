/** The prediction's flag on the tape: dragged, or moved by keys, while nothing is committed; then it stands. */
import type { KeyboardEvent, Ref } from 'react'
import './tape-flag.css'

const STEPS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: 5,
  PageDown: -5,
}

/** Furthest place [turn] that the flag can be moved to by drag or key; a number can be typed beyond it. */
const FARTHEST_FLAG = 400

interface TapeFlagProps {
  readonly element: Ref<HTMLDivElement>
  readonly turns: number | null
  readonly text: string
  /** null: it is committed. */
  readonly onMove: ((turns: number) => void) | null
}

function stepped(turns: number, key: string): number | null {
  if (key === 'Home') return 0
  const step = STEPS[key]
  if (step === undefined) return null
  const whole = step > 0 ? Math.floor(turns) : Math.ceil(turns)
  return Math.min(FARTHEST_FLAG, Math.max(0, whole + step))
}

const FlagCloth = ({ text }: { readonly text: string }) => (
  <span className="tape-flag-cloth">
    <span>You: {text}</span>
  </span>
)

export function TapeFlag({ element, turns, text, onMove }: TapeFlagProps) {
  if (!onMove) {
    return (
      <div className="tape-flag" ref={element}>
        <FlagCloth text={text} />
      </div>
    )
  }
  const pressed = (event: KeyboardEvent) => {
    const next = stepped(turns ?? 0, event.key)
    if (next === null) return
    event.preventDefault()
    event.stopPropagation()
    onMove(next)
  }
  return (
    <div
      className="tape-flag"
      ref={element}
      role="slider"
      tabIndex={0}
      aria-label="Predicted worm turns"
      aria-valuemin={0}
      aria-valuemax={Math.max(FARTHEST_FLAG, turns ?? 0)}
      aria-valuenow={turns ?? 0}
      aria-valuetext={turns === null ? 'nothing yet' : `${text} worm turns`}
      onKeyDown={pressed}
    >
      <FlagCloth text={turns === null ? '?' : text} />
    </div>
  )
}
