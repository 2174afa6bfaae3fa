/**
 * The ledger as a stream that flows down: as wide as the watts it still carries, each part that leaves it as thick as
 * what it takes, on one scale. What comes back makes it wider again.
 */
import type { Ledger, LedgerItem } from './ledger.ts'

export interface FlowRow {
  readonly item: LedgerItem
  /** Top of what turns off, or joins, and how thick it is [px] */
  readonly y: number
  readonly thickness: number
  /** Right edge of the stream above it and below it [px] */
  readonly before: number
  readonly after: number
}

export interface Flow {
  /** [px/W] */
  readonly scale: number
  readonly start: number
  readonly rows: readonly FlowRow[]
  readonly bottom: number
}

export interface FlowRoom {
  /** Width for the most that passes at once, and room that the words of a row need [px] */
  readonly width: number
  readonly row: number
  readonly top: number
}

const STEPS = [1, 1.2, 1.5, 1.8, 2, 2.5, 3, 3.5, 4, 5, 6, 7, 8, 9, 10]

/** The next round number at or above; 1 where there is nothing. */
const roundUp = (value: number, steps: readonly number[]): number => {
  if (!(value > 0)) return 1
  const power = 10 ** Math.floor(Math.log10(value))
  return (steps.find((each) => each * power >= value) ?? 10) * power
}

/** The most that passes the stream anywhere [W] */
export function widest({ input, parts }: Ledger): number {
  let passing = Math.max(0, input.watts)
  let most = passing
  for (const { watts } of parts) {
    passing -= watts
    most = Math.max(most, passing)
  }
  return most
}

/** How far the parts together may be thicker than the stream is wide: they are where power comes back to be lost. */
const MOST_TAKEN = 1.1

const flowRows = ({ input, parts }: Ledger): readonly LedgerItem[] =>
  input.watts < 0 ? [{ ...input, watts: -input.watts }, ...parts] : parts

/** The round power that fills the width [W] */
export function fullWidth(ledger: Ledger): number {
  const taken = flowRows(ledger).reduce((sum, { watts }) => sum + Math.abs(watts), 0)
  return roundUp(Math.max(widest(ledger), taken / MOST_TAKEN), STEPS)
}

/** A round power, about a quarter of the full width, for the measure under the stream [W] */
export const measureWatts = (full: number): number => roundUp(full / 5, [1, 2, 5])

export const flowHeight = (ledger: Ledger, { width, row, top }: FlowRoom): number =>
  Math.ceil(top + MOST_TAKEN * width + flowRows(ledger).length * row)

/**
 * `full` is the power that fills the width [W]. The rows share what is left of the height evenly, so that the picture
 * keeps its size whatever the numbers do.
 */
export function ledgerFlow(ledger: Ledger, full: number, room: FlowRoom): Flow {
  const scale = room.width / full
  const rows = flowRows(ledger)
  const start = Math.max(0, ledger.input.watts) * scale
  const taken = rows.reduce((sum, { watts }) => sum + Math.abs(watts) * scale, 0)
  const gap = Math.max(0, flowHeight(ledger, room) - room.top - taken) / Math.max(1, rows.length)
  let y = room.top
  let before = start
  const placed = rows.map((item) => {
    const thickness = Math.abs(item.watts) * scale
    const after = before - item.watts * scale
    const place = { item, y: y + gap / 2, thickness, before, after }
    y += gap + thickness
    before = after
    return place
  })
  return { scale, start, rows: placed, bottom: y }
}

/** Outline of the stream as a path; each step lies where its part has left, or has come in. */
export function streamPath({ start, rows }: Flow, top: number): string {
  const last = rows.at(-1)
  const parts = [`M0 ${top}H${px(start)}`]
  for (const { y, thickness, after, item } of rows)
    parts.push(`V${px(item.watts >= 0 ? y : y + thickness)}H${px(Math.max(0, after))}`)
  parts.push(`V${px(last ? last.y + last.thickness : top)}H0Z`)
  return parts.join('')
}

const px = (value: number): string => value.toFixed(2)
