/** One mesh in one plane, drawn large and in step with the machine. */
import { type RefObject, useDeferredValue, useEffect, useMemo, useRef, useState } from 'react'
import type { ContactField } from '../../sim/gear/contact-field.ts'
import { contactRatio } from '../../sim/gear/contact-ratio.ts'
import type { Side } from '../../sim/gear/gear-numbers.ts'
import { axialPitch } from '../../sim/gear/proportions.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { MarkSign } from '../instrument/MarkSign.tsx'
import { figure, givenFigure, quantityText } from '../instrument/reading-text.ts'
import { closeUp, gapTimes, widestPlane } from './close-up.ts'
import { attachCloseUp } from './close-up-surface.ts'
import { touchWords, wormPlay } from './contact-words.ts'
import { MeshActions } from './MeshActions.tsx'
import { keepSign } from '../panel/panels.ts'
import { Slider } from '../panel/Slider.tsx'
import { Switch } from '../panel/Switch.tsx'
import { newTouching } from './touching.ts'

interface MeshChosen {
  readonly machine: Machine
  readonly fields: readonly [ContactField, ContactField]
  readonly side: Side
}

const placeWords = (y: number): string =>
  y === 0 ? 'middle of the wheel' : `${givenFigure(Math.abs(y))} mm ${y > 0 ? 'above' : 'below'} the middle`

/** Keeps canvas and count right while the machine turns; gives back how many times life size it is drawn. */
function useCloseUp(
  canvas: RefObject<HTMLCanvasElement | null>,
  count: RefObject<HTMLOutputElement | null>,
  { machine, fields, side }: MeshChosen,
  plane: number,
  times: number,
): number {
  const { frame } = useWorkshop()
  const [size, setSize] = useState(1)
  const { gearing } = machine
  const drawnPlane = useDeferredValue(side === 'left' ? -plane : plane)
  const picture = useMemo(() => closeUp(gearing, drawnPlane), [gearing, drawnPlane])
  useEffect(() => {
    if (!canvas.current) return undefined
    return attachCloseUp(canvas.current, frame, {
      picture,
      touching: newTouching(machine, side, fields),
      times,
      onSize: setSize,
      onLines: (lines) => {
        if (count.current) count.current.textContent = touchWords(lines, gearing.wheelForm)
      },
    })
  }, [canvas, count, frame, picture, machine, gearing, side, fields, times])
  return size
}

export function CloseUpFigure({ onSide, ...mesh }: MeshChosen & { readonly onSide: (side: Side) => void }) {
  const { machine, side } = mesh
  const { gearing } = machine
  const [wanted, setWanted] = useState(0)
  const [wide, setWide] = useState(false)
  const widest = useMemo(() => Math.floor(10 * widestPlane(gearing)) / 10, [gearing])
  const plane = Math.max(-widest, Math.min(widest, wanted))
  const times = gapTimes(axialPitch(gearing.axialModule), gearing.backlash)
  const canvas = useRef<HTMLCanvasElement>(null)
  const count = useRef<HTMLOutputElement>(null)
  const size = useCloseUp(canvas, count, mesh, plane, wide ? times : 1)
  return (
    <section className="close-up" aria-label="The mesh, close up">
      <output className="close-up-count" aria-live="off" aria-label="Touching now" ref={count} />
      <Sides side={side} onSide={onSide} />
      <canvas
        ref={canvas}
        role="img"
        aria-label={`Section of worm and ${side} wheel, seen from above, ${placeWords(plane)}`}
      />
      <KeyNumbers gearing={gearing} />
      <MeshActions />
      <p className="small">
        Seen from above, the thread grey, drawn {size} times life size. Dots: where they touch
        {gearing.wheelForm === 'helical' && ', empty where that is outside this plane'}. Line: the path on
        which contact runs. Cross: pitch point.
      </p>
      <Slider
        label="Plane"
        least={-widest}
        most={widest}
        step={0.1}
        value={plane}
        text={placeWords(plane)}
        onChange={setWanted}
      />
      {times > 1 && <Switch label={`Gap drawn ${times} times as wide`} on={wide} onChange={setWide} />}
      <KeepLines what={gearing.wheelForm === 'helical' ? 'points' : 'lines'} />
    </section>
  )
}

/** The two that are asked for first; all of them stand below. */
function KeyNumbers({ gearing }: Pick<Machine, 'gearing'>) {
  const { total } = useMemo(() => contactRatio(gearing), [gearing])
  return (
    <dl className="key-numbers">
      <div>
        <dt className="small">Contact ratio</dt>
        <dd className="number">{figure(total)}</dd>
      </div>
      <div>
        <dt className="small">Lost motion, worm</dt>
        <dd className="number">{quantityText(wormPlay(gearing), '°')}</dd>
      </div>
    </dl>
  )
}

const SIDES: readonly { readonly side: Side; readonly label: string }[] = [
  { side: 'left', label: 'Left wheel' },
  { side: 'right', label: 'Right wheel' },
]

function Sides({ side, onSide }: { readonly side: Side; readonly onSide: (side: Side) => void }) {
  return (
    <div className="panel-choice close-up-sides" role="group" aria-label="Which mesh">
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
  )
}

function KeepLines({ what }: { readonly what: 'lines' | 'points' }) {
  const workshop = useWorkshop()
  const kept = useView(({ keptSigns }) => keptSigns.includes('contact'))
  return (
    <Switch
      label={`Keep the ${what} on the stage`}
      on={kept}
      onChange={(keep) => keepSign(workshop, 'contact', keep)}
    />
  )
}
