/** The pages as they will be printed, one at a time, as large as there is room. */
import { useWidth } from '../chart/use-width.ts'
import { Icon } from '../instrument/Icon.tsx'
import { PaperPage } from './PaperPage.tsx'
import type { Paper } from './order.ts'
import type { PlacedPage } from './pages.ts'
import { MARGIN, PAPERS } from './paper.ts'

/** CSS pixels in a millimetre */
const PER_MM = 96 / 25.4

interface PageTurnProps {
  readonly count: number
  readonly shown: number
  readonly onShow: (page: number) => void
}

export function PageTurn({ count, shown, onShow }: PageTurnProps) {
  return (
    <div className="worksheet-turn">
      <button type="button" className="button icon" disabled={shown === 0} onClick={() => onShow(shown - 1)}>
        <Icon name="back" />
        <span className="unseen">Page before</span>
      </button>
      <p role="status">
        {shown + 1} of {count}
      </p>
      <button
        type="button"
        className="button icon"
        disabled={shown === count - 1}
        onClick={() => onShow(shown + 1)}
      >
        <Icon name="next" />
        <span className="unseen">Page after</span>
      </button>
    </div>
  )
}

interface PreviewProps {
  readonly placed: PlacedPage
  readonly paper: Paper
  readonly address: string
}

export function Preview({ placed, paper, address }: PreviewProps) {
  const [box, width] = useWidth<HTMLDivElement>()
  const size = PAPERS[paper]
  const scale = width / (size.width * PER_MM)
  return (
    <section aria-label="Preview">
      <div className="worksheet-paper" ref={box} style={{ height: `${size.height * PER_MM * scale}px` }}>
        <div style={{ padding: `${MARGIN}mm`, width: `${size.width}mm`, transform: `scale(${scale})` }}>
          <PaperPage placed={placed} paper={paper} address={address} />
        </div>
      </div>
    </section>
  )
}
