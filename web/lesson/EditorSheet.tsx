import { SheetDialog } from '../instrument/SheetDialog.tsx'

export function EditorSheet() {
  return (
    <SheetDialog sheet="editor" title="Lesson editor" wide>
      <p>Loading</p>
    </SheetDialog>
  )
}
