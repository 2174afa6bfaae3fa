/** What the machine takes from the socket or the battery. */
import { useMachine } from '../frame/workshop.ts'
import type { FormulaId } from './formulas.ts'
import { type Unit, quantityText } from './reading-text.ts'
import type { Situation } from './situation.ts'
import { FormulaButton } from './use-formula.tsx'
import { useNowText } from './use-reading.ts'

interface SupplyRow {
  readonly name: string
  readonly unit: Unit
  readonly formula?: FormulaId
  readonly mainsOnly?: boolean
  readonly value: (situation: Situation) => number
}

const ROWS: readonly SupplyRow[] = [
  { name: 'Input voltage', unit: 'V', value: ({ reading }) => reading.wallVoltage },
  { name: 'Input frequency', unit: 'Hz', mainsOnly: true, value: ({ reading }) => reading.wallFrequency },
  { name: 'Input current', unit: 'A', value: ({ reading }) => reading.wallCurrent },
  { name: 'Input power', unit: 'W', value: ({ reading }) => reading.wallPower },
  { name: 'Power factor', unit: '', mainsOnly: true, value: ({ reading }) => reading.powerFactor },
  { name: 'Motor current', unit: 'A', formula: 'meanCurrent', value: ({ reading }) => reading.currentMean },
  { name: 'Motor voltage', unit: 'V', value: ({ reading }) => reading.motorVoltage },
  {
    name: 'Motor emf',
    unit: 'V',
    formula: 'emf',
    value: ({ machine, reading, sense }) => (machine.motor?.emfConstant ?? 0) * reading.wormSpeed * sense,
  },
]

export function SupplyReadings({ steady }: { readonly steady: Situation }) {
  const supply = useMachine((machine) => machine.supply.kind)
  if (supply === 'crank') return null
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
          {ROWS.filter((row) => supply === 'mains' || !row.mainsOnly).map((row) => (
            <tr key={row.name}>
              <th scope="row">{row.name}</th>
              <td>
                <SupplyNow row={row} />
              </td>
              <td className="readings-steady number">
                {quantityText(row.value(steady), row.unit)}
                {row.formula && <FormulaButton id={row.formula} of={row.name} />}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function SupplyNow({ row }: { readonly row: SupplyRow }) {
  const text = useNowText((situation) => quantityText(row.value(situation), row.unit))
  return (
    <output className="number" aria-live="off" aria-label={row.name}>
      {text}
    </output>
  )
}
