/** Worksheets: what goes on them, how they look, and out to the printer. */
import { useCallback, useMemo, useState } from 'react'
import { useStore } from 'zustand'
import { counted } from '../../sim/question/value-text.ts'
import { FIRST_MACHINE } from '../file/first-machine.ts'
import { useWorkshop } from '../frame/workshop.ts'
import { SheetDialog } from '../instrument/SheetDialog.tsx'
import '../question/question.css'
import type { Lesson } from '../store/lesson.ts'
import { CodeField } from './CodeField.tsx'
import { PageTurn, Preview } from './Preview.tsx'
import { PrintChoice } from './PrintChoice.tsx'
import { PrintedSheets } from './PrintedSheets.tsx'
import { SourceChoice } from './SourceChoice.tsx'
import { lessonsAtHand } from './lessons-at-hand.ts'
import { type AtHand, type Order, firstOrder } from './order.ts'
import { type MadePages, type PlacedPage, pagesFor } from './pages.ts'
import { isFixed, sheetsOf } from './sheets.ts'
import './worksheet.css'

/** The machine on the bench is the person's own, also while another is lent for a question. */
function useAtHand(): AtHand {
  const { document, aside, lesson } = useWorkshop()
  const seen = useStore(document.store, ({ machine }) => machine)
  const own = useStore(aside, ({ held }) => held?.document.machine)
  const open = useStore(lesson)
  const machine = own ?? seen
  return useMemo(
    () => ({ machine, practice: FIRST_MACHINE.machine, lessons: lessonsAtHand(open) }),
    [machine, open],
  )
}

function summary(pages: readonly PlacedPage[], order: Order): string {
  const versions = isFixed(order) ? 1 : order.versions
  const answers = pages.filter(({ page }) => page.kind === 'answers').length
  const parts = [
    counted(pages.length - answers, 'page'),
    ...(answers > 0 ? [`${counted(answers, 'page')} of answers`] : []),
  ]
  return `${versions > 1 ? `${versions} versions: ` : ''}${parts.join(' and ')}`
}

interface ResultProps {
  readonly made: MadePages
  readonly order: Order
  readonly shown: number
  readonly onShow: (page: number) => void
}

/** What comes of the order: how much it is, one page of it, and all of it to the printer. */
function Result({ made, order, shown, onShow }: ResultProps) {
  const [printing, setPrinting] = useState(false)
  const address = location.href.split('#')[0]!
  const pages = 'pages' in made ? made.pages : []
  const at = Math.min(shown, pages.length - 1)
  const done = useCallback(() => setPrinting(false), [])
  return (
    <div className="worksheet-result">
      <div className="worksheet-print">
        <p id="worksheet-said" role="status">
          {'problem' in made ? made.problem : summary(pages, order)}
        </p>
        {pages.length > 0 && <PageTurn count={pages.length} shown={at} onShow={onShow} />}
        <button
          type="button"
          className="button main"
          aria-disabled={pages.length === 0}
          onClick={() => setPrinting(pages.length > 0)}
        >
          Print
        </button>
      </div>
      {pages[at] && <Preview placed={pages[at]} paper={order.paper} address={address} />}
      {printing && <PrintedSheets pages={pages} paper={order.paper} address={address} onDone={done} />}
    </div>
  )
}

interface DeskProps {
  readonly order: Order
  readonly onOrder: (order: Order) => void
}

function Desk({ order, onOrder }: DeskProps) {
  const at = useAtHand()
  const [shown, setShown] = useState(0)
  const made = useMemo(() => pagesFor(sheetsOf(order, at), order), [order, at])
  const change = (changed: Partial<Order>) => {
    setShown(0)
    onOrder({ ...order, ...changed })
  }
  /** To the first page of a version */
  const showVersion = (next: Order, version: number) => {
    change(next)
    const pages = pagesFor(sheetsOf(next, at), next)
    const first = 'pages' in pages ? pages.pages.findIndex(({ sheet }) => sheet.version === version) : 0
    setShown(Math.max(0, first))
  }
  const choices = { order, at, onChange: change }
  return (
    <div className="worksheet-desk">
      <div className="worksheet-choices">
        <SourceChoice {...choices} />
        <PrintChoice {...choices} />
        <CodeField order={order} at={at} onBack={showVersion} />
      </div>
      <Result made={made} order={order} shown={shown} onShow={setShown} />
    </div>
  )
}

/** A lesson that is open is what a sheet is wanted of. */
const beginWith = (open: Lesson | null): Order =>
  open ? { ...firstOrder, from: 'lesson', lesson: open.id } : firstOrder

/** What was chosen stays as long as the page is open. */
export function WorksheetSheet() {
  const { lesson } = useWorkshop()
  const [order, setOrder] = useState(() => beginWith(lesson.getState().lesson))
  return (
    <SheetDialog sheet="worksheet" title="Worksheet">
      <Desk order={order} onOrder={setOrder} />
    </SheetDialog>
  )
}
