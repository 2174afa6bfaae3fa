/** Speed, torque and power from the motor to both wheels: large what is now, under it what steady running gives. */
import { useMachine } from '../frame/workshop.ts'
import { Figure } from './Figure.tsx'
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
          <th scope="col">
            <span className="unseen">Part</span>
          </th>
          <th scope="col">
            Speed<span className="unseen">, </span>
            <span>r/min</span>
          </th>
          <th scope="col">
            Torque<span className="unseen">, </span>
            <span>N m</span>
          </th>
          <th scope="col">
            Power<span className="unseen">, </span>
            <span>W</span>
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
        <td key={quantity.name} data-unit={quantity.unit}>
          <NowNumber quantity={quantity} unitUnseen />
          <span className="readings-steady number">
            <span className="unseen">steady </span>
            <Figure text={steady ? valueText(quantity, steady) : NOTHING} unitUnseen />
          </span>
          <FormulaButton id={quantity.formula} of={quantity.name} />
        </td>
      ))}
    </tr>
  )
}

interface NowNumberProps {
  readonly quantity: Quantity
  readonly unitUnseen?: boolean
}

export function NowNumber({ quantity, unitUnseen = false }: NowNumberProps) {
  const text = useNowText((situation, readout) =>
    byHand(readout) ? NOTHING : valueText(quantity, situation),
  )
  return (
    <output className="readings-now number" aria-live="off" aria-label={quantity.name}>
      <Figure text={text} unitUnseen={unitUnseen} />
    </output>
  )
}
