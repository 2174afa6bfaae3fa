/** What was answered in this browser, for the person who answered it: what is settled, what to look at again. */
import { useEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import { useView, useWorkshop } from '../frame/workshop.ts'
import { OpenProblems } from '../file/OpenProblems.tsx'
import { Icon } from '../instrument/Icon.tsx'
import { SheetDialog } from '../instrument/SheetDialog.tsx'
import type { Records } from '../store/records.ts'
import { Calibration } from './Calibration.tsx'
import { EraseAll } from './EraseAll.tsx'
import { keepRecords } from './keep-records.ts'
import { LookAgain } from './LookAgain.tsx'
import { ProgressList } from './ProgressList.tsx'
import { TakeAway, TakeIn } from './TakeAway.tsx'
import { type TakenIn, saveDamaged } from './record-files.ts'
import './record.css'

/** The storage that does not keep comes before what it once did not give back: one yellow thing at a time. */
function Trouble() {
  const { records } = useWorkshop()
  const trouble = useStore(records.store, ({ notKept, damaged }) => notKept || damaged)
  const damaged = useStore(records.store, (now) => now.damaged)
  return (
    trouble !== '' && (
      <div className="note" role="note">
        <span>
          <Icon name="look" />
        </span>
        <p>{trouble}</p>
        {trouble === damaged && (
          <button type="button" className="button" onClick={saveDamaged}>
            Save it to a file
          </button>
        )}
      </div>
    )
  )
}

interface EmptyProps {
  /** What erasing came to; '' before */
  readonly said: string
  readonly onErased: (sentence: string) => void
}

/** Whether there is something to erase besides answers. */
const hasMore = ({ damaged, passed, nickname, homePage, account, marksOn }: Records): boolean =>
  marksOn || passed.length > 0 || [damaged, nickname, homePage, account].some((text) => text !== '')

/** After all is erased the focus goes to the sentence that says so, since what had it is gone. */
function Empty({ said, onErased }: EmptyProps) {
  const { view, records } = useWorkshop()
  const isKept = useStore(records.store, hasMore)
  const [refused, setRefused] = useState('')
  const [taken, setTaken] = useState<TakenIn | null>(null)
  const sentence = useRef<HTMLParagraphElement>(null)
  useEffect(() => {
    if (said !== '') sentence.current?.focus()
  }, [said])
  return (
    <div className="record-empty">
      {said !== '' && (
        <p ref={sentence} tabIndex={-1}>
          {said}
        </p>
      )}
      <p>
        Nothing is recorded yet. Predict an answer, commit to it and count: what you answered then stands
        here, by kind of question.
      </p>
      <div className="record-buttons">
        <button
          type="button"
          className="button main"
          onClick={() => view.setState({ way: 'predict', sheet: 'none' })}
        >
          Predict
        </button>
        <TakeIn onTaken={setTaken} />
      </div>
      {isKept && <EraseAll onErased={onErased} onRefused={setRefused} />}
      <p role="status" className="small">
        {refused || taken?.outcome}
      </p>
      {taken && taken.problems.length > 0 && <OpenProblems {...taken} />}
    </div>
  )
}

function Contents() {
  const { records } = useWorkshop()
  const answered = useStore(records.store, (now) => now.answered)
  const [erased, setErased] = useState('')
  return (
    <div className="record">
      <p className="small">Your answers stay in this browser. Nothing is sent, nobody is ranked.</p>
      <Trouble />
      {answered.length === 0 ? (
        <Empty said={erased} onErased={setErased} />
      ) : (
        <div className="record-columns">
          <div>
            <LookAgain answered={answered} />
            <ProgressList answered={answered} />
          </div>
          <div>
            <Calibration answered={answered} />
            <TakeAway onErased={setErased} />
          </div>
        </div>
      )}
    </div>
  )
}

export function RecordSheet() {
  const workshop = useWorkshop()
  const open = useView(({ sheet }) => sheet === 'record')
  useEffect(() => {
    if (open) keepRecords(workshop)
  }, [open, workshop])
  return (
    <SheetDialog sheet="record" title="My record">
      <Contents />
    </SheetDialog>
  )
}
