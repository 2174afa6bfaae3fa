import { SheetDialog } from '../instrument/SheetDialog.tsx'

export function RecordSheet() {
  return (
    <SheetDialog sheet="record" title="My record">
      <p>Loading</p>
    </SheetDialog>
  )
}
