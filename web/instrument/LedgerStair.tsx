/** What each loss takes, as a stair: every bar begins where the one above it ends, all on one scale. */
import type { OperatingPoint } from '../../sim/drive/operating-point.ts'
import { useMachine } from '../frame/workshop.ts'
import { Figure } from './Figure.tsx'
import { type LedgerItem, ledger } from './ledger.ts'
import { quantityText } from './reading-text.ts'
import { FormulaButton } from './use-formula.tsx'
import { useReadout } from './use-reading.ts'

export function LedgerStair({ steady }: { readonly steady: OperatingPoint }) {
  const machine = useMachine((now) => now)
  const running = useReadout(({ motion }) => motion === 'running')
  const reading = useReadout((now) => (now.motion === 'running' ? now.reading : steady.reading))
  const { items } = ledger(machine, reading)
  return (
    <section className="ledger" aria-label="Where the power goes">
      <h3>
        Where the power goes <span className="small">{running ? 'now' : 'running steadily'}</span>
        <span className="number" aria-hidden="true">
          W
        </span>
      </h3>
      <ul>
        {items.map((item) => (
          <LedgerRow key={item.name} item={item} />
        ))}
      </ul>
    </section>
  )
}

const percent = (part: number): string => `${(100 * part).toFixed(2)}%`

function LedgerRow({ item }: { readonly item: LedgerItem }) {
  return (
    <li data-kind={item.kind}>
      <span>{item.name}</span>
      <span className="ledger-track">
        <span
          className="ledger-bar"
          data-nothing={item.length === 0}
          style={{ left: percent(item.from), width: percent(item.length) }}
        />
      </span>
      <span className="number">
        <Figure text={quantityText(item.watts, 'W')} unitUnseen />
      </span>
      {item.formula && <FormulaButton id={item.formula} of={`${item.name}, power`} />}
    </li>
  )
}
