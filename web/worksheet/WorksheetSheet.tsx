import { SheetDialog } from '../instrument/SheetDialog.tsx'

export function WorksheetSheet() {
  return (
    <SheetDialog sheet="worksheet" title="Worksheet" wide>
      <p>Loading</p>
    </SheetDialog>
  )
}
