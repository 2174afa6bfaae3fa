/** How far a long computation is, with the way to give it up; afterwards the way to ask for it again. */
import type { RunControl } from './use-run.ts'

interface RunProgressProps {
  /** As in 'Four hours of heating' */
  readonly what: string
  readonly control: Pick<RunControl<unknown>, 'run' | 'cancel' | 'again'>
}

export function RunProgress({ what, control }: RunProgressProps) {
  const { run, cancel, again } = control
  if (run.state === 'working')
    return (
      <p className="run-progress">
        <progress aria-label={what} max={1} value={run.part} />
        <button type="button" className="button" onClick={cancel}>
          Cancel
        </button>
      </p>
    )
  if (run.state === 'cancelled' || run.state === 'failed')
    return (
      <p className="run-progress" role="status">
        {what}: {run.state === 'cancelled' ? 'given up.' : `could not be computed. ${run.message}`}{' '}
        <button type="button" className="button" onClick={again}>
          Compute it
        </button>
      </p>
    )
  return null
}
