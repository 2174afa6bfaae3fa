/** Covers the page, and any open sheet, while a file hangs over it. */
import { useEffect, useRef } from 'react'
import { Icon } from '../instrument/Icon.tsx'
import './drop.css'

export function DropTarget() {
  const cover = useRef<HTMLDivElement>(null)
  useEffect(() => {
    cover.current?.showPopover()
  }, [])
  return (
    <div ref={cover} className="drop-target" popover="manual">
      <p>
        <Icon name="file" size={32} />
        Drop the file to open its machine
      </p>
    </div>
  )
}
