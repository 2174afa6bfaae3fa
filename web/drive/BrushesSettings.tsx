/** Sparking over the speed settings, a line for each load. */
import { useEffect, useRef, useState } from 'react'
import { ChartActions } from '../chart/ChartActions.tsx'
import type { PlotArea } from '../chart/Axes.tsx'
import { type Line, Plot } from '../chart/Plot.tsx'
import { toPixel } from '../chart/scale.ts'
import type { Column } from '../chart/table.ts'
import { useWidth } from '../chart/use-width.ts'
import { useBench, useWorkshop } from '../frame/workshop.ts'
import type { BrushFigures, BrushedMachine } from './brushes-state.ts'
import type { BrushNow } from './brushes-now.ts'
import { type SettingPoint, settingPoints } from './brushes-settings.ts'
import '../chart/chart.css'

interface SettingsProps {
  readonly machine: BrushedMachine
  readonly now: BrushNow
}

const HEIGHT = 220
const LEAST_TOP = 1.6
const HARD = 1.2
/** Above the highest line, for the name of what is hatched */
const HEADROOM = 1.25
const SPOT: Readonly<Record<BrushNow['kind'], string>> = { now: 'now', held: 'as held', steady: 'as set' }
const DRAWN = ['main', 'dashed', 'thin', 'faint'] as const

export function BrushesSettings({ machine, now }: SettingsProps) {
  const points = useSettingPoints(machine)
  const setting = useBench((bench) => bench.setting)
  const [box, width] = useWidth<HTMLDivElement>()
  const figure = useRef<SVGSVGElement>(null)
  const steps = machine.control.steps.length
  const loads = machine.outputs.loads
  const worst = Math.max(LEAST_TOP, now.figures.worse, ...points.map((point) => point.figures?.worse ?? 0))
  const top = HEADROOM * worst
  const lines = loads.map(({ name }, load): Line => ({
    name,
    ...columnsOf(points, load, ({ worse }) => worse),
    drawn: DRAWN[load % DRAWN.length]!,
  }))
  const whole = (value: number) => (Number.isInteger(value) ? String(value) : '')
  return (
    <section aria-label="Sparking over the settings">
      <h3>Over the settings</h3>
      <div className="brushes-figure" ref={box}>
        <Plot
          label="The worse index of sparking over the speed settings, for each load on both wheels"
          width={width}
          height={HEIGHT}
          x={{ label: 'Speed setting', from: 0.7, to: Math.max(steps, 2) + 0.3, write: whole }}
          y={{ label: 'Index of sparking, indicative', from: 0, to: top }}
          bands={[{ name: 'not for lasting use', named: false, y: [HARD, top] }]}
          lines={lines}
          spots={[{ name: SPOT[now.kind], x: setting + 1, y: now.figures.worse, filled: true }]}
          figure={figure}
          over={overlay(lines)}
        />
      </div>
      {points.length < steps * loads.length && <p role="status">Working out the settings.</p>}
      <ChartActions
        name={`${machine.name} sparking over settings`}
        figure={figure}
        columns={() => settingColumns(machine, points)}
      />
    </section>
  )
}

/** All points, each worked out by itself so that the page stays alive. */
function useSettingPoints(machine: BrushedMachine): readonly SettingPoint[] {
  const { frame } = useWorkshop()
  const sense = useBench((bench) => bench.sense)
  const { drive } = frame
  const [points, setPoints] = useState<readonly SettingPoint[]>([])
  useEffect(() => {
    setPoints([])
    const found: SettingPoint[] = []
    const source = settingPoints(machine, drive, sense)
    let timer = setTimeout(function one() {
      const next = source.next()
      if (next.done) return setPoints(found)
      found.push(next.value)
      timer = setTimeout(one)
      return undefined
    })
    return () => clearTimeout(timer)
  }, [machine, drive, sense])
  return points
}

function columnsOf(
  points: readonly SettingPoint[],
  load: number,
  value: (figures: BrushFigures) => number,
): { x: number[]; y: number[] } {
  const own = points.filter((point) => point.load === load)
  return {
    x: own.map(({ setting }) => setting + 1),
    y: own.map(({ figures }) => (figures ? value(figures) : Number.NaN)),
  }
}

export function settingColumns(
  { outputs }: BrushedMachine,
  points: readonly SettingPoint[],
): readonly Column[] {
  const column = (heading: string, value: (figures: BrushFigures) => number): Column[] =>
    outputs.loads.map(({ name }, load) => ({
      heading: `${heading}, ${name}`,
      values: columnsOf(points, load, value).y,
    }))
  return [
    { heading: 'speed setting', values: columnsOf(points, 0, () => 0).x },
    ...column('coil voltage over its limit', ({ index }) => index),
    ...column('current density over its limit', ({ densityRatio }) => densityRatio),
    ...column('life of the brushes [h]', ({ life }) => life),
  ]
}

const overlay = (lines: readonly Line[]) => (area: PlotArea) => (
  <>
    <text className="plot-words inside" x={area.across.low + 8} y={area.up.high + 18}>
      not for lasting use
    </text>
    <Names lines={lines} area={area} />
  </>
)

/** Each line is named at its right end. */
function Names({
  lines,
  area: { across, up },
}: {
  readonly lines: readonly Line[]
  readonly area: PlotArea
}) {
  return lines.map(({ name, x, y }) => {
    const last = x.length - 1
    if (last < 0 || !Number.isFinite(y[last]!)) return null
    return (
      <text
        key={name}
        className="plot-words name"
        x={toPixel(across, x[last]!)}
        y={toPixel(up, y[last]!) - 8}
        textAnchor="end"
      >
        {name}
      </text>
    )
  })
}
