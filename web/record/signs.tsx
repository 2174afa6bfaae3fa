/** Signs of the record, told apart by shape; the word stands beside each. */
import type { Standing, Verdict } from './progress.ts'
import { Icon } from '../instrument/Icon.tsx'

const ICONS = { right: 'check', 'not yet': 'ring', 'no prediction': 'minus' } as const

export function VerdictSigns({ verdicts }: { readonly verdicts: readonly Verdict[] }) {
  return (
    <span className="record-verdicts">
      {verdicts.map((verdict, place) => (
        <Icon key={`${place} ${verdict}`} name={ICONS[verdict]} size={16} />
      ))}
      <span className="unseen">Last answers: {verdicts.join(', ')}</span>
    </span>
  )
}

/** Settled a filled square with a tick, open a half circle, not met yet a dotted ring. */
export function StandingSign({ standing }: { readonly standing: Standing }) {
  return (
    <svg width="20" height="20" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      {standing === 'settled' && (
        <>
          <rect x="1" y="1" width="18" height="18" rx="3" fill="currentColor" />
          <path d="M5 10.5l3.5 3.5L15 6.5" fill="none" stroke="var(--panel)" strokeWidth="2.4" />
        </>
      )}
      {standing === 'open' && (
        <>
          <circle cx="10" cy="10" r="8" fill="none" stroke="currentColor" strokeWidth="2" />
          <path d="M10 2a8 8 0 0 0 0 16z" fill="currentColor" />
        </>
      )}
      {standing === 'not met yet' && (
        <circle
          cx="10"
          cy="10"
          r="8"
          fill="none"
          stroke="currentColor"
          strokeWidth="1.8"
          strokeDasharray="2.6 2.6"
        />
      )}
    </svg>
  )
}
