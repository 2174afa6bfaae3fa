/** Each kind of question: settled, open or not met yet, with its last answers. */
import type { Answered } from '../store/records.ts'
import { type FamilyProgress, progressOf } from './progress.ts'
import { Icon } from '../instrument/Icon.tsx'
import { StandingSign, VerdictSigns } from './signs.tsx'

const Row = ({ title, standing, last }: FamilyProgress) => (
  <li>
    <StandingSign standing={standing} />
    <span>{title}</span>
    <VerdictSigns verdicts={last} />
    <span className="record-standing">{standing}</span>
  </li>
)

export function ProgressList({ answered }: { readonly answered: readonly Answered[] }) {
  const all = progressOf(answered)
  const met = all.filter(({ standing }) => standing !== 'not met yet')
  const rest = all.filter(({ standing }) => standing === 'not met yet')
  return (
    <section aria-labelledby="record-progress">
      <h3 id="record-progress">Kinds of question</h3>
      <p className="small">Three right in a row settle a kind; a tick is right, a ring is not yet.</p>
      <ul className="record-progress">
        {met.map((each) => (
          <Row key={each.family} {...each} />
        ))}
      </ul>
      {rest.length > 0 && (
        <details className="record-rest">
          <summary>
            <StandingSign standing="not met yet" />
            {rest.length} not met yet
            <Icon name="down" size={16} />
          </summary>
          <ul>
            {rest.map(({ family, title }) => (
              <li key={family}>{title}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}
