/** Instead of a question: all kinds are settled, or this page does not have what was asked for. */
import { useStore } from 'zustand'
import { BANK } from '../../sim/question/bank.ts'
import { useWorkshop } from '../frame/workshop.ts'
import type { Predict } from '../store/predict.ts'
import { askNext, chooseSource } from './session.ts'

function words({ source, set }: Predict): readonly [head: string, text: string] {
  if (source === 'practice')
    return ['Every kind is settled', 'Each was right three times in a row. Nothing is due.']
  const item = set?.items[set.at]
  if (!set || !item) return ['Nothing is asked', 'Choose where the questions come from.']
  const asked = `Question ${set.at + 1} of ${set.items.length}`
  return set.bank === BANK
    ? [
        'This question is not known here',
        `${asked} is of the kind “${item.family}”, which this page does not have.`,
      ]
    : [
        'These questions are of another version',
        `${asked} is from version ${set.bank} of the questions; this page has version ${BANK}, where the same name may mean other numbers.`,
      ]
}

export function NothingAsked() {
  const workshop = useWorkshop()
  const predict = useStore(workshop.predict)
  const { source, set } = predict
  const [head, text] = words(predict)
  const more = source === 'set' && set !== null && set.bank === BANK && set.at < set.items.length - 1
  return (
    <div className="step">
      <div>
        <h2>{head}</h2>
        <p className="given">{text}</p>
      </div>
      <div className="commit">
        {more && (
          <button type="button" className="button main" onClick={() => askNext(workshop)}>
            Next question
          </button>
        )}
        {source !== 'practice' && (
          <button
            type="button"
            className={more ? 'button' : 'button main'}
            onClick={() => chooseSource(workshop, 'practice')}
          >
            Practise instead
          </button>
        )}
        <button type="button" className="button" onClick={() => chooseSource(workshop, 'machine')}>
          Questions about this machine
        </button>
      </div>
    </div>
  )
}
