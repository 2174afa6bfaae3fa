/** What was wrong with the last thing that was opened, field by field. */
import { useEffect, useRef } from 'react'
import type { Problem } from '../../sim/machine/problem.ts'
import { Icon } from '../instrument/Icon.tsx'

/** What came of the last thing opened. */
export interface Outcome {
  /** One sentence: what was opened and what became of it. */
  readonly outcome: string
  readonly problems: readonly Problem[]
}

const KINDS = { error: 'Error', warning: 'Warning', note: 'Note' }

export function OpenProblems({ outcome, problems }: Outcome) {
  const section = useRef<HTMLElement>(null)
  useEffect(() => {
    section.current?.scrollIntoView({ block: 'start' })
  }, [problems])
  return (
    <section ref={section} className="note open-problems" aria-label="Problems of the last opening">
      <span>
        <Icon name="look" />
      </span>
      <div>
        <strong>{outcome}</strong>
        <ul>
          {problems.map(({ path, severity, message }) => (
            <li key={`${path} ${message}`}>
              <span className="problem-path">{path || 'The whole text'}</span>
              <span>
                <span className="problem-kind">{KINDS[severity]}: </span>
                {message}
              </span>
            </li>
          ))}
        </ul>
      </div>
    </section>
  )
}
