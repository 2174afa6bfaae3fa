/** One open formula for a panel of numbers: running, with the numbers of now; else with those of steady running. */
import { type ReactNode, Suspense, createContext, lazy, useContext, useMemo, useState } from 'react'
import { useBench, useMachine, useWorkshop } from '../frame/workshop.ts'
import type { FormulaId } from './formulas.ts'
import { situationOf } from './situation.ts'
import { useReadout, useSteady, useSteadySituation } from './use-reading.ts'

const FormulaPanel = lazy(async () => ({ default: (await import('./FormulaPanel.tsx')).FormulaPanel }))

const OpenFormula = createContext<(id: FormulaId) => void>(() => undefined)

/** Puts every `FormulaButton` inside it to work. */
export function Formulas({ children }: { readonly children: ReactNode }) {
  const [open, setOpen] = useState<FormulaId | null>(null)
  return (
    <OpenFormula value={setOpen}>
      {children}
      <Suspense>{open && <OpenedFormula key={open} id={open} onClose={() => setOpen(null)} />}</Suspense>
    </OpenFormula>
  )
}

function OpenedFormula({ id, onClose }: { readonly id: FormulaId; readonly onClose: () => void }) {
  const { readout } = useWorkshop()
  const [running] = useState(() => readout.getState().motion === 'running')
  const setting = useBench((bench) => bench.setting)
  const steady = useSteadySituation(useSteady())
  const now = useNowSituation()
  const situation = running || !steady ? now : steady
  const moment = situation === now ? 'this moment' : `steady running at setting ${setting + 1}`
  return <FormulaPanel id={id} situation={situation} moment={moment} onClose={onClose} />
}

function useNowSituation() {
  const machine = useMachine((now) => now)
  const bench = useBench((now) => now)
  const reading = useReadout((now) => now.reading)
  return useMemo(() => situationOf(machine, bench, reading), [machine, bench, reading])
}

interface FormulaButtonProps {
  readonly id: FormulaId
  /** The quantity, as in 'Motor speed'. */
  readonly of: string
}

/** Covers the number it stands over; only its name is its own. */
export function FormulaButton({ id, of }: FormulaButtonProps) {
  const open = useContext(OpenFormula)
  return (
    <button type="button" className="formula-button" onClick={() => open(id)}>
      <span className="unseen">{of}: where it comes from</span>
    </button>
  )
}
