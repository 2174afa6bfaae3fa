/** Step 3: prediction, own count and machine in three rows, why, and another pair of counts. */
import type { ReactNode } from 'react'
import { useStore } from 'zustand'
import { show, zero } from '../frame/frame.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { Icon } from '../instrument/Icon.tsx'
import { MarkSign } from '../instrument/MarkSign.tsx'
import { mixedText, mixedTurns } from '../instrument/mixed.ts'
import { type Pair, type Prediction, noPrediction } from '../store/prediction.ts'
import { Mixed } from './Mixed.tsx'
import { SURENESS } from './PredictStep.tsx'
import { withNextPair } from './next-pair.ts'
import { FlagSign, TallySign } from './signs.tsx'
import { isRight, knownMistake, ownCountText, reason } from './verdict.ts'

interface RowProps {
  readonly sign: ReactNode
  readonly name: string
  readonly note: string
  readonly value: ReactNode
}

const Row = ({ sign, name, note, value }: RowProps) => (
  <tr>
    <td aria-hidden="true">{sign}</td>
    <th scope="row">
      {name} <span className="small">{note}</span>
    </th>
    <td className="number">{value}</td>
  </tr>
)

function Rows({ prediction, pair }: { readonly prediction: Prediction; readonly pair: Pair }) {
  const { text, sureness, taps } = prediction
  const sure = SURENESS.find(({ value }) => value === sureness)
  const own = ownCountText(taps, Math.floor(pair.teeth / pair.starts))
  return (
    <table className="rows">
      <caption className="unseen">Worm turns until the left wheel’s mark is back</caption>
      <tbody>
        <Row
          sign={<FlagSign />}
          name="Predicted"
          note={sure ? `sure: ${sure.label}, ${sure.note}` : 'not said how sure'}
          value={text}
        />
        <Row
          sign={<TallySign />}
          name="Counted by you"
          note={own ?? 'no pass marked'}
          value={own ? taps.length : '–'}
        />
        <Row
          sign={<MarkSign part="left" size={26} />}
          name="Machine"
          note={`${pair.teeth} teeth ÷ ${pair.starts} ${pair.starts === 1 ? 'start' : 'starts'}`}
          value={<Mixed turns={mixedTurns(pair.teeth, pair.starts)} />}
        />
      </tbody>
    </table>
  )
}

const Verdict = ({ right, children }: { readonly right: boolean; readonly children: ReactNode }) => (
  <p className="verdict">
    <Icon name={right ? 'check' : 'ring'} size={22} />
    <span>
      <b>{right ? 'Right.' : 'Not yet.'}</b> {children}
    </span>
  </p>
)

function DirectionVerdict({ direction }: { readonly direction: Prediction['direction'] }) {
  const why =
    'The threads push both rims the same way along the worm, from opposite sides, so the wheels turn opposite ways.'
  const said = { same: 'You said as the left one.', opposite: 'You said the other way.' }
  return (
    <Verdict right={direction === 'opposite'}>
      {direction ? said[direction] : 'No prediction for the right wheel.'} {why}
    </Verdict>
  )
}

export function CompareStep({ pair }: { readonly pair: Pair }) {
  const workshop = useWorkshop()
  const prediction = useStore(workshop.prediction)
  const turns = prediction.turns ?? 0
  const answer = mixedTurns(pair.teeth, pair.starts)
  const mistake = knownMistake(turns, pair)
  const startAgain = () => {
    workshop.prediction.setState(noPrediction, true)
    zero(workshop.frame)
    show(workshop.frame)
  }
  const another = () => {
    workshop.document.edit(withNextPair)
    startAgain()
  }
  return (
    <div className="step">
      <h2>
        <Mixed turns={answer} /> worm turns. You said {prediction.text}.
      </h2>
      <Rows prediction={prediction} pair={pair} />
      <Verdict right={isRight(turns, pair)}>
        {reason(pair, mixedText(answer))}
        {mistake && ` ${prediction.text} is what you get if ${mistake}.`}
      </Verdict>
      <DirectionVerdict direction={prediction.direction} />
      <div className="commit next-row">
        <button type="button" className="button" onClick={startAgain}>
          Same counts again
        </button>
        <button type="button" className="button main" onClick={another}>
          Another pair of counts
        </button>
      </div>
    </div>
  )
}
