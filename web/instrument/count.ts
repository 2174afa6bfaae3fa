/**
 * Counts as they are shown. They are cut, never rounded, towards zero, so that a whole number is not shown before
 * it is reached; the sign stands apart. One object for each counter is written in every frame.
 */
import { TICKS_PER_TURN, type WormTurns } from '../../sim/drive/turns.ts'

/** Smallest part of a turn that is told: four decimals */
const PARTS = 10_000

export interface Count {
  /** 0 when nothing of the count is left after cutting */
  sign: 1 | -1 | 0
  whole: number
  /** Ten-thousandths of a turn */
  part: number
  /** The count is a whole number, not merely cut to one. */
  exact: boolean
}

export const newCount = (): Count => ({ sign: 0, whole: 0, part: 0, exact: true })

/** `whole` is rounded down; `ticks` of `turn` have gone since, and `rest` of another tick. */
function writeCount(
  out: Count,
  whole: number,
  ticks: number,
  rest: number,
  turn: number,
  sense: 1 | -1,
): Count {
  const negative = whole < 0
  out.exact = ticks === 0 && rest === 0
  const gone = negative ? turn - ticks - rest : ticks + rest
  const open = out.exact ? 0 : Math.min(PARTS - 1, Math.floor((gone * PARTS) / turn))
  out.whole = negative ? -whole - (out.exact ? 0 : 1) : whole
  out.part = open
  if (out.whole === 0 && out.part === 0) out.sign = 0
  else out.sign = negative ? (sense === 1 ? -1 : 1) : sense
  return out
}

export const wormCount = (out: Count, t: WormTurns): Count =>
  writeCount(out, t.turns, t.ticks, t.rest, TICKS_PER_TURN, 1)

/** `sense` - turn of the wheel about its axis for a positive turn of the worm; exact while turns x z1 < 2^53. */
export function wheelCount(out: Count, t: WormTurns, z1: number, z2: number, sense: 1 | -1): Count {
  const turn = z2 * TICKS_PER_TURN
  const teeth = t.turns * z1
  const whole = Math.floor(teeth / z2)
  const restTicks = t.rest * z1
  const carried = Math.floor(restTicks)
  const ticks = (teeth - whole * z2) * TICKS_PER_TURN + t.ticks * z1 + carried
  const more = Math.floor(ticks / turn)
  return writeCount(out, whole + more, ticks - more * turn, restTicks - carried, turn, sense)
}

/** "20 turns", "-0.35 turns", "1 turn": signed, with a plain hyphen, for machines and readers of screens. */
export function countText(count: Count): string {
  const decimals = String(count.part).padStart(4, '0').replace(/0+$/, '')
  const size = decimals === '' ? String(count.whole) : `${count.whole}.${decimals}`
  return `${count.sign < 0 ? '-' : ''}${size} ${size === '1' ? 'turn' : 'turns'}`
}

const THIN_SPACE = '\u2009'
const TRUE_MINUS = '\u2212'

/** Whole number with thin spaces from five digits on, and a true minus. */
export function wholeText(whole: number, negative: boolean): string {
  const digits = String(whole)
  const grouped = digits.length < 5 ? digits : digits.replace(/\B(?=(\d{3})+$)/g, THIN_SPACE)
  return negative ? TRUE_MINUS + grouped : grouped
}

/** Hundredths of a turn, cut: ".35" */
export const fractionText = (part: number): string => `.${String(Math.floor(part / 100)).padStart(2, '0')}`
