/** What happens to the contact when worm and wheel do not stand where they should. */
import { type RefObject, useEffect, useRef, useState } from 'react'
import { type BearingPattern, COMPOUND_FILM, MICROMETRES } from '../../sim/gear/bearing-pattern.ts'
import type { GearNumbers, Side } from '../../sim/gear/gear-numbers.ts'
import type { Flank } from '../../sim/gear/wheel-flank.ts'
import { handSign } from '../../sim/gear/wheel-motion.ts'
import { useBench, useMachine, useView, useWorkshop } from '../frame/workshop.ts'
import { givenFigure } from '../instrument/reading-text.ts'
import { isIdeal } from '../store/shown-signs.ts'
import { patternOf } from '../shape-work/flank-patterns.ts'
import { usePatterns } from '../shape-work/patterns.ts'
import { IDEAL, type Misplacement, type View } from '../store/view.ts'
import { Fact } from './ContactFacts.tsx'
import { drawPattern, readPatternColours } from './pattern-picture.ts'
import { backlashWords, leavingSide, micrometres, patternWords } from './setting-words.ts'
import { repaintOn } from '../instrument/canvas.ts'
import { lookFrom } from '../panel/stage-look.ts'
import { Slider } from '../panel/Slider.tsx'
import { Switch } from '../panel/Switch.tsx'

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

export function Setting({ side }: { readonly side: Side }) {
  const [open, setOpen] = useState(false)
  return (
    <details className="gear-more panel-more" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>When it is not set right</summary>
      {open && <SettingBody side={side} />}
    </details>
  )
}

/** Coats the wheels and goes near enough to see it, or wipes it off. */
const coat =
  (on: boolean) =>
  (state: View): Partial<View> => ({
    gearSigns: { ...state.gearSigns, compound: on },
    ...(on ? lookFrom(state, 'mesh') : {}),
  })

function SettingBody({ side }: { readonly side: Side }) {
  const { view } = useWorkshop()
  const modules = useMachine(({ gearing }) => gearing.axialModule)
  const off = useView((state) => state.misplaced)
  const compound = useView((state) => state.gearSigns.compound)
  return (
    <section aria-label="Setting">
      <Switch
        label="Marking compound on the wheels"
        on={compound}
        onChange={(on) => view.setState(coat(on))}
      />
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
      {!isIdeal(off) && (
        <p className="small">
          Count, close-up and lines go on showing the ideal setting; with compound the stage leaves its lines
          out.
        </p>
      )}
    </section>
  )
}

/** Draws the pattern now, and again at every change of size or theme. */
function usePatternDrawn(canvas: RefObject<HTMLCanvasElement | null>, pattern: BearingPattern): void {
  useEffect(() => {
    const element = canvas.current
    if (!element) return undefined
    const draw = () => drawPattern(element, pattern, COMPOUND_FILM, readPatternColours(element))
    draw()
    return repaintOn(element, draw)
  }, [canvas, pattern])
}

function Pattern({ side }: { readonly side: Side }) {
  const gearing = useMachine((machine) => machine.gearing)
  const sense = useBench((bench) => bench.sense)
  const patterns = usePatterns(
    gearing,
    useView((state) => state.misplaced),
  )
  if (patterns === null) return <p className="small">Working out where it bears</p>
  const carrying: Flank = handSign(gearing.hand) * sense > 0 ? -1 : 1
  const idle: Flank = carrying > 0 ? -1 : 1
  return (
    <PatternFound
      side={side}
      sense={sense}
      gearing={gearing}
      carrying={patternOf(patterns, side, carrying)}
      idle={patternOf(patterns, side, idle)}
    />
  )
}

interface PatternFoundProps {
  readonly side: Side
  readonly sense: 1 | -1
  readonly gearing: GearNumbers
  readonly carrying: BearingPattern
  readonly idle: BearingPattern
}

function PatternFound({ side, sense, gearing, carrying, idle }: PatternFoundProps) {
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
