/** What must fit together in a machine whose parts are each right by themselves. */
import { MOST_ITEMS } from './form.ts'
import type { Motor } from './machine.ts'
import type { Control, Supply } from './supply.ts'
import { ownValue } from './path.ts'
import type { Problem } from './problem.ts'
import { told, toldNumber } from './told.ts'
import { rounded } from '../gear/gear-problem.ts'

interface Fitting {
  readonly control: Control['kind']
  readonly supply: Supply['kind']
  readonly transformer: boolean
  readonly rectifier: boolean
  readonly motor: Motor['kind'] | null
}

/** The chains that are computed, each by what it is made of. */
const FITTINGS: readonly Fitting[] = [
  { control: 'taps', supply: 'mains', transformer: true, rectifier: true, motor: 'permanent-magnet' },
  { control: 'chopper', supply: 'battery', transformer: false, rectifier: false, motor: 'permanent-magnet' },
  { control: 'chopper', supply: 'battery', transformer: false, rectifier: false, motor: 'universal' },
  { control: 'chopper', supply: 'mains', transformer: false, rectifier: true, motor: 'permanent-magnet' },
  { control: 'phase', supply: 'mains', transformer: false, rectifier: false, motor: 'universal' },
  { control: 'phase', supply: 'mains', transformer: false, rectifier: true, motor: 'permanent-magnet' },
  { control: 'half-wave', supply: 'mains', transformer: false, rectifier: false, motor: 'universal' },
  { control: 'half-wave', supply: 'mains', transformer: false, rectifier: false, motor: 'permanent-magnet' },
  { control: 'crank', supply: 'crank', transformer: false, rectifier: false, motor: null },
]

const error = (path: string, message: string): Problem => ({ path, severity: 'error', message })
const warning = (path: string, message: string): Problem => ({ path, severity: 'warning', message })

const quoted = (kinds: readonly (string | null)[]): string =>
  [...new Set(kinds)].map((kind) => (kind === null ? 'null' : `'${kind}'`)).join(' or ')

function supplyProblems(control: string, fitting: readonly Fitting[], kind: unknown): Problem[] {
  const elsewhere = FITTINGS.filter(({ supply }) => supply === kind)
  if (fitting.some(({ supply }) => supply === kind) || elsewhere.length === 0) return []
  const message =
    `must be ${quoted(fitting.map(({ supply }) => supply))} where the control is '${control}', ` +
    `got '${String(kind)}', which goes with ${quoted(elsewhere.map((each) => each.control))}`
  return [error('supply.kind', message)]
}

/** Why a part has no place there, where that is more than that nobody builds it. */
const reasonAgainst = (control: string, part: 'transformer' | 'rectifier'): string =>
  control === 'half-wave' && part === 'transformer'
    ? ', since one half wave alone would magnetise its core'
    : ''

function presenceProblems(
  where: string,
  fitting: readonly Fitting[],
  part: 'transformer' | 'rectifier',
  value: unknown,
): Problem[] {
  const control = fitting[0]?.control ?? ''
  const needed = new Set(fitting.map((each) => each[part]))
  if (value === undefined || needed.size !== 1 || needed.has(value !== null)) return []
  const message = needed.has(true)
    ? `must be given where ${where}, got null`
    : `must be null where ${where}, got a ${part}${reasonAgainst(control, part)}`
  return [error(part, message)]
}

function motorProblems(control: string, fitting: readonly Fitting[], motor: unknown): Problem[] {
  if (motor === undefined) return []
  const motors = fitting.map((each) => each.motor)
  const where = `where the control is '${control}'`
  if (motor === null)
    return motors.includes(null) ? [] : [error('motor', `must be ${quoted(motors)} ${where}, got null`)]
  if (motors.every((each) => each === null)) return [error('motor', `must be null ${where}, got a motor`)]
  const kind = ownValue(motor, 'kind')
  if (kind !== 'permanent-magnet' && kind !== 'universal') return []
  if (motors.includes(kind)) return []
  return [error('motor.kind', `must be ${quoted(motors)} ${where}, got '${kind}'`)]
}

/** Supply, transformer, rectifier, control and motor that do not go together, told from any value. */
export function fittingProblems(machine: unknown): Problem[] {
  const control = ownValue(ownValue(machine, 'control'), 'kind')
  const ofControl = FITTINGS.filter((each) => each.control === control)
  if (typeof control !== 'string' || ofControl.length === 0) return []
  const supply = ownValue(ownValue(machine, 'supply'), 'kind')
  const motor = ownValue(machine, 'motor')
  const motorKind = ownValue(motor, 'kind')
  const behind = ofControl.filter((each) => each.supply === supply)
  const offered = behind.length > 0 ? behind : ofControl
  const turning = offered.filter((each) => each.motor === motorKind)
  const chain = turning.length > 0 ? turning : offered
  const where =
    turning.length > 0 && turning.length < ofControl.length
      ? `the control is '${control}', the supply '${String(supply)}' and the motor '${String(motorKind)}'`
      : `the control is '${control}'`
  return [
    ...supplyProblems(control, ofControl, supply),
    ...presenceProblems(where, chain, 'transformer', ownValue(machine, 'transformer')),
    ...presenceProblems(where, chain, 'rectifier', ownValue(machine, 'rectifier')),
    ...motorProblems(control, offered, motor),
  ]
}

/** Voltages from here up are taken for a 230 V supply. [V] */
const NAMED_230_FROM = 180
/** Limits of a 230 V supply, 10 % each way. Source: IEC 60038, from memory. [V] */
const LIMITS_230 = [207, 253] as const
/**
 * Limits of the frequency: usual, and at all times. Source: EN 50160, for 50 Hz in a synchronous network;
 * those for 60 Hz are the same distances from it, by our choice. [Hz]
 */
const USUAL_FREQUENCIES = { 50: [49.5, 50.5], 60: [59.5, 60.5] } as const
const ALL_FREQUENCIES = { 50: [47, 52], 60: [57, 62] } as const

const inside = (value: number, [least, most]: readonly [number, number]): boolean =>
  value >= least && value <= most

function mainsProblems(voltage: unknown, frequency: unknown): Problem[] {
  const problems: Problem[] = []
  if (typeof voltage === 'number' && voltage >= NAMED_230_FROM && !inside(voltage, LIMITS_230)) {
    const message = `is usually ${LIMITS_230.join(' to ')} V at a 230 V supply, got ${toldNumber(voltage)} V`
    problems.push(warning('supply.voltage', message))
  }
  if (typeof frequency !== 'number') return problems
  const nominal = frequency < 55 ? 50 : 60
  const got = `got ${toldNumber(frequency)} Hz`
  if (!inside(frequency, ALL_FREQUENCIES[nominal])) {
    // the field's own range has told what lies outside 47 to 62 Hz
    if (!inside(frequency, [ALL_FREQUENCIES[50][0], ALL_FREQUENCIES[60][1]])) return problems
    problems.push(error('supply.frequency', `must be 47 to 52 Hz or 57 to 62 Hz, ${got}`))
  } else if (!inside(frequency, USUAL_FREQUENCIES[nominal])) {
    const usual = USUAL_FREQUENCIES[nominal].join(' to ')
    problems.push(warning('supply.frequency', `is usually ${usual} Hz at a ${nominal} Hz supply, ${got}`))
  }
  return problems
}

function loadNameProblems(loads: unknown): Problem[] {
  if (!Array.isArray(loads)) return []
  // by place, since an array from anywhere may bring its own constructor for map
  const length = Math.min(loads.length, MOST_ITEMS)
  const names = Array.from({ length }, (_, i) => ownValue(ownValue(loads, String(i)), 'name'))
  return names.flatMap((name, i) =>
    typeof name !== 'string' || names.indexOf(name) === i
      ? []
      : [
          error(
            `outputs.loads[${i}].name`,
            `must differ from the other loads' names, got ${told(name)} again`,
          ),
        ],
  )
}

/** A capacitor needs something that limits its charging current, and has no place behind a triac. */
function capacitorProblems(machine: unknown): Problem[] {
  const rectifier = ownValue(machine, 'rectifier')
  const capacitance = ownValue(rectifier, 'capacitance')
  const supply = ownValue(machine, 'supply')
  if (typeof capacitance !== 'number' || ownValue(supply, 'kind') !== 'mains') return []
  const control = ownValue(ownValue(machine, 'control'), 'kind')
  const path = 'rectifier.capacitance'
  if (control === 'phase' && capacitance > 0)
    return [
      error(
        path,
        `must be 0 behind a triac, got ${toldNumber(capacitance)} uF; take the speed with a chopper`,
      ),
    ]
  if (control === 'chopper' && capacitance === 0)
    return [error(path, 'must be above 0 where a chopper stands behind the bridge, got 0 uF')]
  const resistance = ownValue(supply, 'resistance')
  if (control === 'chopper' && resistance === 0) {
    const message =
      'must be above 0 ahead of a smoothing capacitor, whose charging current it limits, got 0 ohm'
    return [error('supply.resistance', message)]
  }
  return []
}

/** Alternating current in both half waves would only shake a motor with fixed magnets. */
function halfWaveProblems(machine: unknown): Problem[] {
  const control = ownValue(machine, 'control')
  const steps = ownValue(control, 'steps')
  const isMagnet = ownValue(ownValue(machine, 'motor'), 'kind') === 'permanent-magnet'
  if (ownValue(control, 'kind') !== 'half-wave' || !isMagnet || !Array.isArray(steps)) return []
  const length = Math.min(steps.length, MOST_ITEMS)
  return Array.from({ length }, (_, i) => i)
    .filter((i) => ownValue(ownValue(steps, String(i)), 'waves') === 2)
    .map((i) => error(`control.steps[${i}].waves`, 'must be 1 where the motor has fixed magnets, got 2'))
}

/** Behind a crank there is nothing to grow warm, to wear or to protect. */
function crankProblems(machine: unknown): Problem[] {
  if (ownValue(ownValue(machine, 'control'), 'kind') !== 'crank') return []
  const problems = (['thermal', 'brushes'] as const)
    .filter((part) => (ownValue(machine, part) ?? null) !== null)
    .map((part) => error(part, 'must be null behind a crank, got a group'))
  const protection = ownValue(ownValue(machine, 'protection'), 'kind')
  if (typeof protection === 'string' && protection !== 'none')
    problems.push(error('protection.kind', `must be 'none' behind a crank, got ${told(protection)}`))
  return problems
}

function protectionProblems(machine: unknown): Problem[] {
  const kind = ownValue(ownValue(machine, 'protection'), 'kind')
  const control = ownValue(ownValue(machine, 'control'), 'kind')
  if (kind !== 'limit' || control === 'chopper' || typeof control !== 'string') return []
  const message = `must be 'none', 'fuse' or 'overload' where the control is '${control}', got 'limit', which needs a chopper`
  return ownValue(machine, 'motor') === null ? [] : [error('protection.kind', message)]
}

/** What no bench gives: the number of bars that fit, and brushes that leave room between them. */
function brushProblems(machine: unknown): Problem[] {
  const brushes = ownValue(machine, 'brushes')
  const arc = ownValue(brushes, 'arcWidth')
  const diameter = ownValue(brushes, 'commutatorDiameter')
  if (typeof arc !== 'number' || typeof diameter !== 'number' || !Number.isFinite(arc)) return []
  const most = (Math.PI * diameter) / 4
  if (arc < most) return []
  const message = `should be below ${rounded(most)} mm, a quarter of the way round the commutator, got ${toldNumber(arc)} mm`
  return [warning('brushes.arcWidth', message)]
}

/** Numbers and names that do not go together, told from any value. */
export function togetherProblems(machine: unknown): Problem[] {
  const supply = ownValue(machine, 'supply')
  return [
    ...(ownValue(supply, 'kind') === 'mains'
      ? mainsProblems(ownValue(supply, 'voltage'), ownValue(supply, 'frequency'))
      : []),
    ...capacitorProblems(machine),
    ...halfWaveProblems(machine),
    ...loadNameProblems(ownValue(ownValue(machine, 'outputs'), 'loads')),
    ...crankProblems(machine),
    ...brushProblems(machine),
    ...protectionProblems(machine),
  ]
}
