/** All pages beside the page of the program only while the browser prints, and gone again whether that was done or not. */
import { useEffect, useRef } from 'react'
import { createPortal } from 'react-dom'
import { PaperPage } from './PaperPage.tsx'
import type { Paper } from './order.ts'
import type { PlacedPage } from './pages.ts'
import './printed.css'

interface PrintedSheetsProps {
  readonly pages: readonly PlacedPage[]
  readonly paper: Paper
  readonly address: string
  readonly onDone: () => void
}

export function PrintedSheets({ pages, paper, address, onDone }: PrintedSheetsProps) {
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
  return createPortal(
    <div className="worksheet-printed" lang="en" data-paper={paper}>
      {pages.map((placed, i) => (
        <PaperPage key={i} placed={placed} paper={paper} address={address} />
      ))}
    </div>,
    document.body,
  )
}
