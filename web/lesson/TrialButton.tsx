import { Icon } from '../instrument/Icon.tsx'
import type { TrialRun } from './use-trial.ts'

/** Turns to the end of what is counted, or stops on the way. */
export function TrialButton({ trial }: { readonly trial: TrialRun }) {
  const { running, ended, toggle } = trial
  return (
    <button type="button" className="button trial-button" aria-keyshortcuts="Space" onClick={toggle}>
      <Icon name={running ? 'stop' : 'turn'} />
      {running ? 'Stop' : ended ? 'Turn it again' : 'Turn it and count'}
      <kbd aria-hidden="true">Space</kbd>
    </button>
  )
}
