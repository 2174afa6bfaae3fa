/** Sentences and numbers of the brush panel. */
import { SPARK_GRADES } from '../../sim/heat/commutation.ts'
import { figure, quantityText } from '../instrument/reading-text.ts'
import type { BrushFigures } from './brushes-state.ts'
import type { BrushNow } from './brushes-now.ts'

const FRACTIONS: Readonly<Record<string, string>> = { '1/4': '¼', '1/2': '½' }

/** '1 1/4' as it is printed. */
export const gradeText = (grade: string): string =>
  grade.replace(/ (\d\/\d)/, (_, part: string) => FRACTIONS[part] ?? ` ${part}`)

/** A small voltage, to what is known of it. */
export const voltText = (volts: number): string => `${figure(volts)} V`

/** A time that may be seconds or millionths of them. */
export function timeText(seconds: number): string {
  if (!Number.isFinite(seconds)) return 'none'
  if (seconds < 1e-3) return `${figure(1e6 * seconds)} µs`
  return seconds < 1 ? `${figure(1e3 * seconds)} ms` : `${figure(seconds)} s`
}

const WHICH: Readonly<Record<BrushNow['kind'], string>> = {
  now: 'Now, as it turns.',
  held: 'As it was when it was held.',
  steady: 'Running steadily as set.',
}

export const whenText = (kind: BrushNow['kind']): string => WHICH[kind]

export function decidesText(figures: BrushFigures): string {
  if (figures.barsPerSecond === 0)
    return figures.densityPerCm2 === 0
      ? 'No current flows and nothing turns.'
      : 'It stands still under power: all current goes through the same bars, which burn where they stand.'
  return figures.decides === 'turning over'
    ? 'The coils decide: their voltage while they turn over is nearer to its limit than the current density.'
    : 'The current density decides: turning the coils over is the easier part here.'
}

const LESS_THAN_A_DEGREE = 0.5

/**
 * Where the followed coil stands: '12° before the right brush'. `degrees` - from the right brush, -180 to 180; `sense` -
 * in which the drive turns.
 */
export function placeText(degrees: number, sense: 1 | -1): string {
  const left = Math.abs(degrees) > 90
  const from = left ? degrees - 180 * Math.sign(degrees) : degrees
  const brush = left ? 'left' : 'right'
  if (Math.abs(from) < LESS_THAN_A_DEGREE) return `under the middle of the ${brush} brush`
  const side = from * sense < 0 ? 'before' : 'past'
  return `${Math.round(Math.abs(from))}° ${side} the ${brush} brush`
}

/** Current of a coil with its sign, which tells the way round. */
export function signedCurrent(current: number): string {
  const text = quantityText(current, 'A')
  return current > 0 ? `+${text}` : text
}

const HOURS_DIGITS = 2

export const lifeText = (hours: number): string =>
  Number.isFinite(hours) ? `${figure(hours, HOURS_DIGITS)} h` : 'no wear at rest'

const AGAINST = {
  shorter: 'Shorter than usual.',
  usual: 'Within what is usual.',
  longer: 'Longer than usual: take it as an upper bound.',
} as const

export const lifeVerdict = ({ life, lifeAgainstUsual }: BrushFigures): string =>
  Number.isFinite(life) ? AGAINST[lifeAgainstUsual] : 'Nothing slides, so nothing wears.'

const LEVELS = 10
const MOST_LEVEL = 3

/** The index in tenths, so that the stage is told only of changes that can be seen; 0 where no spark is graded. */
export const sparkLevel = (index: number): number =>
  index < SPARK_GRADES[0]!.below ? 0 : Math.min(MOST_LEVEL, Math.round(LEVELS * index) / LEVELS)
