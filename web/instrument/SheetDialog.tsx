/** A sheet over the page: a heading, a way to close it, its contents while it is open. Escape closes it too. */
import { type ReactNode, useEffect, useId, useRef } from 'react'
import { useView, useWorkshop } from '../frame/workshop.ts'
import type { Sheet } from '../store/view.ts'
import { Icon } from './Icon.tsx'

interface SheetDialogProps {
  readonly sheet: Sheet
  readonly title: string
  readonly children: ReactNode
}

export function SheetDialog({ sheet, title, children }: SheetDialogProps) {
  const { view } = useWorkshop()
  const open = useView((now) => now.sheet === sheet)
  const dialog = useRef<HTMLDialogElement>(null)
  const titleId = useId()
  useEffect(() => {
    if (open) dialog.current?.showModal()
    else dialog.current?.close()
  }, [open])
  const close = () => {
    if (view.getState().sheet === sheet) view.setState({ sheet: 'none' })
  }
  return (
    <dialog className="sheet" ref={dialog} aria-labelledby={titleId} onClose={close}>
      <div className="sheet-head">
        <h2 id={titleId}>{title}</h2>
        <button type="button" className="button plain icon" onClick={close}>
          <Icon name="close" />
          <span className="unseen">Close</span>
        </button>
      </div>
      {open && children}
    </dialog>
  )
}
