/** Whether being sure and being right go together. */
import { useStore } from 'zustand'
import { confidenceMark } from '../../sim/question/marking.ts'
import { numberText } from '../../sim/question/value-text.ts'
import { useWorkshop } from '../frame/workshop.ts'
import type { Answered } from '../store/records.ts'
import { CalibrationFigure } from './CalibrationFigure.tsx'
import { type LevelCalibration, calibrationOf } from './calibration.ts'
import { paysWords, shareWords } from './record-words.ts'

export function CalibrationTable({ levels }: { readonly levels: readonly LevelCalibration[] }) {
  return (
    <table className="record-table">
      <thead>
        <tr>
          <th scope="col">Sure</th>
          <th scope="col">Right</th>
          <th scope="col">Pays best</th>
          <th scope="col">Mark, right</th>
          <th scope="col">not yet</th>
        </tr>
      </thead>
      <tbody>
        {levels.map((each) => (
          <tr key={each.level}>
            <th scope="row">{each.level}</th>
            <td>{shareWords(each)}</td>
            <td>{paysWords(each)}</td>
            <td>{numberText(confidenceMark(true, each.level))}</td>
            <td>{numberText(confidenceMark(false, each.level))}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

export function Calibration({ answered }: { readonly answered: readonly Answered[] }) {
  const { records } = useWorkshop()
  const marksOn = useStore(records.store, (now) => now.marksOn)
  const levels = calibrationOf(answered)
  return (
    <section aria-labelledby="record-calibration">
      <h3 id="record-calibration">How sure, how often right</h3>
      <CalibrationFigure levels={levels} />
      <p className="small">
        Point: how often you were right at a level. Hatch: where that level pays best. A point under its hatch
        says a lower level would have paid more.
      </p>
      <CalibrationTable levels={levels} />
      <label className="field record-switch">
        <input
          type="checkbox"
          checked={marksOn}
          onChange={({ target }) => records.store.setState({ marksOn: target.checked })}
        />
        Tell marks for how sure
      </label>
    </section>
  )
}
