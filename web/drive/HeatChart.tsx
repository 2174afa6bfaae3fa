/** Temperature over time against what the winding's insulation bears. */
import { type RefObject, useMemo } from 'react'
import type { PlotArea } from '../chart/Axes.tsx'
import type { Cursor } from '../chart/CursorHandle.tsx'
import { type Line, Plot } from '../chart/Plot.tsx'
import { toPixel } from '../chart/scale.ts'
import type { HeatView } from './heat-view.ts'
import { namePlaces } from './heat-names.ts'
import { amberOf, limitOf } from './heat-words.ts'
import '../chart/chart.css'

interface HeatChartProps {
  readonly view: HeatView
  readonly width: number
  readonly height: number
  readonly cursor: Cursor
  readonly figure: RefObject<SVGSVGElement | null>
}

export function HeatChart({ view, width, height, cursor, figure }: HeatChartProps) {
  const { thermal, unit, end, least, most } = view
  const lines = useMemo(() => linesOf(view), [view])
  return (
    <Plot
      label="Temperature of winding and case over time"
      width={width}
      height={height}
      x={{ label: `Time [${unit.name}]`, from: 0, to: end }}
      y={{ label: 'Temperature [°C], indicative', from: least, to: most }}
      bands={[{ name: 'too hot', named: false, y: [limitOf(thermal), most] }]}
      lines={lines}
      cursors={[cursor]}
      figure={figure}
      over={overlay(view, lines)}
    />
  )
}

const overlay = (view: HeatView, lines: readonly Line[]) => (area: PlotArea) => (
  <>
    <Limits view={view} area={area} />
    <Names lines={lines} area={area} />
  </>
)

function linesOf({ heated, stillAir, unit, time, hottest }: HeatView): readonly Line[] {
  const { columns } = heated.run
  const lines: Line[] = [
    { name: 'hot spot', x: time, y: hottest, drawn: 'thin' },
    { name: 'winding', x: time, y: columns.winding, drawn: 'main' },
    { name: 'case', x: time, y: columns.case, drawn: 'faint' },
  ]
  if (!stillAir) return lines
  const still = stillAir.run.columns
  return [
    {
      name: 'no fan’s air',
      x: still.time.map((t) => t / unit.seconds),
      y: still.winding,
      drawn: 'dashed',
    },
    ...lines,
  ]
}

/** The class and the margin below it from which a winding is called hot: lines with their names on them. */
function Limits({ view, area }: { readonly view: HeatView; readonly area: PlotArea }) {
  const { thermal } = view
  const { across, up } = area
  const [red, amber] = [toPixel(up, limitOf(thermal)), toPixel(up, amberOf(thermal))]
  return (
    <>
      <line className="heat-limit" x1={across.low} x2={across.high} y1={red} y2={red} />
      <line className="heat-limit amber" x1={across.low} x2={across.high} y1={amber} y2={amber} />
      <text className="plot-words inside" x={across.low + 8} y={red - 7}>
        Red: class {thermal.insulation}, {limitOf(thermal)} °C
      </text>
      <text className="plot-words inside" x={across.low + 8} y={amber + 17}>
        Amber: {amberOf(thermal)} °C
      </text>
    </>
  )
}

function Names({ lines, area }: { readonly lines: readonly Line[]; readonly area: PlotArea }) {
  return namePlaces(lines, area).map(({ name, x, y, beside, leader }) => (
    <g key={name}>
      {leader !== null && (
        <>
          <line className="heat-leader" x1={x} x2={x} y1={y + 4} y2={leader} />
          <circle className="heat-leader-end" cx={x} cy={leader} r="3" />
        </>
      )}
      <text className="plot-words name" x={x} y={y} textAnchor={beside ? 'start' : 'middle'}>
        {name}
      </text>
    </g>
  ))
}
