/** What the tones of the parts on the stage mean: the scale in degrees, with where winding and case are on it. */
import { encodedTone, heatLevelOn } from '../material/heat-tone.ts'
import { useMachine, useView } from '../frame/workshop.ts'
import type { PartHeat } from '../store/part-heat.ts'
import type { Theme } from '../store/view.ts'
import { timeText } from './heat-span.ts'
import { degreeText } from './heat-words.ts'
import './heat-scale.css'

interface HeatScaleProps {
  readonly heat: PartHeat
  /** From the left edge of the stage [px] */
  readonly left: number
}

const WIDTH = 240
const STEPS = 12
const INSET = 8
const BAR = WIDTH - 2 * INSET

const toneAt = (level: number, theme: Theme): string => {
  const part = (100 * encodedTone(level, theme)).toFixed(1)
  return `rgb(${part}% ${part}% ${part}%)`
}

export function HeatScale({ heat, left }: HeatScaleProps) {
  const theme = useView((view) => view.theme)
  const insulation = useMachine(({ thermal }) => thermal?.insulation ?? '')
  const { from, to, seconds } = heat
  const at = (T: number) => INSET + BAR * heatLevelOn(T, from, to)
  return (
    <figure className="heat-scale" style={{ left }}>
      <figcaption className="small">
        {seconds === null ? 'As it runs now' : `After ${timeText(seconds)}`}
        <span className="heat-scale-key" aria-hidden="true">
          <svg width="11" height="11">
            <path className="heat-scale-mark" d="M5.5 10l-5 -9h10z" />
          </svg>
          winding
          <svg width="11" height="11">
            <path className="heat-scale-mark open" d="M5.5 1l-5 9h10z" />
          </svg>
          case
        </span>
      </figcaption>
      <svg width={WIDTH} height="58" role="img" aria-label={scaleWords(heat, insulation)}>
        {Array.from({ length: STEPS }, (_, i) => (
          <rect
            key={i}
            x={INSET + (BAR * i) / STEPS}
            y="14"
            width={BAR / STEPS + 0.5}
            height="14"
            fill={toneAt((i + 0.5) / STEPS, theme)}
          />
        ))}
        <rect className="heat-scale-edge" x={INSET} y="14" width={BAR} height="14" />
        <path className="heat-scale-mark" d={`M${at(heat.winding)} 13l-5 -9h10z`} />
        <path className="heat-scale-mark open" d={`M${at(heat.case)} 29l-5 9h10z`} />
        <text className="plot-number" x={INSET} y="53">
          {degreeText(from)}
        </text>
        <text className="plot-number" x={WIDTH - INSET} y="53" textAnchor="end">
          class {insulation} {degreeText(to)}
        </text>
      </svg>
    </figure>
  )
}

const scaleWords = ({ winding, case: body, from, to }: PartHeat, insulation: string): string =>
  `Tones from ${degreeText(from)} to class ${insulation}, ${degreeText(to)}: winding ${degreeText(winding)}, case ${degreeText(body)}`
