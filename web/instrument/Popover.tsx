/**
 * A button that opens a small panel beside itself. Escape or a press elsewhere closes it, but for presses on what has
 * data-leaves-open; focus comes back.
 */
import { type ReactNode, useEffect, useId, useRef, useState } from 'react'
import { Icon, type IconName } from './Icon.tsx'

interface PopoverProps {
  readonly label: string
  readonly icon?: IconName
  readonly side: 'above' | 'below'
  readonly children: ReactNode
  /** Only the sign is seen; the label is its name. */
  readonly compact?: boolean
}

export function Popover({ label, icon, side, children, compact = false }: PopoverProps) {
  const [open, setOpen] = useState(false)
  const region = useRef<HTMLDivElement>(null)
  const button = useRef<HTMLButtonElement>(null)
  const id = useId()

  useEffect(() => {
    if (!open) return undefined
    const pressedElsewhere = (event: PointerEvent) => {
      const target = event.target as Element
      if (!region.current?.contains(target) && !target.closest('[data-leaves-open]')) setOpen(false)
    }
    const escape = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return
      event.stopPropagation()
      setOpen(false)
      button.current?.focus()
    }
    const place = region.current
    document.addEventListener('pointerdown', pressedElsewhere)
    place?.addEventListener('keydown', escape)
    return () => {
      document.removeEventListener('pointerdown', pressedElsewhere)
      place?.removeEventListener('keydown', escape)
    }
  }, [open])

  return (
    <div className="popover" data-side={side} ref={region}>
      <button
        type="button"
        className={compact ? 'button icon' : 'button'}
        aria-expanded={open}
        aria-controls={id}
        ref={button}
        title={compact ? label : undefined}
        onClick={() => setOpen(!open)}
      >
        {icon && <Icon name={icon} />}
        <span className={compact ? 'unseen' : undefined}>{label}</span>
      </button>
      <div className="popover-panel" id={id} hidden={!open} role="group" aria-label={label}>
        {open && children}
      </div>
    </div>
  )
}
