/** Where a number comes from: its formula, the numbers put in, the result, and who says so. Escape closes it. */
import { useEffect, useRef } from 'react'
import { FormulaMath, SymbolMath } from './FormulaMath.tsx'
import type { FormulaRow } from './formula.ts'
import { SYMBOLS, symbolFigure } from './formula-symbols.ts'
import { symbolsOf } from './formula-tree.ts'
import { type FormulaId, formulaRow, outcome, symbolValue } from './formulas.ts'
import { Icon } from './Icon.tsx'
import { NOTHING, quantityText } from './reading-text.ts'
import type { Situation } from './situation.ts'
import type { SymbolRow } from './symbol-row.ts'
import './formula.css'

interface FormulaPanelProps {
  readonly id: FormulaId
  readonly situation: Situation
  /** Which numbers are put in: 'this moment', or 'steady running, setting 2'. */
  readonly moment: string
  readonly onClose: () => void
}

export function FormulaPanel({ id, situation, moment, onClose }: FormulaPanelProps) {
  const dialog = useRef<HTMLDialogElement>(null)
  const row = formulaRow(id, situation)
  useEffect(() => {
    const panel = dialog.current
    if (!panel) return undefined
    if (!panel.open) panel.showModal()
    /** Keys of the page rest while the panel is open. */
    const keepKeys = (event: KeyboardEvent) => event.stopPropagation()
    const pressedBeside = (event: MouseEvent) => {
      if (event.target === panel) panel.close()
    }
    panel.addEventListener('keydown', keepKeys)
    panel.addEventListener('click', pressedBeside)
    return () => {
      panel.removeEventListener('keydown', keepKeys)
      panel.removeEventListener('click', pressedBeside)
    }
  }, [])
  return (
    <dialog className="formula-panel" aria-labelledby="formula-title" ref={dialog} onClose={onClose}>
      <div className="formula-body">
        <header>
          <h2 id="formula-title">{row.title}</h2>
          <button type="button" className="button icon plain" onClick={() => dialog.current?.close()}>
            <Icon name="close" size={16} />
            <span className="unseen">Close</span>
          </button>
        </header>
        <FormulaMath row={row} />
        <FormulaResult id={id} row={row} situation={situation} moment={moment} />
        <SymbolList row={row} situation={situation} />
        <p className="formula-source">{row.source}</p>
      </div>
    </dialog>
  )
}

const VARIES = 'The law holds at every instant; what is shown follows from all of them.'

function FormulaResult({
  id,
  row,
  situation,
  moment,
}: Omit<FormulaPanelProps, 'onClose'> & { row: FormulaRow }) {
  const { value, byFormula } = outcome(id, situation)
  const text = quantityText(value, row.unit)
  return (
    <div className="formula-result">
      <p className="small">With the numbers of {moment}</p>
      {!row.lawOnly && byFormula && <FormulaMath row={row} values={symbolValue(situation)} />}
      <p className="number">
        {byFormula && !row.lawOnly ? '= ' : ''}
        {text}
      </p>
      {row.lawOnly && <p className="small">{row.holds ?? VARIES}</p>}
      {!byFormula && !row.lawOnly && <p>{row.holds ?? 'The formula does not hold at this moment.'}</p>}
      {byFormula && row.holds && <p className="small">{row.holds}</p>}
    </div>
  )
}

const ORIGINS: Record<SymbolRow['origin'], string> = {
  set: 'set by you',
  read: 'computed',
  found: 'from the teeth',
}

function SymbolList({ row, situation }: { readonly row: FormulaRow; readonly situation: Situation }) {
  const value = symbolValue(situation)
  return (
    <table className="formula-symbols">
      <caption className="unseen">Symbols of the formula</caption>
      <tbody>
        {symbolsOf(row.right).map((name) => {
          const { words, unit, origin } = SYMBOLS[name]
          return (
            <tr key={name}>
              <td>
                <SymbolMath name={name} />
              </td>
              <th scope="row">
                {words}
                <span className="small"> {ORIGINS[origin]}</span>
              </th>
              <td className="number">{withUnit(symbolFigure(name, value(name)), unit)}</td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

const withUnit = (figure: string, unit: SymbolRow['unit']): string => {
  if (figure === NOTHING) return 'varies'
  return unit === '°' ? `${figure}°` : `${figure} ${unit}`
}
