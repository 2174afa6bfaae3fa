/** What happens to the contact when worm and wheel do not stand where they should. */
import { type RefObject, useDeferredValue, useEffect, useMemo, useRef, useState } from 'react'
import { type BearingPattern, MICROMETRES, bearingPattern } from '../../sim/gear/bearing-pattern.ts'
import type { Side } from '../../sim/gear/gear-numbers.ts'
import type { Flank } from '../../sim/gear/wheel-flank.ts'
import { handSign } from '../../sim/gear/wheel-motion.ts'
import { radians } from '../../sim/quantity/convert.ts'
import { useBench, useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { givenFigure } from '../instrument/reading-text.ts'
import { IDEAL, type Misplacement } from '../store/view.ts'
import { Fact } from './ContactFacts.tsx'
import { drawPattern, readPatternColours } from './pattern-picture.ts'
import { FILM, backlashWords, leavingSide, micrometres, patternWords } from './setting-words.ts'
import { repaintOn } from './repaint.ts'
import { Slider } from './Slider.tsx'
import { Switch } from './Switch.tsx'

interface Way {
  readonly key: keyof Misplacement
  readonly label: string
  readonly unit: ' mm' | '°'
  /** Furthest either way: in axial modules, or in degrees */
  readonly most: number
  readonly more: string
  readonly less: string
}

const WAYS: readonly Way[] = [
  { key: 'centre', label: 'Centre distance', unit: ' mm', most: 0.1, more: 'wider', less: 'closer' },
  { key: 'along', label: 'Wheel along its axis', unit: ' mm', most: 0.2, more: 'up', less: 'down' },
  {
    key: 'axial',
    label: 'Worm along its axis',
    unit: ' mm',
    most: 0.2,
    more: 'to the front',
    less: 'to the back',
  },
  {
    key: 'tilt',
    label: 'Tilt of the wheel',
    unit: '°',
    most: 1,
    more: 'top to the front',
    less: 'top to the back',
  },
]

const amountWords = (value: number, { unit, more, less }: Way): string =>
  value === 0 ? 'none' : `${givenFigure(Math.abs(value))}${unit} ${value > 0 ? more : less}`

const isIdeal = (off: Misplacement): boolean => WAYS.every(({ key }) => off[key] === 0)

export function Setting({ side }: { readonly side: Side }) {
  const [open, setOpen] = useState(false)
  return (
    <details className="gear-more" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>When it is not set right</summary>
      {open && <SettingBody side={side} />}
    </details>
  )
}

function SettingBody({ side }: { readonly side: Side }) {
  const { view } = useWorkshop()
  const modules = useMachine(({ gearing }) => gearing.axialModule)
  const off = useView((state) => state.misplaced)
  const compound = useView((state) => state.gearSigns.compound)
  return (
    <section aria-label="Setting">
      {WAYS.map((way) => {
        const most = way.unit === '°' ? way.most : Math.max(0.01, Math.round(100 * way.most * modules) / 100)
        return (
          <Slider
            key={way.key}
            label={way.label}
            least={-most}
            most={most}
            step={way.unit === '°' ? 0.05 : 0.01}
            value={off[way.key]}
            text={amountWords(off[way.key], way)}
            onChange={(value) => view.setState({ misplaced: { ...off, [way.key]: value } })}
          />
        )
      })}
      <button
        type="button"
        className="button"
        aria-disabled={isIdeal(off)}
        onClick={() => view.setState({ misplaced: IDEAL })}
      >
        Back to ideal
      </button>
      <Pattern side={side} />
      {!isIdeal(off) && <p className="small">Count and close-up above go on showing the ideal setting.</p>}
      <Switch
        label="Marking compound on the wheels"
        on={compound}
        onChange={(on) => view.setState(({ gearSigns }) => ({ gearSigns: { ...gearSigns, compound: on } }))}
      />
    </section>
  )
}

interface Patterns {
  readonly carrying: BearingPattern
  readonly idle: BearingPattern
}

/** Both flanks of the wheel, worked out after what is more urgent. */
function usePatterns(side: Side): Patterns {
  const gearing = useDeferredValue(useMachine((machine) => machine.gearing))
  const off = useDeferredValue(useView((state) => state.misplaced))
  const sense = useBench((bench) => bench.sense)
  return useMemo(() => {
    const place = { ...off, tilt: radians(off.tilt) }
    const carrying: Flank = handSign(gearing.hand) * sense > 0 ? -1 : 1
    const idle: Flank = carrying > 0 ? -1 : 1
    return {
      carrying: bearingPattern(gearing, side, carrying, place, FILM),
      idle: bearingPattern(gearing, side, idle, place, FILM),
    }
  }, [gearing, off, sense, side])
}

/** Draws the pattern now, and again at every change of size or theme. */
function usePatternDrawn(canvas: RefObject<HTMLCanvasElement | null>, pattern: BearingPattern): void {
  useEffect(() => {
    const element = canvas.current
    if (!element) return undefined
    const draw = () => drawPattern(element, pattern, FILM, readPatternColours(element))
    draw()
    return repaintOn(element, draw)
  }, [canvas, pattern])
}

function Pattern({ side }: { readonly side: Side }) {
  const { carrying, idle } = usePatterns(side)
  const sense = useBench((bench) => bench.sense)
  const gearing = useMachine((machine) => machine.gearing)
  const canvas = useRef<HTMLCanvasElement>(null)
  usePatternDrawn(canvas, carrying)
  const leaving = leavingSide(side, sense)
  const words = patternWords({
    share: carrying.share,
    middle: carrying.middle / Math.max(...carrying.y),
    leaving,
    helical: gearing.wheelForm === 'helical',
  })
  const left = MICROMETRES * gearing.backlash + carrying.play + idle.play
  return (
    <>
      <p className="pattern-words">{words}</p>
      <div className="pattern">
        <canvas ref={canvas} role="img" aria-label={`Bearing pattern of one tooth of the ${side} wheel`} />
        <p className="small">
          <span>{leaving > 0 ? 'Entering' : 'Leaving'} side, below</span>
          <span>above, {leaving > 0 ? 'leaving' : 'entering'} side</span>
        </p>
      </div>
      <dl>
        <Fact name="Play on the carrying flank" text={micrometres(carrying.play)} />
        <Fact name="Play on the idle flank" text={micrometres(idle.play)} />
        <Fact name="Uneven running, peak to peak" text={micrometres(carrying.transmissionError)} />
      </dl>
      <p className="small">
        {backlashWords(left)} Play is counted at the reference circle, from where the wheel stands in an ideal
        mesh without backlash; below 0 the flank must give way by so much.
      </p>
    </>
  )
}
