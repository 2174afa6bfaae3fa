/** The torque balance as bars on one scale. */
import { type RefObject, useId } from 'react'
import { MarkSign } from '../instrument/MarkSign.tsx'
import { quantityText } from '../instrument/reading-text.ts'
import { type Balance, type BalancePart, type OtherBalance, balanceLength } from './torque-balance.ts'
import '../chart/chart.css'

interface TorqueBarsProps {
  readonly set: Balance
  readonly other: OtherBalance | null
  readonly width: number
  readonly driver: 'motor' | 'hand'
  readonly figure: RefObject<SVGSVGElement | null>
}

const COPY = 18
const BAR = 30
const WORDS = 26
const GAP = 6
/** Room for the names under a bar, and what a letter of them takes [px] */
const NAMES = 22
const LETTER = 7.6
/** Width from which the first line also says whose torque it is [px] */
const ROOM_FOR_SOURCE = 320
/** Narrower than this a copy is not set apart from its neighbours [px]. */
const APART = 3

export function TorqueBars({ set, other, width, driver, figure }: TorqueBarsProps) {
  const hatch = useId()
  const full = Math.max(balanceLength(set), other ? balanceLength(other.balance) : 0, Number.MIN_VALUE)
  const scale = (width - 2) / full
  const ideal = WORDS + COPY + 3 + BAR + NAMES + GAP
  const second = ideal + WORDS + COPY + GAP
  const height = other ? second + WORDS + BAR + NAMES : second
  return (
    <svg
      className="bars"
      ref={figure}
      width={width}
      height={height}
      role="img"
      aria-label={barsWords(set, driver)}
    >
      <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line className="flow-hatch" y2="6" />
      </pattern>
      <g transform="translate(1 0)">
        <text className="flow-name" x={0} y={16}>
          <tspan className="flow-number">
            {copiesText(set.copies)} × {quantityText(set.each, 'N m')} = {quantityText(set.total, 'N m')}
          </tspan>
          {width > ROOM_FOR_SOURCE && <tspan dx="8">from the {driver}</tspan>}
        </text>
        <Copies balance={set} scale={scale} y={WORDS} />
        <Bar balance={set} scale={scale} y={WORDS + COPY + 3} hatch={hatch} />
        <text className="flow-name" x={0} y={ideal + 16}>
          Without losses, shared evenly
        </text>
        <Halves total={set.total} scale={scale} y={ideal + WORDS} />
        {other && (
          <>
            <text className="flow-name" x={0} y={second + 16}>
              {other.name}, of {quantityText(other.balance.total, 'N m')}
            </text>
            <Bar balance={other.balance} scale={scale} y={second + WORDS} hatch={hatch} />
          </>
        )}
      </g>
    </svg>
  )
}

/** One for each turn of the worm, the last one cut where the ratio is no whole number; then what the loads add. */
function Copies({
  balance,
  scale,
  y,
}: {
  readonly balance: Balance
  readonly scale: number
  readonly y: number
}) {
  const length = Math.max(0, balance.each) * scale
  const gap = length > 2 * APART ? 1.5 : length > APART ? 0.8 : 0
  return (
    <>
      {length > 0 &&
        Array.from({ length: Math.ceil(balance.copies - ROUNDING) }, (_, i) => {
          const part = Math.min(1, balance.copies - i)
          return (
            <rect
              key={i}
              className="bars-copy"
              x={i * length}
              y={y}
              width={Math.max(0.3, part * length - gap)}
              height={COPY}
            />
          )
        })}
      {laidOut(balance, -1).map(({ part, from }) => (
        <rect
          key={part.name}
          className="bars-part"
          data-kind={part.kind}
          x={(Math.max(0, balance.total) + from) * scale}
          y={y}
          width={-part.torque * scale}
          height={COPY}
        />
      ))}
    </>
  )
}

const ROUNDING = 1e-9

const copiesText = (copies: number): string => (Number.isInteger(copies) ? String(copies) : copies.toFixed(2))

interface BarProps {
  readonly balance: Balance
  readonly scale: number
  readonly y: number
  readonly hatch: string
}

function Bar({ balance, scale, y, hatch }: BarProps) {
  return laidOut(balance, 1).map(({ part, from }) => (
    <g key={part.name}>
      <rect
        className="bars-part"
        data-kind={part.kind}
        x={from * scale}
        y={y}
        width={part.torque * scale}
        height={BAR}
        fill={part.kind === 'loss' ? `url(#${hatch})` : undefined}
      />
      <Name part={part} room={part.torque * scale} x={from * scale} y={y + BAR + 3} />
    </g>
  ))
}

interface NameProps {
  readonly part: BalancePart
  readonly room: number
  readonly x: number
  readonly y: number
}

/** Under its part, where it has room; the table below names all of them. */
function Name({ part, room, x, y }: NameProps) {
  const { kind, name } = part
  if (kind === 'left' || kind === 'right')
    return room < 16 ? null : (
      <g transform={`translate(${x - 2} ${y})`}>
        <MarkSign part={kind} size={18} />
      </g>
    )
  const short = name.replace(/^\w+ (?=meshes|bearings)/, '').toLowerCase()
  if (room < LETTER * short.length) return null
  return (
    <text className="plot-words" x={x + 2} y={y + 13}>
      {short}
    </text>
  )
}

/** The parts that take, or with -1 those that help, each beginning where the one before it ends [N m]. */
function laidOut(
  { parts }: Balance,
  sign: 1 | -1,
): readonly { readonly part: BalancePart; readonly from: number }[] {
  let from = 0
  return parts
    .filter(({ torque }) => sign * torque > 0)
    .map((part) => {
      const place = { part, from }
      from += sign * part.torque
      return place
    })
}

function Halves({ total, scale, y }: { readonly total: number; readonly scale: number; readonly y: number }) {
  const half = (Math.max(0, total) * scale) / 2
  if (half === 0) return null
  return (
    <>
      <rect className="bars-half" data-kind="left" x={1} y={y + 1} width={half - 2} height={COPY - 2} />
      <rect
        className="bars-half"
        data-kind="right"
        x={half + 1}
        y={y + 1}
        width={half - 2}
        height={COPY - 2}
      />
    </>
  )
}

const barsWords = ({ total, each, copies, parts }: Balance, driver: string): string =>
  [
    `${copiesText(copies)} times ${quantityText(each, 'N m')} of the ${driver} are ${quantityText(total, 'N m')}`,
    ...parts.map(({ name, torque }) => `${name.toLowerCase()} ${quantityText(torque, 'N m')}`),
  ].join(', ')
