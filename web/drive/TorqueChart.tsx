/** Torque over speed at every setting, what is asked for, where the two meet, and where the machine is now. */
import { type ReactNode, type RefObject, useId } from 'react'
import { rpm } from '../../sim/quantity/convert.ts'
import type { PlotArea } from '../chart/Axes.tsx'
import { type Line, Plot, type Spot } from '../chart/Plot.tsx'
import { roundSpan, spanOf, toPixel } from '../chart/scale.ts'
import { useReadout } from '../instrument/use-reading.ts'
import type { TorqueCursor, TorqueView } from './torque-view.ts'
import '../chart/chart.css'

/** A load that holds the machine still is shown above what the motor can, up to so many times that. */
const MOST_ABOVE = 2.5

interface TorqueChartProps {
  readonly view: TorqueView
  readonly width: number
  readonly height: number
  readonly cursor: TorqueCursor
  readonly figure: RefObject<SVGSVGElement | null>
}

export function TorqueChart({ view, width, height, cursor, figure }: TorqueChartProps) {
  const { speeds, lines, setting, demand, steady } = view
  const [, strongest] = spanOf(lines.map(({ torque }) => torque))
  const [, top] = roundSpan(0, Math.max(strongest, Math.min(1.05 * demand[0]!, MOST_ABOVE * strongest)))
  const drawn: readonly Line[] = [
    ...lines.map((line, i) => ({
      name: `Setting ${i + 1}`,
      x: speeds,
      y: line.torque,
      drawn: i === setting ? ('main' as const) : ('thin' as const),
    })),
    { name: 'Asked for', x: speeds, y: demand, drawn: 'dashed' },
  ]
  return (
    <Plot
      label="Torque over speed"
      width={width}
      height={height}
      x={{ label: 'Worm speed [r/min]', from: 0, to: view.end }}
      y={{ label: 'Torque [N m]', from: 0, to: top }}
      lines={drawn}
      spots={spotsOf(view, steady)}
      cursors={[cursor]}
      figure={figure}
      over={overlay(view, top)}
    />
  )
}

const overlay = (view: TorqueView, top: number) => (area: PlotArea) => (
  <>
    <TooHot area={area} view={view} top={top} />
    <LineNumbers area={area} view={view} />
    <Now area={area} />
  </>
)

function spotsOf({ lines, setting }: TorqueView, steady: TorqueView['steady']): readonly Spot[] {
  const stall: Spot = { name: 'stall', x: 0, y: lines[setting]?.torque[0] ?? 0, filled: false }
  if (!steady) return [stall]
  const { speed, torque } = steady
  return [stall, { name: 'steady', x: speed, y: torque, filled: true, drops: true }]
}

/** Part of its torque at standstill at which each line bears its number, away from where they all meet. */
const NUMBER_AT = 0.55

function LineNumbers({ area, view }: { readonly area: PlotArea; readonly view: TorqueView }) {
  return view.lines.map(({ torque }, setting) => {
    const at = torque.findIndex((each) => each <= NUMBER_AT * torque[0]!)
    if (at < 0) return null
    return (
      <text
        key={setting}
        className={setting === view.setting ? 'torque-number chosen' : 'torque-number'}
        x={toPixel(area.across, view.speeds[at]!)}
        y={toPixel(area.up, torque[at]!)}
        dy="0.35em"
        textAnchor="middle"
      >
        {setting + 1}
      </text>
    )
  })
}

/** Width from which the hatched part is named in the picture too [px] */
const ROOM_FOR_WORDS = 320

/** Between what can be held for long and what the strongest setting gives. */
function TooHot({
  area,
  view,
  top,
}: {
  readonly area: PlotArea
  readonly view: TorqueView
  readonly top: number
}) {
  const hatch = useId()
  const outline = hotOutline(area, view, top)
  if (outline === null) return null
  return (
    <>
      <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line className="plot-hatch" y2="7" />
      </pattern>
      <path d={outline} fill={`url(#${hatch})`} />
      {area.across.high - area.across.low > ROOM_FOR_WORDS && (
        <text className="plot-words inside" x={area.across.high - 6} y={area.up.high + 16} textAnchor="end">
          Hatched: too hot to hold for long
        </text>
      )}
    </>
  )
}

function hotOutline(
  { across, up }: PlotArea,
  { speeds, lines, longTorque }: TorqueView,
  top: number,
): string | null {
  if (!longTorque) return null
  const upper: string[] = []
  const lower: string[] = []
  const place = (speed: number, torque: number) =>
    `${toPixel(across, speed).toFixed(1)} ${toPixel(up, torque).toFixed(1)}`
  speeds.forEach((speed, i) => {
    const strongest = Math.min(top, Math.max(...lines.map(({ torque }) => torque[i]!)))
    if (!(longTorque[i]! < strongest)) return
    upper.push(place(speed, strongest))
    lower.unshift(place(speed, longTorque[i]!))
  })
  return upper.length < 2 ? null : `M${[...upper, ...lower].join('L')}Z`
}

/** Where the machine is at this moment, while it turns under power or coasts. */
function Now({ area }: { readonly area: PlotArea }): ReactNode {
  const running = useReadout(({ motion }) => motion === 'running')
  const x = useReadout(({ reading }) => toPixel(area.across, rpm(Math.abs(reading.wormSpeed))))
  const y = useReadout(({ reading }) => toPixel(area.up, reading.motorTorque))
  if (!running || !Number.isFinite(x) || !Number.isFinite(y)) return null
  return (
    <circle className="torque-now" cx={Math.min(x, area.across.high)} cy={Math.max(y, area.up.high)} r="8" />
  )
}
