/** Speed, torque and power from the motor to both wheels: large what is now, under it what steady running gives. */
import { useMachine } from '../frame/workshop.ts'
import { MarkSign } from './MarkSign.tsx'
import { type Quantity, type QuantityRow, quantityRows, valueText } from './quantities.ts'
import { NOTHING } from './reading-text.ts'
import type { Situation } from './situation.ts'
import { FormulaButton } from './use-formula.tsx'
import { byHand, useNowText } from './use-reading.ts'

export function ReadingsTable({ steady }: { readonly steady: Situation | null }) {
  const cranked = useMachine(({ motor }) => motor === null)
  return (
    <table className="readings-table">
      <caption className="unseen">Speed, torque and power, now and when running steadily</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">
            Speed <span>r/min</span>
          </th>
          <th scope="col">
            Torque <span>N m</span>
          </th>
          <th scope="col">
            Power <span>W</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {quantityRows(cranked).map((row) => (
          <TableRow key={row.part} row={row} steady={steady} />
        ))}
      </tbody>
    </table>
  )
}

function TableRow({ row, steady }: { readonly row: QuantityRow; readonly steady: Situation | null }) {
  return (
    <tr>
      <th scope="row">
        <span className="readings-part">
          {row.part !== 'motor' && <MarkSign part={row.part} size={18} />}
          {row.name}
        </span>
      </th>
      {[row.speed, row.torque, row.power].map((quantity) => (
        <td key={quantity.name}>
          <NowNumber quantity={quantity} />
          <span className="readings-steady number">
            <span className="unseen">steady </span>
            {steady ? withHiddenUnit(valueText(quantity, steady)) : NOTHING}
          </span>
          <FormulaButton id={quantity.formula} of={quantity.name} />
        </td>
      ))}
    </tr>
  )
}

/** The unit stands in the head of the column; readers of a single cell hear it too. */
function withHiddenUnit(text: string) {
  const [number, ...unit] = text.split(' ')
  return (
    <>
      {number}
      <span className="unseen"> {unit.join(' ')}</span>
    </>
  )
}

export function NowNumber({ quantity }: { readonly quantity: Quantity }) {
  const text = useNowText((situation, readout) =>
    byHand(readout) ? NOTHING : valueText(quantity, situation),
  )
  return (
    <output className="readings-now number" aria-live="off" aria-label={quantity.name}>
      {withHiddenUnit(text)}
    </output>
  )
}
