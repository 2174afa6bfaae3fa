/** What goes with the torque at the same speeds: current, power of the shaft, or how much of the input that is. */
import { type Line, Plot } from '../chart/Plot.tsx'
import { roundSpan, spanOf } from '../chart/scale.ts'
import type { TorqueLine } from './torque-lines.ts'
import type { TorqueCursor, TorqueView } from './torque-view.ts'
import { PER_CENT } from '../../sim/quantity/constants.ts'

export type Beside = 'current' | 'power' | 'efficiency'

export const BESIDE: readonly { readonly value: Beside; readonly label: string }[] = [
  { value: 'current', label: 'Current' },
  { value: 'power', label: 'Power' },
  { value: 'efficiency', label: 'Efficiency' },
]

const LABELS: Readonly<Record<Beside, string>> = {
  current: 'Mean current [A]',
  power: 'Shaft power [W]',
  efficiency: 'Shaft power over input [%]',
}

const COLUMNS: Readonly<Record<Beside, (line: TorqueLine) => Float64Array>> = {
  current: (line) => line.currentMean,
  power: (line) => line.shaftPower,
  efficiency: (line) => line.efficiency.map((part) => part / PER_CENT),
}

interface TorqueBesideProps {
  readonly view: TorqueView
  readonly which: Beside
  readonly width: number
  readonly height: number
  readonly cursor: TorqueCursor
}

export function TorqueBeside({ view, which, width, height, cursor }: TorqueBesideProps) {
  const columns = view.lines.map(COLUMNS[which])
  const [, top] = roundSpan(0, spanOf(columns)[1])
  const lines: readonly Line[] = columns.map((y, i) => ({
    name: `Setting ${i + 1}`,
    x: view.speeds,
    y: y.map((value) => Math.max(0, value)),
    drawn: i === view.setting ? 'main' : 'thin',
  }))
  const { name, at, step, text } = cursor
  return (
    <Plot
      label={LABELS[which]}
      width={width}
      height={height}
      x={{ label: 'Worm speed [r/min]', from: 0, to: view.end }}
      y={{ label: LABELS[which], from: 0, to: top }}
      lines={lines}
      cursors={[{ name, at, step, text }]}
    />
  )
}
