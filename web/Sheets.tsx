/** The sheets that are fetched when they are first opened; from then on each stays, so that it can hand the focus back. */
import { Suspense, useState } from 'react'
import { useView } from './frame/workshop.ts'
import { EditorSheet, KeysSheet, LessonsSheet, RecordSheet, WorksheetSheet } from './later.ts'
import type { Sheet } from './store/view.ts'

const SHEETS: readonly { readonly sheet: Sheet; readonly Contents: () => React.ReactNode }[] = [
  { sheet: 'keys', Contents: () => <KeysSheet /> },
  { sheet: 'lessons', Contents: () => <LessonsSheet /> },
  { sheet: 'editor', Contents: () => <EditorSheet /> },
  { sheet: 'worksheet', Contents: () => <WorksheetSheet /> },
  { sheet: 'record', Contents: () => <RecordSheet /> },
]

export function Sheets() {
  const open = useView((view) => view.sheet)
  const [wanted, setWanted] = useState<readonly Sheet[]>([])
  if (open !== 'none' && !wanted.includes(open)) setWanted([...wanted, open])
  return SHEETS.map(({ sheet, Contents }) => (
    <Suspense key={sheet}>{wanted.includes(sheet) && <Contents />}</Suspense>
  ))
}
