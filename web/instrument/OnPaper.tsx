/**
 * What is printed instead of the page: beside it only while the browser prints, and gone again whether that was done
 * or not.
 */
import { type ReactNode, useEffect, useRef } from 'react'
import { createPortal } from 'react-dom'

interface OnPaperProps {
  readonly onDone: () => void
  readonly children: ReactNode
}

export function OnPaper({ onDone, children }: OnPaperProps) {
  const asked = useRef(false)
  useEffect(() => {
    window.addEventListener('afterprint', onDone)
    const timer = setTimeout(() => {
      if (asked.current) return
      asked.current = true
      window.print()
    })
    return () => {
      clearTimeout(timer)
      window.removeEventListener('afterprint', onDone)
    }
  }, [onDone])
  return createPortal(children, document.body)
}
