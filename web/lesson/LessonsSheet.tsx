import { SheetDialog } from '../instrument/SheetDialog.tsx'

export function LessonsSheet() {
  return (
    <SheetDialog sheet="lessons" title="Lessons">
      <p>Loading</p>
    </SheetDialog>
  )
}
