/** The same as a table: each part with its watts and its share of what comes in. */
import { useState } from 'react'
import { Figure } from '../instrument/Figure.tsx'
import { MarkSign } from '../instrument/MarkSign.tsx'
import { quantityText } from '../instrument/reading-text.ts'
import { FormulaButton } from '../instrument/use-formula.tsx'
import type { Ledger, LedgerItem } from './ledger.ts'
import { shareText } from './ledger-words.ts'
import '../panel/controls.css'

export function LedgerTable({ ledger }: { readonly ledger: Ledger }) {
  const [open, setOpen] = useState(false)
  return (
    <details className="drive-more panel-more" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Show as a table</summary>
      {open && <Table ledger={ledger} />}
    </details>
  )
}

function Table({ ledger: { input, parts } }: { readonly ledger: Ledger }) {
  return (
    <table className="drive-table">
      <caption className="unseen">Where the power goes</caption>
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col">Power, W</th>
          <th scope="col">Share</th>
        </tr>
      </thead>
      <tbody>
        {parts.map((item) => (
          <Row key={item.name} item={item} whole={input.watts} />
        ))}
      </tbody>
      <tfoot>
        <Row item={input} whole={input.watts} />
      </tfoot>
    </table>
  )
}

function Row({ item, whole }: { readonly item: LedgerItem; readonly whole: number }) {
  const { kind, name, watts, formula } = item
  return (
    <tr>
      <th scope="row">
        <span className="drive-part">
          {(kind === 'left' || kind === 'right') && <MarkSign part={kind} size={16} />}
          {name}
        </span>
      </th>
      <td className="number">
        <Figure text={quantityText(watts, 'W')} unitUnseen />
        {formula && <FormulaButton id={formula} of={`${name}, power`} />}
      </td>
      <td className="number">{shareText(watts, whole)}</td>
    </tr>
  )
}
