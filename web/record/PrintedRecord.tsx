/** The summary on paper: what is settled, what is open, how sure and how often right. No marks are added up. */
import { useStore } from 'zustand'
import { useWorkshop } from '../frame/workshop.ts'
import { OnPaper } from '../instrument/OnPaper.tsx'
import '../models/printed-page.css'
import { CalibrationTable } from './Calibration.tsx'
import { calibrationOf } from './calibration.ts'
import { lookAgain, progressOf } from './progress.ts'
import { familyTitle } from './record-words.ts'
import { StandingSign, VerdictSigns } from './signs.tsx'
import './record.css'

interface PrintedRecordProps {
  readonly onDone: () => void
}

export const PrintedRecord = ({ onDone }: PrintedRecordProps) => (
  <OnPaper onDone={onDone}>
    <Summary />
  </OnPaper>
)

/** '2026-05-04', '2026-05-04 to 2026-06-01' */
function daysText(first: string, last: string): string {
  const [from, to] = [first.slice(0, 10), last.slice(0, 10)]
  return from === to ? from : `${from} to ${to}`
}

export function Summary() {
  const { records } = useWorkshop()
  const { answered, nickname } = useStore(records.store)
  const again = lookAgain(answered)
  const met = progressOf(answered).filter(({ standing }) => standing !== 'not met yet')
  const days = daysText(answered[0]?.time ?? '', answered.at(-1)?.time ?? '')
  return (
    <div className="printed" lang="en">
      <section className="printed-page">
        <header>
          <h1>My record{nickname && `, ${nickname}`}</h1>
          <p>{days}</p>
        </header>
        <h2>Kinds of question</h2>
        <ul className="record-progress">
          {met.map(({ family, title, standing, last }) => (
            <li key={family}>
              <StandingSign standing={standing} />
              <span>{title}</span>
              <VerdictSigns verdicts={last} />
              <span>{standing}</span>
            </li>
          ))}
        </ul>
        <p>
          A tick is right, a ring is not yet, a line is no prediction. Three right in a row settle a kind.
        </p>
        <h2>How sure, how often right</h2>
        <CalibrationTable levels={calibrationOf(answered)} />
        {again.length > 0 && (
          <>
            <h2>Look at again</h2>
            <ul className="record-printed-again">
              {again.map((each) => (
                <li key={each.id}>
                  {familyTitle(each)}
                  {each.sureness !== null && ` (sure ${each.sureness})`}
                </li>
              ))}
            </ul>
          </>
        )}
      </section>
    </div>
  )
}
