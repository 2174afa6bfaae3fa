/** The figures of turning over. */
import { useBench } from '../frame/workshop.ts'
import { figure } from '../instrument/reading-text.ts'
import type { BrushedMachine } from './brushes-state.ts'
import type { BrushNow } from './brushes-now.ts'
import { timeText, voltText, whenText } from './brushes-words.ts'

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
        <Cell label="Coil voltage">{voltText(reactanceVoltage)}</Cell>
      </dl>
      {kind === 'now' && pace > 1 && barsPerSecond > 0 && (
        <p className="small">
          Slowed {pace}×: {figure(barsPerSecond / pace)} bars a second are seen.
        </p>
      )}
      {transformerVoltage > 0 && (
        <p>The alternating flux through a coil under the brush adds {voltText(transformerVoltage)}.</p>
      )}
      <p>
        {barsPerSecond > 0
          ? 'The inductance of the coil resists with this voltage. Current that is left over when the bar leaves the brush jumps across as a spark.'
          : 'At rest no coil turns over, so no voltage resists.'}
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
