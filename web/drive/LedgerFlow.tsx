/** The ledger drawn: a stream whose width is the watts, losses hatched, what reaches the wheels in their colours. */
import { type ReactNode, type RefObject, useId } from 'react'
import { MarkSign } from '../instrument/MarkSign.tsx'
import { quantityText } from '../instrument/reading-text.ts'
import { type Flow, type FlowRow, flowHeight, ledgerFlow, measureWatts, streamPath } from './ledger-flow.ts'
import type { Ledger } from './ledger.ts'

interface LedgerFlowProps {
  readonly ledger: Ledger
  /** Power that fills the width of the stream [W] */
  readonly full: number
  readonly width: number
  readonly label: string
  readonly figure: RefObject<SVGSVGElement | null>
}

/** Room for a part's words, for what turns off, and the least and most that the stream may take [px] */
const LEAST_WORDS = 186
const MOST_WORDS = 222
const WORDS_PART = 0.62
const STUB = 22
const NARROWEST = 44
const BROADEST = 250
/** How far the numbers stand from where their names begin, at most */
const FARTHEST = 260
const ROW = 17
const TOP = 36
const FOOT = 26

export function LedgerFlow({ ledger, full, width, label, figure }: LedgerFlowProps) {
  const hatch = useId()
  const besides = Math.min(MOST_WORDS, Math.max(LEAST_WORDS, WORDS_PART * width))
  const broad = Math.min(BROADEST, Math.max(NARROWEST, width - besides - STUB))
  const room = { width: broad, row: ROW, top: TOP }
  const flow = ledgerFlow(ledger, full, room)
  const height = flowHeight(ledger, room) + FOOT
  const words = broad + STUB + 8
  return (
    <svg className="flow" ref={figure} width={width} height={height} role="img" aria-label={label}>
      <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line className="flow-hatch" y2="6" />
      </pattern>
      {ledger.input.watts >= 0 && <Taken ledger={ledger} />}
      <path className="flow-stream" d={streamPath(flow, TOP)} />
      {flow.rows.map((row) => (
        <Part
          key={row.item.name}
          row={row}
          hatch={`url(#${hatch})`}
          words={words}
          end={Math.min(width, words + FARTHEST)}
        />
      ))}
      <Measure flow={flow} full={full} y={height - 8} />
    </svg>
  )
}

function Taken({ ledger }: { readonly ledger: Ledger }) {
  return (
    <text x={0} y={22}>
      <tspan className="flow-total">{quantityText(ledger.input.watts, 'W')}</tspan>
      <tspan className="flow-name" dx="10">
        {ledger.input.name.toLowerCase()}
      </tspan>
    </text>
  )
}

interface PartProps {
  readonly row: FlowRow
  readonly hatch: string
  readonly words: number
  readonly end: number
}

/** Leaves as a short hatched piece and a line to its words; what reaches a wheel runs through, in its colour. */
function Part({ row, hatch, words, end }: PartProps) {
  const { item, y, thickness } = row
  const middle = y + thickness / 2
  const comesBack = item.watts < 0
  const from = Math.min(row.before, row.after)
  const isWheel = item.kind === 'left' || item.kind === 'right'
  const to = isWheel && thickness > 0 ? words - 12 : Math.max(row.before, row.after) + STUB
  return (
    <g className="flow-part" data-kind={item.kind}>
      {thickness > 0 && (
        <rect
          className="flow-piece"
          x={from}
          y={y}
          width={to - from}
          height={thickness}
          fill={item.kind === 'loss' ? hatch : undefined}
        />
      )}
      {to < words - 14 && <path className="flow-leader" d={`M${to + 4} ${middle}H${words - 8}`} />}
      {comesBack && <path className="flow-back" d={`M${to - 14} ${middle}l10 -6v12z`} />}
      <Words row={row} x={words} middle={middle} end={end}>
        {isWheel && <MarkSign part={item.kind === 'left' ? 'left' : 'right'} size={18} />}
      </Words>
    </g>
  )
}

interface WordsProps {
  readonly row: FlowRow
  readonly x: number
  readonly middle: number
  readonly end: number
  readonly children: ReactNode
}

function Words({ row, x, middle, end, children }: WordsProps) {
  const { name, watts } = row.item
  const indent = children ? 22 : 0
  return (
    <>
      {children && <g transform={`translate(${x} ${middle - 9})`}>{children}</g>}
      <text className="flow-name" x={x + indent} y={middle} dy="0.35em">
        {watts < 0 ? `${name}, back` : name}
      </text>
      <text className="flow-number" x={end} y={middle} dy="0.35em" textAnchor="end">
        {quantityText(Math.abs(watts), 'W')}
      </text>
    </>
  )
}

/** How wide a round power is drawn, about a quarter of the full width. */
function Measure({ flow, full, y }: { readonly flow: Flow; readonly full: number; readonly y: number }) {
  const watts = measureWatts(full)
  const length = watts * flow.scale
  return (
    <>
      <path className="flow-measure" d={`M0.6 ${y - 9}v9H${length}v-9`} />
      <text className="flow-number small" x={length + 8} y={y}>
        {Number(watts.toPrecision(3))} W
      </text>
    </>
  )
}
