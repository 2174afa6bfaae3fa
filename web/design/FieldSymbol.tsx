/** The symbol of a quantity: V_s is written with its index low. Dragging it sideways steps the value. */
import { type PointerEvent, useRef } from 'react'

/** Way of the pointer for one step [px] */
const STEP_WAY = 8

interface FieldSymbolProps {
  readonly symbol: string
  readonly onSteps: (steps: number) => void
  readonly onEnd: () => void
}

export function FieldSymbol({ symbol, onSteps, onEnd }: FieldSymbolProps) {
  const last = useRef<number | null>(null)
  const [letter, index] = symbol.split('_')

  const move = (event: PointerEvent) => {
    if (last.current === null) return
    const steps = Math.trunc((event.clientX - last.current) / STEP_WAY)
    if (steps === 0) return
    last.current += steps * STEP_WAY
    onSteps(steps)
  }
  const end = () => {
    if (last.current !== null) onEnd()
    last.current = null
  }
  return (
    <span
      className="parameter-symbol"
      aria-hidden="true"
      title="Drag sideways to change"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId)
        last.current = event.clientX
      }}
      onPointerMove={move}
      onPointerUp={end}
      onPointerCancel={end}
    >
      {letter}
      {index && <sub>{index}</sub>}
    </span>
  )
}
