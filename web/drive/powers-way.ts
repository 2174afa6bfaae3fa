/** The stops on the power's way that one machine has, in the order in which the power passes them, with their words. */
import type { Machine } from '../../sim/machine/machine.ts'
import { chainOf } from '../../sim/pose/electric-chain.ts'
import type { PowerStop } from '../store/view.ts'
import { caution } from './powers-way-cautions.ts'

export interface WayStop {
  readonly stop: PowerStop
  readonly name: string
  /** What happens there, in a sentence or two */
  readonly happens: string
  readonly caution: string | null
}

const SHAFT: readonly PowerStop[] = ['worm', 'wheels', 'outputs']
const MOTOR: readonly PowerStop[] = ['brushes', 'commutator', 'armature']

/** The fan stands beside the way, where the power is on the shaft. */
export function stopsOf(machine: Machine): readonly PowerStop[] {
  if (machine.motor === null) return ['socket', ...SHAFT]
  const fan: PowerStop[] = machine.rotor.fanBlades > 0 ? ['fan'] : []
  return ['socket', ...chainOf(machine), ...MOTOR, ...fan, ...SHAFT]
}

const SOURCES = { mains: 'Socket', battery: 'Battery', crank: 'Hand crank' } as const
const SETTINGS = {
  taps: 'Tap switch',
  chopper: 'Chopper',
  phase: 'Triac',
  'half-wave': 'Half-wave switch',
  crank: '',
} as const

const NAMES: Readonly<Record<Exclude<PowerStop, 'socket' | 'setting'>, string>> = {
  transformer: 'Transformer',
  rectifier: 'Rectifier',
  capacitor: 'Smoothing capacitor',
  brushes: 'Carbon brushes',
  commutator: 'Commutator',
  armature: 'Armature',
  fan: 'Fan, beside the way',
  worm: 'Worm',
  wheels: 'Wheels',
  outputs: 'Outputs',
}

function stopName({ supply, control }: Machine, stop: PowerStop): string {
  if (stop === 'socket') return SOURCES[supply.kind]
  return stop === 'setting' ? SETTINGS[control.kind] : NAMES[stop]
}

export const powersWay = (machine: Machine): readonly WayStop[] =>
  stopsOf(machine).map((stop) => ({
    stop,
    name: stopName(machine, stop),
    happens: happens(machine, stop),
    caution: caution(machine, stop),
  }))

function happens(machine: Machine, stop: PowerStop): string {
  const { supply, control, motor, gearing } = machine
  if (stop === 'socket') return SOURCE_WORDS[supply.kind]
  if (stop === 'setting') return SETTING_WORDS[control.kind]
  if (stop === 'armature') return motor?.kind === 'universal' ? SERIES_ARMATURE : MAGNET_ARMATURE
  if (stop === 'worm') return wormWords(gearing.wormStarts)
  return WORDS[stop]
}

const wormWords = (starts: number): string =>
  starts === 1
    ? 'Each turn of its one start pushes both wheels on by one tooth, one on either side.'
    : `Each turn pushes both wheels on by ${starts} teeth, one for each start.`

const SOURCE_WORDS = {
  mains: 'The voltage of the socket swings to and fro: alternating current comes in.',
  battery: 'The battery gives a steady voltage, less what its own resistance takes of it.',
  crank: 'A hand turns the crank, and the crank turns the worm.',
} as const

const SETTING_WORDS = {
  taps: 'The switch chooses a tap. Fewer turns of the second coil give less voltage, and the motor turns slower.',
  chopper: 'The switch closes and opens so fast that the motor feels only the mean of the voltage.',
  phase: 'The triac waits for a part of each half wave and lets the rest pass. The later, the less.',
  'half-wave': 'A diode lets one half wave of two pass, or is bridged, and then both pass.',
  crank: '',
} as const

const MAGNET_ARMATURE =
  'Current in the field of the magnets is torque. The faster the coils turn, the more voltage they make against the current.'
const SERIES_ARMATURE =
  'The same current makes the field. Both change sign together, so the push keeps its sense while the current swings.'

const WORDS = {
  transformer:
    'Two coils share one iron core. The changing field of the first makes a lower voltage in the second, with no wire between them.',
  rectifier:
    'Four diodes turn every other half wave over, so the current always runs the same way. It passes two of them at a time.',
  capacitor: 'It takes up charge at the crests and gives it back in the gaps between them.',
  brushes: 'Two blocks of carbon, pressed on by springs, lead the current into the turning copper.',
  commutator:
    'Its bars pass under the brushes and change the current’s sense in each coil, so the push always goes the same way round.',
  fan: 'It takes a little power from the shaft for the air that cools the motor.',
  wheels: 'Slower by the ratio, and stronger by nearly as much: friction on the teeth takes its part.',
  outputs: 'What is left does the work, on the left and on the right in opposite senses.',
} as const satisfies Partial<Record<PowerStop, string>>

/** The stop `by` further on; null before the first and after the last. */
export function stopFrom(stops: readonly PowerStop[], stop: PowerStop | null, by: 1 | -1): PowerStop | null {
  if (stop === null) return (by > 0 ? stops[0] : stops.at(-1)) ?? null
  return stops[stops.indexOf(stop) + by] ?? null
}
