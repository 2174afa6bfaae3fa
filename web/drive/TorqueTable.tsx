/** The torque balance as a table, with what each wheel would have if nothing were lost. */
import { Figure } from '../instrument/Figure.tsx'
import { MarkSign } from '../instrument/MarkSign.tsx'
import { quantityText } from '../instrument/reading-text.ts'
import type { Balance, BalancePart } from './torque-balance.ts'

interface TorqueTableProps {
  readonly set: Balance
  readonly one: Balance | null
}

export function TorqueTable({ set, one }: TorqueTableProps) {
  const names = [...new Set([set, one].flatMap((each) => each?.parts.map(({ name }) => name) ?? []))]
  return (
    <table className="drive-table torque-table">
      <caption className="unseen">How the torque divides, in newton metres at the wheels</caption>
      <thead>
        <tr>
          <th scope="col">N m at the wheels</th>
          <th scope="col">As set</th>
          {one && <th scope="col">One loaded</th>}
          <th scope="col">No losses</th>
        </tr>
      </thead>
      <tbody>
        {names.map((name) => (
          <Row key={name} set={partOf(set, name)} one={one && partOf(one, name)} ideal={idealOf(set, name)} />
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">All of it</th>
          <Cell torque={set.total} />
          {one && <Cell torque={one.total} />}
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
  readonly one: BalancePart | null
  readonly ideal: number
}

function Row({ set, one, ideal }: RowProps) {
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
      {one && <Cell torque={one.torque} />}
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
