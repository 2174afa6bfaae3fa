/** What a start, a jam or a pull of the plug did, in sentences with the numbers read off the run. */
import {
  bleedTime,
  capacitorEnergy,
  EXTRA_LOW_VOLTAGE,
  PLUG_PIN_LIMIT,
} from '../../sim/heat/capacitor-bleed.ts'
import { fuseTime, meltingIntegral } from '../../sim/heat/fuse.ts'
import type { Machine, MeltingProtection } from '../../sim/machine/machine.ts'
import { rpm } from '../../sim/quantity/convert.ts'
import type { Wave } from '../../sim/run/waveform-record.ts'
import { figure, quantityText } from '../instrument/reading-text.ts'
import { peakOf, rmsBetween, squareIntegral, timeAt, turnsBetween } from './transient-facts.ts'
import { type Happening, LEAD } from '../../sim/run/happenings.ts'
import type { LaneId } from './waves-lanes.ts'
import { timeText } from './waves-words.ts'

/** A place on a curve that the sentences speak of; time in the wave's own [s]. */
export interface Marked {
  readonly lane: LaneId
  readonly name: string
  readonly time: number
  /** In the unit of its lane */
  readonly value: number
}

export interface Told {
  readonly sentences: readonly string[]
  readonly marks: readonly Marked[]
}

export function tell(what: Happening, wave: Wave, machine: Machine): Told {
  if (what === 'start') return tellStart(wave, machine)
  if (what === 'unplug') return tellUnplug(wave, machine)
  return tellJam(wave, machine)
}

const melting = ({ protection }: Machine): MeltingProtection | null =>
  protection.kind === 'fuse' || protection.kind === 'overload' ? protection : null

const nameOf = ({ kind }: MeltingProtection): string => (kind === 'fuse' ? 'fuse' : 'overload switch')

/** The current that the fuse carries. */
const carried = (wave: Wave, { transformer }: Machine, { side }: MeltingProtection): Float64Array =>
  side === 'primary' && transformer !== null ? wave.lineCurrent : wave.sourceCurrent

/** Part of the final speed that counts as up to speed. */
const UP = 0.9
const PER_CENT_UP = `${100 * UP} %`
/** Part of its limit from which a current's crest is at it: samples can miss it. */
const LIMITED = 0.99
/** Stretch at the end over which the settled state is read: whole periods of 50 and of 60 Hz [s] */
const END = 0.1

function tellStart(wave: Wave, machine: Machine): Told {
  const { time, speed, motorCurrent } = wave
  const { protection } = machine
  const end = time.at(-1)!
  const peak = peakOf(time, motorCurrent)
  const running = rmsBetween(time, motorCurrent, Math.max(end / 2, end - END), end)
  const final = turnsBetween(wave, Math.max(end / 2, end - END), end)
  const settled = (2 * Math.PI * final) / (end - Math.max(end / 2, end - END))
  const at = settled > 0 ? timeAt(time, speed.map(Math.abs), UP * settled, 'up') : Infinity
  const peakText = quantityText(peak.value, 'A')
  const times = running > 0 ? `, ${figure(peak.value / running, 2)} times the running current in rms,` : ''
  const marks: Marked[] = [
    {
      lane: 'motor-current',
      name: 'peak',
      time: peak.at,
      value: motorCurrent[indexAt(time, peak.at)]!,
    },
  ]
  const sentences = [
    `The current rises to ${peakText}${times} ${timeText(peak.at)} after the start: a motor at rest has no voltage of its own to hold it back.`,
  ]
  if (protection.kind === 'limit' && peak.value > LIMITED * protection.current)
    sentences.push('There the current limit holds it, by opening the switch early.')
  if (at < Infinity) {
    const value = rpm(speed[indexAt(time, at)]!)
    marks.push({ lane: 'speed', name: `${PER_CENT_UP} after ${timeText(at)}`, time: at, value })
    sentences.push(`${PER_CENT_UP} of the speed is there after ${timeText(at)}.`)
  } else if (settled === 0) sentences.push('It does not start: the load holds it.')
  return { sentences: [...sentences, ...tellFuse(wave, machine, 0, at)], marks }
}

const indexAt = (time: Float64Array, at: number): number =>
  Math.round((at / time.at(-1)!) * (time.length - 1))

/** How much of the fuse's I^2 t the event takes, or when it opened. */
function tellFuse(wave: Wave, machine: Machine, from: number, to: number): string[] {
  const fuse = melting(machine)
  if (!fuse) return []
  const opened = timeAt(wave.time, wave.fuse, 1, 'up')
  if (opened < Infinity) return [`The ${nameOf(fuse)} opens after ${timeText(opened - from)}.`]
  const until = Math.min(to, wave.time.at(-1)!)
  const passed = squareIntegral(wave.time, carried(wave, machine, fuse), from, until)
  const most = meltingIntegral(fuse.current, fuse.timeConstant)
  return [
    `${to < Infinity ? 'Until then' : 'By the end'} the ${nameOf(fuse)} has taken an I²t of ${figure(passed)} A²s; from cold it opens at ${figure(most)} A²s or more.`,
  ]
}

function tellJam(wave: Wave, machine: Machine): Told {
  const { time, speed, motorCurrent } = wave
  const end = time.at(-1)!
  const rest = timeAt(time, speed.map(Math.abs), 0, 'down', LEAD)
  const held = rmsBetween(time, motorCurrent, Math.max(LEAD, end - END / 5), end)
  const peak = peakOf(time, motorCurrent)
  if (rest === Infinity)
    return {
      sentences: ['What jams the wheel gives way: the drive turns on and drags it along.'],
      marks: [],
    }
  const turns = turnsBetween(wave, LEAD, rest)
  const sentences = [
    `It stands after ${timeText(rest - LEAD)} and ${figure(turns, 2)} turns of the motor: the worm holds both wheels, so one jam stops them both.`,
    `Then ${quantityText(held, 'A')} rms flow all the time, up to ${quantityText(peak.value, 'A')}, and become heat in the winding.`,
    ...tellOpening(wave, machine, held, end),
  ]
  const marks: Marked[] = [
    { lane: 'speed', name: `at rest after ${timeText(rest - LEAD)}`, time: rest, value: 0 },
  ]
  return { sentences, marks }
}

/** When fuse or switch opens if the locked current goes on. */
function tellOpening(wave: Wave, machine: Machine, held: number, end: number): string[] {
  const fuse = melting(machine)
  if (!fuse || held === 0) return []
  const opened = timeAt(wave.time, wave.fuse, 1, 'up')
  if (opened < Infinity) return [`The ${nameOf(fuse)} opens ${timeText(opened - LEAD)} after the jam.`]
  const current = rmsBetween(wave.time, carried(wave, machine, fuse), Math.max(LEAD, end - END / 5), end)
  const opens = fuseTime(current, fuse.current, fuse.timeConstant, wave.fuse.at(-1))
  if (opens === Infinity)
    return [`The ${nameOf(fuse)} never opens at ${quantityText(current, 'A')}; the winding must be watched.`]
  return [
    `At ${quantityText(current, 'A')} the ${nameOf(fuse)} opens about ${timeText(end - LEAD + opens)} after the jam.`,
  ]
}

function tellUnplug(wave: Wave, machine: Machine): Told {
  const { time, speed } = wave
  const rest = timeAt(time, speed.map(Math.abs), 0, 'down', LEAD)
  const resting =
    rest < Infinity ? `It comes to rest ${timeText(rest - LEAD)} later.` : 'It still turns at the end.'
  const marks: Marked[] =
    rest < Infinity
      ? [{ lane: 'speed', name: `at rest after ${timeText(rest - LEAD)}`, time: rest, value: 0 }]
      : []
  const capacitance = (machine.rectifier?.capacitance ?? 0) * 1e-6
  if (capacitance === 0)
    return {
      sentences: [
        `${machine.supply.kind === 'battery' ? 'With the battery off' : 'With the plug out'} the current dies at once and the machine coasts: nothing is stored but the motion.`,
        resting,
      ],
      marks,
    }
  return { sentences: [...tellCharge(wave, machine, capacitance), resting], marks }
}

/** What stays in the capacitor, and how long. */
function tellCharge(wave: Wave, machine: Machine, C: number): string[] {
  const { time, busVoltage } = wave
  const start = busVoltage[indexAt(time, LEAD)]!
  const left = busVoltage.at(-1)!
  const end = time.at(-1)!
  const R = (machine.rectifier?.bleedResistance ?? Infinity) * 1e3
  const safe = (limit: number): string => {
    const found = timeAt(time, busVoltage, limit, 'down', LEAD)
    return timeText(found < Infinity ? found - LEAD : end - LEAD + bleedTime(left, limit, R, C))
  }
  const limits = [EXTRA_LOW_VOLTAGE, PLUG_PIN_LIMIT].filter((limit) => start > limit)
  const times = limits.map((limit) => `${limit} V after ${safe(limit)}`)
  return [
    `The capacitor holds ${quantityText(start, 'V')}, that is ${figure(capacitorEnergy(C, start))} J, and goes on driving the motor.`,
    times.length > 0
      ? `It is down to ${times.join(', to ')}.`
      : `That is below ${PLUG_PIN_LIMIT} V from the start.`,
    `${quantityText(left, 'V')} are left at the end for the bleed resistor, whose time constant is ${timeText(R * C)}. Treat a capacitor as charged until a licensed person has measured it, by local rules.`,
  ]
}
