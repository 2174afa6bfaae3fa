/** The torque balance as a table, with what each wheel would have if nothing were lost. */
import { Figure } from '../instrument/Figure.tsx'
import { MarkSign } from '../instrument/MarkSign.tsx'
import { quantityText } from '../instrument/reading-text.ts'
import type { Balance, BalancePart, OtherBalance } from './torque-balance.ts'

interface TorqueTableProps {
  readonly set: Balance
  readonly other: OtherBalance | null
}

export function TorqueTable({ set, other }: TorqueTableProps) {
  const second = other?.balance ?? null
  const names = [...new Set([set, second].flatMap((each) => each?.parts.map(({ name }) => name) ?? []))]
  return (
    <table className="drive-table torque-table">
      <caption className="unseen">How the torque divides, in newton metres at the wheels</caption>
      <thead>
        <tr>
          <th scope="col">N m at the wheels</th>
          <th scope="col">As set</th>
          {second && <th scope="col">{other?.short}</th>}
          <th scope="col">No losses</th>
        </tr>
      </thead>
      <tbody>
        {names.map((name) => (
          <Row
            key={name}
            set={partOf(set, name)}
            second={second && partOf(second, name)}
            ideal={idealOf(set, name)}
          />
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">All of it</th>
          <Cell torque={set.total} />
          {second && <Cell torque={second.total} />}
          <Cell torque={set.total} />
        </tr>
      </tfoot>
    </table>
  )
}

const partOf = ({ parts }: Balance, name: string): BalancePart =>
  parts.find((part) => part.name === name) ?? { name, kind: 'rest', torque: 0 }

/** Half each, and nothing lost */
const idealOf = ({ total }: Balance, name: string): number => (name.endsWith('wheel') ? total / 2 : 0)

interface RowProps {
  readonly set: BalancePart
  readonly second: BalancePart | null
  readonly ideal: number
}

function Row({ set, second, ideal }: RowProps) {
  const { kind, name } = set
  return (
    <tr>
      <th scope="row">
        <span className="drive-part">
          {(kind === 'left' || kind === 'right') && <MarkSign part={kind} size={16} />}
          {name}
        </span>
      </th>
      <Cell torque={set.torque} />
      {second && <Cell torque={second.torque} />}
      <Cell torque={ideal} />
    </tr>
  )
}

function Cell({ torque }: { readonly torque: number }) {
  return (
    <td className="number">
      <Figure text={quantityText(torque, 'N m')} unitUnseen />
    </td>
  )
}
