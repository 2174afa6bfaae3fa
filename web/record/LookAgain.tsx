/** What was not right the last time it was asked: sure and wrong first, each with a way to be asked again. */
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import type { Answered } from '../store/records.ts'
import { askAgain } from './ask-again.ts'
import { causeOf, lookAgain } from './progress.ts'
import { familyTitle, saidWords, answerWords } from './record-words.ts'

interface AgainProps {
  readonly answered: Answered
  readonly onAsk: (answered: readonly Answered[]) => void
}

function Again({ answered, onAsk }: AgainProps) {
  const { sureness, text } = answered
  // the same may be asked just now, and is not committed yet
  const asked = useStore(
    useWorkshop().exercise,
    ({ question, phase }) => phase !== 'compare' && question?.text === text,
  )
  const right = asked ? '' : answerWords(answered)
  const cause = causeOf(answered)
  const title = familyTitle(answered)
  return (
    <li>
      <Icon name="ring" size={20} />
      <div>
        <h4>
          {title}
          {sureness !== null && (
            <span className="record-sure" data-sure={sureness}>
              sure {sureness}, not yet
            </span>
          )}
        </h4>
        <p className="small">{text}</p>
        <p>
          You said {saidWords(answered)}
          {right && `; it is ${right}`}. {!asked && cause}
        </p>
      </div>
      <button type="button" className="button" onClick={() => onAsk([answered])}>
        Ask me again<span className="unseen">: {title}</span>
      </button>
    </li>
  )
}

export function LookAgain({ answered }: { readonly answered: readonly Answered[] }) {
  const workshop = useWorkshop()
  const again = lookAgain(answered)
  const ask = (some: readonly Answered[]) => askAgain(workshop, some)
  return (
    <section aria-labelledby="record-again">
      <div className="record-head">
        <h3 id="record-again">Look at again</h3>
        {again.length > 1 && (
          <button type="button" className="button" onClick={() => ask(again)}>
            Ask all of them again
          </button>
        )}
      </div>
      {again.length === 0 ? (
        <p className="small">Nothing: the last answer of each kind was right.</p>
      ) : (
        <ul className="record-again">
          {again.map((each) => (
            <Again key={each.id} answered={each} onAsk={ask} />
          ))}
        </ul>
      )}
    </section>
  )
}
