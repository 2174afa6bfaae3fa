/** How sure, in three levels named by numbers; where marks count, what each level is worth stands beside it. */
import { useStore } from 'zustand'
import { type Sureness, confidenceMark } from '../../sim/question/marking.ts'
import { numberText } from '../../sim/question/value-text.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { withSureness } from '../store/exercise.ts'
import { Choice } from './Choice.tsx'
import './question.css'

const WORDS: Readonly<Record<Sureness, string>> = { 1: 'a guess', 2: 'fairly', 3: 'certain' }
const LEVELS: readonly Sureness[] = [1, 2, 3]

const SURENESS = LEVELS.map((value) => ({ value, label: String(value), note: WORDS[value] }))

/** "2, fairly" */
export const surenessText = (level: Sureness): string => `${level}, ${WORDS[level]}`

const signed = (marks: number): string => (marks > 0 ? `+${marks}` : numberText(marks))

const Marks = ({ right }: { readonly right: boolean }) => (
  <tr>
    <th scope="row">{right ? 'right' : 'not yet'}</th>
    {LEVELS.map((level) => (
      <td key={level} className="number">
        {signed(confidenceMark(right, level))}
      </td>
    ))}
  </tr>
)

const MarkTable = () => (
  <table className="sure-marks">
    <caption className="unseen">Marks by how sure you are</caption>
    <thead className="unseen">
      <tr>
        <th scope="col">Answer</th>
        {LEVELS.map((level) => (
          <th key={level} scope="col">
            {surenessText(level)}
          </th>
        ))}
      </tr>
    </thead>
    <tbody>
      <Marks right />
      <Marks right={false} />
    </tbody>
  </table>
)

export function SurenessField({ marksOn = false }: { readonly marksOn?: boolean }) {
  const { exercise } = useWorkshop()
  const sureness = useStore(exercise, (now) => now.sureness)
  return (
    <div className="sure">
      <Choice
        name="sureness"
        question="How sure?"
        options={SURENESS}
        chosen={sureness}
        onChoose={(level) => exercise.setState((last) => withSureness(last, level), true)}
      />
      {marksOn && <MarkTable />}
    </div>
  )
}
