/** The figures of turning over. */
import { useBench } from '../frame/workshop.ts'
import { figure, quantityText } from '../instrument/reading-text.ts'
import type { BrushedMachine } from './brushes-state.ts'
import type { BrushNow } from './brushes-now.ts'
import { timeText, whenText } from './brushes-words.ts'

interface NumbersProps {
  readonly machine: BrushedMachine
  readonly now: BrushNow
}

export function BrushesNumbers({ machine, now: { kind, figures } }: NumbersProps) {
  const pace = useBench((bench) => bench.pace)
  const { barsPerSecond, commutationTime, reactanceVoltage, transformerVoltage } = figures
  return (
    <section aria-label="Turning over in numbers">
      <p className="small">{whenText(kind)}</p>
      <dl className="brushes-numbers">
        <Cell label="Bars">{machine.brushes.bars}</Cell>
        <Cell label="Bars a second">{figure(barsPerSecond)}</Cell>
        <Cell label="Time to turn over">{timeText(commutationTime)}</Cell>
        <Cell label="Voltage of the coil">{quantityText(reactanceVoltage, 'V')}</Cell>
      </dl>
      {kind === 'now' && pace > 1 && barsPerSecond > 0 && (
        <p className="small">
          Slowed {pace}×: {figure(barsPerSecond / pace)} bars a second are seen.
        </p>
      )}
      <p>
        {Number.isFinite(commutationTime)
          ? `A coil has ${timeText(commutationTime)} under the brush to turn its current over. Its inductance resists with ${quantityText(reactanceVoltage, 'V')}`
          : 'At rest no coil turns over, so no voltage resists'}
        {transformerVoltage > 0 &&
          `, and the alternating flux through it adds ${quantityText(transformerVoltage, 'V')}`}
        .
      </p>
    </section>
  )
}

function Cell({ label, children }: { readonly label: string; readonly children: string | number }) {
  return (
    <div>
      <dt className="small">{label}</dt>
      <dd className="number">{children}</dd>
    </div>
  )
}
