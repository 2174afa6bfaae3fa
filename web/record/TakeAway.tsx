/** Files of the record, and the print of its summary. */
import { useState } from 'react'
import { useStore } from 'zustand'
import { counted } from '../../sim/question/value-text.ts'
import { OpenProblems } from '../file/OpenProblems.tsx'
import { useWorkshop } from '../frame/workshop.ts'
import { FileButton } from '../instrument/FileButton.tsx'
import { EraseAll } from './EraseAll.tsx'
import { PrintedRecord } from './PrintedRecord.tsx'
import { type RecordFormat, type TakenIn, saveRecord, takeInFile } from './record-files.ts'
import '../file/machine-sheet.css'
import { PLAIN_HOME_PAGE, homePageOf } from './xapi-activity.ts'

const FORMATS: readonly { readonly format: RecordFormat; readonly name: string }[] = [
  { format: 'csv', name: 'Table (CSV)' },
  { format: 'json', name: 'Whole record (JSON)' },
  { format: 'xapi', name: 'xAPI file' },
]

interface SayProps {
  readonly onDone: (sentence: string) => void
}

/** Said, since it is kept and shown nowhere else. */
function Topics() {
  const { records } = useWorkshop()
  const topics = useStore(records.store, ({ passed }) => passed.filter(({ beat }) => beat !== '').length)
  return (
    topics > 0 && (
      <p className="small">
        {counted(topics, 'topic')} of lessons that you went through alone {topics === 1 ? 'is' : 'are'} kept
        too, for the xAPI file.
      </p>
    )
  )
}

function Exports({ onDone }: SayProps) {
  const { records } = useWorkshop()
  return FORMATS.map(({ format, name }) => (
    <button key={format} type="button" className="button" onClick={() => onDone(saveRecord(records, format))}>
      {name}
    </button>
  ))
}

export function TakeIn({ onTaken }: { readonly onTaken: (taken: TakenIn) => void }) {
  const { records } = useWorkshop()
  const take = async (file: File | undefined) => {
    if (file) onTaken(await takeInFile(records, file))
  }
  return <FileButton text="Take in a file" label="Record file" onFiles={([file]) => void take(file)} />
}

function Nickname({ onPrint }: { readonly onPrint: () => void }) {
  const { records } = useWorkshop()
  const nickname = useStore(records.store, (now) => now.nickname)
  return (
    <div className="record-buttons">
      <label className="field">
        Name on your own print
        <input
          type="text"
          value={nickname}
          maxLength={60}
          autoComplete="off"
          onChange={({ target }) => records.store.setState({ nickname: target.value })}
        />
      </label>
      <button type="button" className="button" onClick={onPrint}>
        Print the summary
      </button>
    </div>
  )
}

function HomePage() {
  const { records } = useWorkshop()
  const homePage = useStore(records.store, (now) => now.homePage)
  const used = homePageOf(homePage)
  const refused = homePage.trim() !== '' && used === PLAIN_HOME_PAGE && homePage.trim() !== PLAIN_HOME_PAGE
  return (
    <div className="record-home">
      <label className="field">
        Web address that names the records in an xAPI file
        <input
          type="url"
          value={homePage}
          placeholder={PLAIN_HOME_PAGE}
          maxLength={200}
          aria-invalid={refused}
          aria-describedby="record-home"
          onChange={({ target }) => records.store.setState({ homePage: target.value })}
        />
      </label>
      <p className="small" id="record-home">
        {refused
          ? `Type an address such as https://school.example/course. Until then ${PLAIN_HOME_PAGE} is used.`
          : 'For a learning record store of your own. In the file the learner has a random name, not the one above.'}
      </p>
    </div>
  )
}

export function TakeAway({ onErased }: { readonly onErased: (sentence: string) => void }) {
  const [done, setDone] = useState('')
  const [taken, setTaken] = useState<TakenIn | null>(null)
  const [printing, setPrinting] = useState(false)
  const say = (sentence: string) => {
    setTaken(null)
    setDone(sentence)
  }
  const onTaken = (now: TakenIn) => {
    setDone(now.outcome)
    setTaken(now)
  }
  return (
    <section aria-labelledby="record-files">
      <h3 id="record-files">Keep it, hand it on, erase it</h3>
      <div className="record-buttons">
        <Exports onDone={say} />
        <TakeIn onTaken={onTaken} />
      </div>
      <Topics />
      <Nickname onPrint={() => setPrinting(true)} />
      <HomePage />
      <EraseAll onErased={onErased} onRefused={say} />
      <p role="status" className="small">
        {done}
      </p>
      {taken && taken.problems.length > 0 && <OpenProblems {...taken} />}
      {printing && <PrintedRecord onDone={() => setPrinting(false)} />}
    </section>
  )
}
