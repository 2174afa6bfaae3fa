/** The left column of Design: which machine is edited, and its parameters. While a lesson asks, they would tell. */
import { Suspense, lazy } from 'react'
import { useCovered } from '../frame/asking.ts'
import { useMachine } from '../frame/workshop.ts'
import './design.css'

const ParameterSheet = lazy(() => import('./ParameterSheet.tsx'))

export function DesignSheet() {
  const name = useMachine((machine) => machine.name)
  const covered = useCovered()
  return (
    <div className="design-sheet">
      <header className="design-head">
        <h2>Parameters</h2>
        <p className="small">{name}</p>
      </header>
      {covered ? <p className="panel-covered">Covered until the reveal</p> : <Parameters />}
    </div>
  )
}

const Parameters = () => (
  <>
    <Suspense fallback={<p className="design-wait">Getting the parameters ready.</p>}>
      <ParameterSheet />
    </Suspense>
    <p className="design-hint small">
      Type a number, or one with its unit, such as 0.5 in or 12 kgf cm. Arrow keys step it; Escape brings the
      old one back.
    </p>
  </>
)
