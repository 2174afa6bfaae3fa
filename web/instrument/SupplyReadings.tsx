/** What the machine takes from the socket or the battery, and what becomes of it as far as the motor's brushes. */
import { useMachine } from '../frame/workshop.ts'
import type { Situation } from './situation.ts'
import { type SupplyRow, protectionRow, rowsFor, warmthText } from './supply-rows.ts'
import { FormulaButton } from './use-formula.tsx'
import { useNowText } from './use-reading.ts'

interface SupplyReadingsProps {
  readonly steady: Situation
  /** Whether fuse or overload switch would open in time, running steadily */
  readonly overLimit: boolean
}

export function SupplyReadings({ steady, overLimit }: SupplyReadingsProps) {
  const supply = useMachine((machine) => machine.supply.kind)
  if (supply === 'crank') return null
  const protection = protectionRow(steady.machine)
  const warmth = warmthText(steady)
  return (
    <section className="supply-readings" aria-label="Supply and motor">
      <table className="readings-table">
        <thead>
          <tr>
            <th scope="col">{supply === 'mains' ? 'Socket and motor' : 'Battery and motor'}</th>
            <th scope="col">now</th>
            <th scope="col">steady</th>
          </tr>
        </thead>
        <tbody>
          {rowsFor(steady.machine, steady.setting).map((row) => (
            <SupplyReading key={row.name} row={row} steady={row.text(steady)} />
          ))}
          {protection && <SupplyReading row={protection} steady={overLimit ? 'opens in time' : 'holds'} />}
        </tbody>
      </table>
      {warmth && <p className="readings-key small">{warmth}</p>}
    </section>
  )
}

function SupplyReading({ row, steady }: { readonly row: SupplyRow; readonly steady: string }) {
  const now = useNowText(row.text)
  return (
    <tr>
      <th scope="row">{row.name}</th>
      <td>
        <output className="number" aria-live="off" aria-label={row.name}>
          {now}
        </output>
      </td>
      <td className="readings-steady number">
        {steady}
        {row.formula && <FormulaButton id={row.formula} of={row.name} />}
      </td>
    </tr>
  )
}
