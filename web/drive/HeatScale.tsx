/** What the tones of the parts on the stage mean: the scale in degrees, with where winding and case are on it. */
import { CLASS_TEMPERATURE, type InsulationClass } from '../../sim/heat/insulation.ts'
import { encodedTone, heatLevelOn } from '../material/heat-tone.ts'
import { useMachine, useView } from '../frame/workshop.ts'
import type { PartHeat } from '../store/part-heat.ts'
import type { Theme } from '../store/view.ts'
import { timeText } from './heat-span.ts'
import { degreeText } from '../instrument/reading-text.ts'
import './heat-scale.css'
import '../chart/chart.css'

interface HeatScaleProps {
  readonly heat: PartHeat
  /** From the left edge of the stage [px] */
  readonly left: number
}

const WIDTH = 240
/** Where all of it is drawn larger for a projector */
const SHORT = 130
const STEPS = 12
const INSET = 8

const toneAt = (level: number, theme: Theme): string => {
  const part = (100 * encodedTone(level, theme)).toFixed(1)
  return `rgb(${part}% ${part}% ${part}%)`
}

export function HeatScale({ heat, left }: HeatScaleProps) {
  const theme = useView((view) => view.theme)
  const width = useView((view) => (view.large ? SHORT : WIDTH))
  const insulation = useMachine(({ thermal }) => thermal?.insulation ?? 'B')
  const { from, to } = heat
  const bar = width - 2 * INSET
  const at = (T: number) => INSET + bar * heatLevelOn(T, from, to)
  return (
    <figure className="heat-scale" style={{ left, width }}>
      <Key seconds={heat.seconds} />
      <svg width={width} height="58" role="img" aria-label={scaleWords(heat, insulation)}>
        {Array.from({ length: STEPS }, (_, i) => (
          <rect
            key={i}
            x={INSET + (bar * i) / STEPS}
            y="14"
            width={bar / STEPS + 0.5}
            height="14"
            fill={toneAt((i + 0.5) / STEPS, theme)}
          />
        ))}
        <rect className="heat-scale-edge" x={INSET} y="14" width={bar} height="14" />
        <path className="heat-scale-mark" d={`M${at(heat.winding)} 13l-5 -9h10z`} />
        <path className="heat-scale-mark open" d={`M${at(heat.case)} 29l-5 9h10z`} />
        <text className="plot-number" x={INSET} y="53">
          {degreeText(from)}
        </text>
        <text className="plot-number" x={width - INSET} y="53" textAnchor="end">
          {width === SHORT ? degreeText(to) : endText(to, insulation)}
        </text>
      </svg>
    </figure>
  )
}

const Key = ({ seconds }: Pick<PartHeat, 'seconds'>) => (
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
)

/** The class also where the scale does not end there, so that nobody takes its end for a limit. */
const endText = (to: number, insulation: InsulationClass): string => {
  const limit = CLASS_TEMPERATURE[insulation]
  const named = `class ${insulation} ${degreeText(limit)}`
  return to === limit ? named : `${degreeText(to)} (${named})`
}

const scaleWords = ({ winding, case: body, from, to }: PartHeat, insulation: InsulationClass): string =>
  `Tones from ${degreeText(from)} to ${endText(to, insulation)}: winding ${degreeText(winding)}, case ${degreeText(body)}`
