/** What is wrong with a machine, or worth knowing of it: each by sign and word, and a way to the field. */
import type { Problem } from '../../sim/machine/problem.ts'
import './problems.css'

const WORDS: Record<Problem['severity'], string> = { error: 'Error', warning: 'Warning', note: 'Note' }

interface ProblemsProps {
  readonly problems: readonly Problem[]
  /** The words for a path; the path itself where there are none. */
  readonly labelOf: (path: string) => string
  /** Brings the field of a path into view; without it the list only tells. */
  readonly onGoTo?: (path: string) => void
}

export function Problems({ problems, labelOf, onGoTo }: ProblemsProps) {
  return (
    <ul className="problems">
      {problems.map(({ path, severity, message }) => (
        <li key={`${path} ${message}`} data-severity={severity}>
          <SeveritySign severity={severity} />
          <p>
            <strong>{WORDS[severity]}</strong> {labelOf(path)}: {message}.
          </p>
          {onGoTo && path !== '' && (
            <button type="button" className="button" onClick={() => onGoTo(path)}>
              Show<span className="unseen"> {labelOf(path)}</span>
            </button>
          )}
        </li>
      ))}
    </ul>
  )
}

/** Error a filled square with a cross, warning a triangle, note a ring. */
function SeveritySign({ severity }: { readonly severity: Problem['severity'] }) {
  return (
    <svg width="20" height="20" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      {severity === 'error' && (
        <>
          <rect x="1" y="1" width="18" height="18" rx="3" fill="currentColor" />
          <path d="M6 6l8 8M14 6l-8 8" stroke="var(--panel)" strokeWidth="2.4" />
        </>
      )}
      {severity === 'warning' && (
        <path
          d="M10 2.5l8.5 15h-17zM10 8v4.5M10 14v1.6"
          fill="none"
          stroke="currentColor"
          strokeWidth="1.8"
        />
      )}
      {severity === 'note' && (
        <>
          <circle cx="10" cy="10" r="8.2" fill="none" stroke="currentColor" strokeWidth="1.8" />
          <path d="M10 9v5.5M10 5.5v1.8" stroke="currentColor" strokeWidth="1.8" />
        </>
      )}
    </svg>
  )
}
