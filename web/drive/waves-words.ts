/** Sentences about a wave: what is seen, then why. */
import type { Circuit } from '../../sim/electric/circuit.ts'
import { degrees, rpm } from '../../sim/quantity/convert.ts'
import { figure, quantityText } from '../instrument/reading-text.ts'
import type { Lane } from './waves-lanes.ts'
import type { Moment } from './waves-moment.ts'
import type { Flow } from './waves-flow.ts'
import { type Meters, SINE_FORM } from './waves-meters.ts'

/** Parts of a period above this are the whole of it. */
const ALL = 0.995
/** Parts of a period below this are not spoken of. Our choice. */
const SOME = 0.01
/** Part by which a meter for sines may be wrong before it is spoken of. Our choice. */
const NEAR_A_SINE = 0.02
/** Part of a current limit at which it acts. Our choice. */
const NEARLY = 0.999

const percent = (part: number): string => `${figure(100 * part, part < ALL ? 2 : 3)}\u00a0%`

/** A span of time in the unit that reads best. */
export function timeText(seconds: number): string {
  const size = Math.abs(seconds)
  if (size >= 60) return `${figure(seconds / 60)} min`
  if (size >= 1) return `${figure(seconds)} s`
  if (size >= 1e-3 || size === 0) return `${figure(seconds * 1e3)} ms`
  return `${figure(seconds * 1e6)} µs`
}

/** What stands at the right of a lane's name. */
export function metersText(
  { unit, meters }: Lane,
  { rms, mean, least, most, swing, frequency }: Meters,
): string {
  const counted = Number.isFinite(frequency) ? `${figure(frequency)} Hz` : 'steady'
  const number = (value: number) => figure(value, unit === 'r/min' ? 4 : 3)
  if (meters === 'mean')
    return swing > 1e-3 * Math.abs(mean)
      ? `mean ${number(mean)} · ${number(least)} to ${number(most)}`
      : number(mean)
  const shownMean = Math.abs(mean) < 1e-3 * rms ? 0 : mean
  return `rms ${number(rms)} · mean ${number(shownMean)} · ${counted}`
}

/** What the words rest on. */
export interface Told {
  readonly circuit: Circuit
  readonly flow: Flow
  /** Worm speed [rad/s] */
  readonly speed: number
  /** The motor's own voltage, mean of its size over the wave [V] */
  readonly emf: number
  /** Of the motor's current, and of the voltage across the capacitor where there is one */
  readonly current: Meters
  readonly smoothed: Meters | null
  /** Whether the stretch is short enough to see a chopper switch */
  readonly resolved: boolean
}

/** One sentence on why the motor's current looks as it does. */
export function flowSentence(told: Told): string {
  const { circuit, flow, speed } = told
  if (flow.motor === 0) return noCurrent(told)
  const still =
    speed === 0
      ? 'The motor stands still and makes no voltage of its own, so only its resistance holds the current back. '
      : ''
  if (circuit.chopper) return still + chopperSentence(told, circuit.chopper)
  if (circuit.capacitance > 0) return still + smoothedSentence(told)
  if (circuit.triac) return still + firedSentence(told, circuit.triac.firingAngle)
  if (circuit.rectifier.startsWith('half-wave')) return still + halfWaveSentence(told)
  return still + bridgeSentence(told)
}

const own = (volts: number): string => `the motor’s own ${figure(volts)} V`

function noCurrent({ emf }: Told): string {
  if (emf === 0) return 'No current flows.'
  return `No current flows: the supply stays below the motor’s own ${figure(emf)} V.`
}

function bridgeSentence({ flow, emf, speed }: Told): string {
  const carried =
    flow.around > SOME
      ? ` For ${percent(flow.around)} of the time the winding drives its current on through the diodes, past the transformer.`
      : ''
  if (flow.motor > ALL)
    return `The current never stops: the winding carries it over the zeros of the supply.${carried}`
  const above =
    speed === 0
      ? 'stands above the drops of diodes and brushes'
      : `stands above ${own(emf)}, and shortly after`
  return `Current flows in pulses, ${percent(flow.motor)} of the time: only while the supply ${above}. Between the pulses the motor coasts.${carried}`
}

function smoothedSentence({ flow, smoothed }: Told): string {
  const ripple = smoothed ? ` Its voltage swings by ${quantityText(smoothed.swing, 'V')}.` : ''
  return `The capacitor is charged in short pulses near the crests, ${percent(flow.source)} of the time, and feeds the motor in between.${ripple}`
}

function firedSentence({ circuit, flow }: Told, angle: number): string {
  const after = circuit.source.angularFrequency > 0 ? angle / circuit.source.angularFrequency : 0
  const fired = `The triac fires ${figure(degrees(angle))}°, or ${timeText(after)}, after each zero of the voltage`
  if (flow.motor > ALL)
    return `${fired}, but the current of the last half cycle still flows then, so it never stops.`
  return `${fired}. From then on current flows, past the next zero too, since the winding keeps it up: ${percent(flow.motor)} of the time.`
}

function halfWaveSentence({ flow, circuit }: Told): string {
  const led =
    circuit.rectifier === 'half-wave-freewheel'
      ? ' The second diode leads the current on while the first one blocks.'
      : ''
  return `One diode lets one half wave in two through: current flows ${percent(flow.motor)} of the time, once a period.${led}`
}

type Chopper = NonNullable<Circuit['chopper']>

function chopperSentence(told: Told, chopper: Chopper): string {
  const { flow, current, resolved } = told
  const { duty, period, currentLimit } = chopper
  if (current.peak > NEARLY * currentLimit)
    return `The switch opens where the current reaches its limit of ${quantityText(currentLimit, 'A')}, and closes again when a period of ${timeText(period)} begins. In between the current runs on through the freewheel diode.`
  if (duty >= 1) return 'The switch stays closed: direct current, with nothing to chop.'
  const on = `closed ${percent(duty)} of every ${timeText(period)}`
  if (!resolved) return `${smoothedSentence(told)} The switch behind it, ${on}, is taken at its mean here.`
  const closed = `The switch is ${on}`
  if (flow.motor <= ALL)
    return `${closed}; when it opens the current runs on through the freewheel diode until it is used up.`
  return `${closed}; while it is open the winding drives its current on through the freewheel diode, and it swings by only ${quantityText(current.swing, 'A')}.`
}

/** Part of its r.m.s. value above which a current has a mean, and a meter is set to it. Our choice. */
const DIRECT = 0.01

/** The shape of a current, and what a meter that is not true-r.m.s. would make of an alternating one. */
export function meterSentence(what: string, { rms, mean, rectified, peak }: Meters): string {
  if (rms === 0) return ''
  const shown = SINE_FORM * rectified
  const crest = `crest factor ${figure(peak / rms)}, form factor ${figure(rms / rectified)}`
  const isDirect = Math.abs(mean) > DIRECT * rms
  if (isDirect || Math.abs(shown / rms - 1) < NEAR_A_SINE) return `${what}: ${crest}.`
  return `${what}: ${crest}. A meter that is not true-rms would show ${quantityText(shown, 'A')} instead of ${quantityText(rms, 'A')}.`
}

/** Of which moment the waves are; the speed rounded, since cycle means and waveform differ in the fourth digit. */
export function momentText({ kind, speed, input, open, machine }: Moment): string {
  const still = input.jammed === 'none' ? 'standing still' : 'jammed'
  const at = speed === 0 ? still : `about ${figure(Math.abs(rpm(speed)))}\u00a0r/min`
  const setting = `setting ${input.setting + 1}`
  const opened = machine.protection.kind === 'overload' ? 'overload switch open' : 'fuse open'
  const plugged = input.connected ? setting : open ? opened : 'unplugged'
  if (kind === 'now') return `Now, ${plugged}, ${at}`
  if (kind === 'held') return `Held as it was, ${plugged}, ${at}`
  return speed === 0 ? `Under power, ${setting}, ${still}` : `Steady running, ${setting}, ${at}`
}

/** Said where cycle means at a steady speed no longer stand for what happens. */
export const rippleSentence = (ripple: number | null): string =>
  ripple !== null
    ? ` The speed swings by ${percent(ripple)} within each period, so the waves are worked out with the shaft moving; the readings, at a steady speed, differ a little.`
    : ''
