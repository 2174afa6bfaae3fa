/** All pages of an order, for the printer. */
import { OnPaper } from '../instrument/OnPaper.tsx'
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

export const PrintedSheets = ({ pages, paper, address, onDone }: PrintedSheetsProps) => (
  <OnPaper onDone={onDone}>
    <div className="worksheet-printed" lang="en" data-paper={paper}>
      {pages.map((placed, i) => (
        <PaperPage key={i} placed={placed} paper={paper} address={address} />
      ))}
    </div>
  </OnPaper>
)
