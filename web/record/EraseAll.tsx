/** Erases everything at once, after one question. */
import { useEffect, useRef, useState } from 'react'
import { useWorkshop } from '../frame/workshop.ts'
import { eraseRecords } from './keep-records.ts'

interface EraseAllProps {
  readonly onErased: (sentence: string) => void
  readonly onRefused: (sentence: string) => void
}

export function EraseAll({ onErased, onRefused }: EraseAllProps) {
  const workshop = useWorkshop()
  const [asking, setAsking] = useState(false)
  const keep = useRef<HTMLButtonElement>(null)
  useEffect(() => keep.current?.focus(), [asking])
  const erase = () => {
    setAsking(false)
    if (eraseRecords(workshop))
      onErased('All of it is erased. Nothing of your record is left in this browser.')
    else
      onRefused(
        'This browser did not let the page erase what it keeps. Clear this site’s data in its settings.',
      )
  }
  if (!asking)
    return (
      <button type="button" className="button" onClick={() => setAsking(true)}>
        Erase all
      </button>
    )
  return (
    <div className="record-erase" role="group" aria-labelledby="record-erase">
      <p id="record-erase">
        Erase every answer, the name and the settings of this record in this browser? It cannot be brought
        back. Files that you saved stay.
      </p>
      <button type="button" className="button main" onClick={erase}>
        Erase all
      </button>
      <button ref={keep} type="button" className="button" onClick={() => setAsking(false)}>
        Keep them
      </button>
    </div>
  )
}
