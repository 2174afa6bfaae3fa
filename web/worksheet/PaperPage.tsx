/** One page of a sheet as it is printed, and as it is shown before. */
import { type CSSProperties, useMemo } from 'react'
import { Mark } from '../instrument/Mark.tsx'
import { AnswerBlock } from './AnswerBlock.tsx'
import { BenchBlock, SafetyBox } from './BenchBlock.tsx'
import { modulesText } from './PlanFigure.tsx'
import { QrCode } from './QrCode.tsx'
import { QuestionBlock } from './QuestionBlock.tsx'
import { codeLines } from './blocks.ts'
import { sheetLink, shortAddress } from './link.ts'
import type { Paper, Sheet } from './order.ts'
import type { Block, PlacedPage } from './pages.ts'
import { inside } from './paper.ts'
import { qrPicture } from './qr.ts'
import './paper.css'

const codeLabel = ({ screen }: Sheet): string =>
  screen && 'items' in screen ? 'QR code of these questions' : 'QR code of this lesson'

const versionText = ({ version }: Sheet): string => (version === 0 ? '' : `, version ${version}`)

const Head = ({ answers }: { readonly answers: boolean }) => (
  <header className="ws-head">
    <Mark size={26} />
    <b>Counterturn</b>
    {answers ? (
      <span className="ws-for">Answers, for the teacher</span>
    ) : (
      <>
        <span>
          Name <i className="ws-blank" />
        </span>
        <span>
          Date <i className="ws-blank" />
        </span>
      </>
    )}
  </header>
)

function Intro({ sheet, address }: { readonly sheet: Sheet; readonly address: string }) {
  const picture = useMemo(() => {
    const link = sheetLink(sheet, address)
    return link === null ? null : qrPicture(link)
  }, [sheet, address])
  return (
    <div className="ws-intro">
      <div>
        <h3 className="ws-title">{sheet.title}</h3>
        <p>
          Predict first, before anything turns, and say how sure you are: 1, 2 or 3. Then count on the screen
          or at a machine, write down what you counted, and explain.
        </p>
        <p>
          On the screen: {picture && 'this QR code, or '}Worksheet at {shortAddress(address)} with the sheet
          code below.
        </p>
      </div>
      {picture && <QrCode picture={picture} label={codeLabel(sheet)} />}
    </div>
  )
}

interface BlockProps {
  readonly block: Block
  readonly sheet: Sheet
  readonly width: number
}

function BlockOnPage({ block, sheet, width }: BlockProps) {
  if (block.kind === 'bench') return <BenchBlock machine={sheet.machine} />
  if (block.kind === 'safety') return <SafetyBox />
  const question = sheet.questions[block.at]!
  return (
    <QuestionBlock
      question={question}
      place={block.at + 1}
      lines={block.lines}
      base={sheet.machine}
      width={width}
    />
  )
}

interface PaperPageProps {
  readonly placed: PlacedPage
  readonly paper: Paper
  /** Of the program, without what follows '#' */
  readonly address: string
}

export function PaperPage({ placed: { sheet, page, number, of }, paper, address }: PaperPageProps) {
  const { width, height } = inside(paper)
  const answers = page.kind === 'answers'
  return (
    <article className="ws-page" data-kind={page.kind} style={{ width: `${width}mm`, height: `${height}mm` }}>
      <Head answers={answers} />
      {page.first && !answers && <Intro sheet={sheet} address={address} />}
      {page.first && answers && (
        <h3 className="ws-title">
          {sheet.title}
          {versionText(sheet)}: answers
        </h3>
      )}
      <div className="ws-blocks">
        {page.kind === 'questions'
          ? page.blocks.map((block) => (
              <BlockOnPage
                key={block.kind === 'question' ? block.at : block.kind}
                block={block}
                sheet={sheet}
                width={width}
              />
            ))
          : page.answers.map((lines) => <AnswerBlock key={lines.at} lines={lines} place={lines.at + 1} />)}
      </div>
      <footer className="ws-foot" style={{ '--code-lines': codeLines(sheet.code) } as CSSProperties}>
        <span>{modulesText(sheet.machine)}</span>
        {sheet.seed !== '' && <span>Seed {sheet.seed}</span>}
        <span className="ws-foot-code" data-alone={codeLines(sheet.code) > 0}>
          Sheet code <b className="ws-code">{sheet.code}</b>
        </span>
        <span>
          {answers ? 'Answers' : 'Page'} {number} of {of}
        </span>
      </footer>
    </article>
  )
}
