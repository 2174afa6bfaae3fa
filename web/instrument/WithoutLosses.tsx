/** The figures that a machine without losses would give, always beside the real ones. */
import { useView, useWorkshop } from '../frame/workshop.ts'
import type { FormulaId } from './formulas.ts'
import { Figure } from './Figure.tsx'
import { MarkSign, type MarkedPart } from './MarkSign.tsx'
import { quantityText, ratioFigure } from './reading-text.ts'
import type { Situation } from './situation.ts'
import { FormulaButton } from './use-formula.tsx'
import { useNowText, useReadout } from './use-reading.ts'

interface IdealRow {
  readonly name: string
  readonly part: MarkedPart | null
  readonly formula: FormulaId
  readonly unit: 'N m' | '%'
  readonly real: (situation: Situation) => number
  readonly ideal: (situation: Situation) => number
}

const ROWS: readonly IdealRow[] = [
  {
    name: 'Left wheel',
    part: 'left',
    formula: 'idealLeft',
    unit: 'N m',
    real: ({ reading }) => reading.leftTorque,
    ideal: ({ reading }) => reading.idealLeft,
  },
  {
    name: 'Right wheel',
    part: 'right',
    formula: 'idealRight',
    unit: 'N m',
    real: ({ reading }) => reading.rightTorque,
    ideal: ({ reading }) => reading.idealRight,
  },
  {
    name: 'Both together',
    part: null,
    formula: 'idealTotal',
    unit: 'N m',
    real: ({ reading }) => reading.leftTorque + reading.rightTorque,
    ideal: ({ reading }) => reading.idealTotal,
  },
  {
    name: 'Efficiency',
    part: null,
    formula: 'efficiency',
    unit: '%',
    real: ({ reading }) => 100 * reading.efficiency,
    ideal: () => 100,
  },
]

export function WithoutLosses({ steady }: { readonly steady: Situation }) {
  const { view } = useWorkshop()
  const shown = useView(({ withoutLosses }) => withoutLosses)
  return (
    <section className="without-losses">
      <label className="switch">
        <input
          type="checkbox"
          role="switch"
          checked={shown}
          aria-checked={shown}
          onChange={(event) => view.setState({ withoutLosses: event.target.checked })}
        />
        <span className="switch-track" aria-hidden="true" />
        Without losses
      </label>
      {shown && <IdealTable steady={steady} />}
    </section>
  )
}

function IdealTable({ steady }: { readonly steady: Situation }) {
  const running = useReadout(({ motion }) => motion === 'running')
  return (
    <>
      <table className="readings-table ideal-table">
        <caption className="unseen">Real figures beside those without losses</caption>
        <thead>
          <tr>
            <th scope="col">Torque, {running ? 'now' : 'steady'}</th>
            <th scope="col">real</th>
            <th scope="col">ideal</th>
          </tr>
        </thead>
        <tbody>
          {ROWS.map((row) => (
            <tr key={row.name}>
              <th scope="row">
                <span className="readings-part">
                  {row.part && <MarkSign part={row.part} size={18} />}
                  {row.name}
                </span>
              </th>
              <IdealCell row={row} steady={steady} which="real" />
              <IdealCell row={row} steady={steady} which="ideal" />
            </tr>
          ))}
        </tbody>
      </table>
      <IdealSentence steady={steady} />
    </>
  )
}

interface IdealCellProps {
  readonly row: IdealRow
  readonly steady: Situation
  readonly which: 'real' | 'ideal'
}

function IdealCell({ row, steady, which }: IdealCellProps) {
  const text = useNowText((now, { motion }) =>
    quantityText(row[which](motion === 'running' ? now : steady), row.unit),
  )
  return (
    <td className="number">
      <Figure text={text} />
      {which === 'ideal' && row.unit === 'N m' && (
        <FormulaButton id={row.formula} of={`${row.name} without losses`} />
      )}
    </td>
  )
}

function IdealSentence({ steady }: { readonly steady: Situation }) {
  const text = useNowText((now, { motion }) => {
    const { machine, reading } = motion === 'running' ? now : steady
    const times = ratioFigure(machine)
    return `Without losses both wheels together would carry ${times} times ${quantityText(reading.motorTorque, 'N m')}.`
  })
  return <p className="small">{text}</p>
}
