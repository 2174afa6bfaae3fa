/** What must fit together in a machine whose parts are each right by themselves. */
import { MOST_ITEMS } from './form.ts'
import type { Control, Motor, Supply } from './machine.ts'
import { ownValue } from './path.ts'
import type { Problem } from './problem.ts'
import { told, toldNumber } from './told.ts'

interface Fitting {
  readonly supply: Supply['kind']
  readonly transformer: boolean
  readonly rectifier: boolean
  readonly motor: Motor['kind'] | null
}

/** The ways of setting the speed that are computed, each with what it needs around it. */
const FITTINGS: Readonly<Record<Control['kind'], Fitting>> = {
  taps: { supply: 'mains', transformer: true, rectifier: true, motor: 'permanent-magnet' },
  chopper: { supply: 'battery', transformer: false, rectifier: false, motor: 'permanent-magnet' },
  phase: { supply: 'mains', transformer: false, rectifier: false, motor: 'universal' },
  crank: { supply: 'crank', transformer: false, rectifier: false, motor: null },
}

const error = (path: string, message: string): Problem => ({ path, severity: 'error', message })
const warning = (path: string, message: string): Problem => ({ path, severity: 'warning', message })

const controlsBehind = (supply: unknown): string =>
  Object.entries(FITTINGS)
    .filter(([, fitting]) => fitting.supply === supply)
    .map(([control]) => `'${control}'`)
    .join(' or ')

const isFittingOf = (kind: unknown): kind is Control['kind'] =>
  typeof kind === 'string' && Object.hasOwn(FITTINGS, kind)

function supplyProblems(control: Control['kind'], kind: unknown): Problem[] {
  const needed = FITTINGS[control].supply
  const possible = controlsBehind(kind)
  if (kind === needed || possible === '') return []
  const message =
    `must be '${needed}' where the control is '${control}', ` +
    `got '${String(kind)}', which goes with ${possible}`
  return [error('supply.kind', message)]
}

function presenceProblems(
  control: Control['kind'],
  part: 'transformer' | 'rectifier',
  value: unknown,
): Problem[] {
  const needed = FITTINGS[control][part]
  if (value === undefined || needed === (value !== null)) return []
  const message = needed
    ? `must be given where the control is '${control}', got null`
    : `must be null where the control is '${control}', got a ${part}`
  return [error(part, message)]
}

function motorProblems(control: Control['kind'], motor: unknown): Problem[] {
  const needed = FITTINGS[control].motor
  if (motor === undefined) return []
  if (motor === null) {
    return needed === null
      ? []
      : [error('motor', `must be '${needed}' where the control is '${control}', got null`)]
  }
  if (needed === null) return [error('motor', `must be null where the control is '${control}', got a motor`)]
  const kind = ownValue(motor, 'kind')
  if (kind === needed || (kind !== 'permanent-magnet' && kind !== 'universal')) return []
  return [error('motor.kind', `must be '${needed}' where the control is '${control}', got '${kind}'`)]
}

/** Supply, transformer, rectifier, control and motor that do not go together, told from any value. */
export function fittingProblems(machine: unknown): Problem[] {
  const control = ownValue(ownValue(machine, 'control'), 'kind')
  if (!isFittingOf(control)) return []
  return [
    ...supplyProblems(control, ownValue(ownValue(machine, 'supply'), 'kind')),
    ...presenceProblems(control, 'transformer', ownValue(machine, 'transformer')),
    ...presenceProblems(control, 'rectifier', ownValue(machine, 'rectifier')),
    ...motorProblems(control, ownValue(machine, 'motor')),
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

/** Numbers and names that do not go together, told from any value. */
export function togetherProblems(machine: unknown): Problem[] {
  const supply = ownValue(machine, 'supply')
  return [
    ...(ownValue(supply, 'kind') === 'mains'
      ? mainsProblems(ownValue(supply, 'voltage'), ownValue(supply, 'frequency'))
      : []),
    ...loadNameProblems(ownValue(ownValue(machine, 'outputs'), 'loads')),
  ]
}
