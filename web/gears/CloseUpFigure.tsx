/** One mesh in one plane, drawn large and in step with the machine. */
import { useDeferredValue, useEffect, useMemo, useRef, useState } from 'react'
import type { ContactField } from '../../sim/gear/contact-field.ts'
import type { Side } from '../../sim/gear/gear-numbers.ts'
import { axialPitch } from '../../sim/gear/proportions.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { MarkSign } from '../instrument/MarkSign.tsx'
import { givenFigure } from '../instrument/reading-text.ts'
import { closeUp, gapTimes, widestPlane } from './close-up.ts'
import { attachCloseUp } from './close-up-surface.ts'
import { touchWords } from './contact-words.ts'
import { MeshActions } from './MeshActions.tsx'
import { keepSign } from './panels.ts'
import { Slider } from './Slider.tsx'
import { Switch } from './Switch.tsx'
import { newTouching } from './touching.ts'

const SIDES: readonly { readonly side: Side; readonly label: string }[] = [
  { side: 'left', label: 'Left wheel' },
  { side: 'right', label: 'Right wheel' },
]

interface CloseUpProps {
  readonly machine: Machine
  readonly fields: readonly [ContactField, ContactField]
  readonly side: Side
  readonly onSide: (side: Side) => void
}

const placeWords = (y: number): string => {
  if (y === 0) return 'middle of the wheel'
  return `${givenFigure(Math.abs(y))} mm ${y > 0 ? 'above' : 'below'} the middle`
}

export function CloseUpFigure({ machine, fields, side, onSide }: CloseUpProps) {
  const { frame } = useWorkshop()
  const { gearing } = machine
  const [wanted, setWanted] = useState(0)
  const [size, setSize] = useState(1)
  const [wide, setWide] = useState(false)
  const widest = useMemo(() => Math.floor(10 * widestPlane(gearing)) / 10, [gearing])
  const plane = Math.max(-widest, Math.min(widest, wanted))
  const drawnPlane = useDeferredValue(plane)
  const pitch = axialPitch(gearing.axialModule)
  const times = gapTimes(pitch, gearing.backlash)
  const picture = useMemo(
    () => closeUp(gearing, side === 'left' ? -drawnPlane : drawnPlane),
    [gearing, side, drawnPlane],
  )
  const canvas = useRef<HTMLCanvasElement>(null)
  const count = useRef<HTMLOutputElement>(null)
  useEffect(() => {
    if (!canvas.current) return undefined
    return attachCloseUp(canvas.current, frame, {
      picture,
      touching: newTouching(machine, side, fields),
      times: wide ? times : 1,
      onSize: setSize,
      onLines: (lines) => {
        if (count.current) count.current.textContent = touchWords(lines, gearing.wheelForm)
      },
    })
  }, [frame, picture, machine, gearing, side, fields, wide, times])
  return (
    <section className="close-up" aria-label="The mesh, close up">
      <output className="close-up-count" aria-live="off" aria-label="Touching now" ref={count} />
      <div className="close-up-sides" role="group" aria-label="Which mesh">
        {SIDES.map((each) => (
          <button
            key={each.side}
            type="button"
            className="button"
            aria-pressed={side === each.side}
            onClick={() => onSide(each.side)}
          >
            <MarkSign part={each.side} size={20} />
            <span>{each.label}</span>
          </button>
        ))}
      </div>
      <canvas
        ref={canvas}
        role="img"
        aria-label={`Section of worm and ${side} wheel, seen from above, ${placeWords(plane)}`}
      />
      <p className="small">
        Seen from above, the thread grey, drawn {size} times life size. Dots: where they touch. Line: the path
        on which contact runs. Cross: pitch point.
      </p>
      <MeshActions />
      <Slider
        label="Plane"
        least={-widest}
        most={widest}
        step={0.1}
        value={plane}
        text={placeWords(plane)}
        onChange={setWanted}
      />
      {gearing.backlash > 0 && times > 1 && (
        <Switch label={`Gap drawn ${times} times as wide`} on={wide} onChange={setWide} />
      )}
      <KeepLines />
    </section>
  )
}

function KeepLines() {
  const workshop = useWorkshop()
  const kept = useView(({ keptSigns }) => keptSigns.includes('contact'))
  return (
    <Switch
      label="Keep the lines on the stage"
      on={kept}
      onChange={(keep) => keepSign(workshop, 'contact', keep)}
    />
  )
}
