/** Where the power goes: from what comes in, loss by loss, to both outputs; the rest is shown, not hidden. */
import type { Reading } from '../../sim/drive/reading.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { FormulaId } from '../instrument/formulas.ts'

export interface LedgerItem {
  readonly name: string
  readonly kind: 'input' | 'loss' | 'left' | 'right' | 'stored' | 'rest'
  readonly formula: FormulaId | null
  /** Of the input what comes in, of all others what they take; below 0 the other way round. */
  readonly watts: number
}

export interface Ledger {
  readonly input: LedgerItem
  /** In the order of the power's way */
  readonly parts: readonly LedgerItem[]
  /** What the parts do not account for [W] */
  readonly rest: number
}

interface Loss {
  readonly name: string
  readonly formula: FormulaId | null
  readonly watts: (reading: Reading) => number
  /** Whether the machine has it at all. */
  readonly present: (machine: Machine) => boolean
}

const always = () => true
const hasMotor = ({ motor }: Machine) => motor !== null
const controlled =
  (...kinds: readonly Machine['control']['kind'][]) =>
  ({ control }: Machine) =>
    kinds.includes(control.kind)

const BEFORE_SHAFT: readonly Loss[] = [
  {
    name: 'Transformer core',
    formula: 'coreLoss',
    watts: (r) => r.coreLoss,
    present: ({ transformer }) => transformer !== null,
  },
  {
    name: 'Transformer coils',
    formula: 'sourceLoss',
    watts: (r) => r.sourceResistanceLoss,
    present: ({ transformer }) => transformer !== null,
  },
  {
    name: 'Supply line',
    formula: 'sourceLoss',
    watts: (r) => r.sourceResistanceLoss,
    present: ({ supply, transformer }) => supply.kind === 'mains' && transformer === null,
  },
  {
    name: 'Inside the battery',
    formula: 'sourceLoss',
    watts: (r) => r.sourceResistanceLoss,
    present: ({ supply }) => supply.kind === 'battery',
  },
  {
    name: 'Bridge diodes',
    formula: 'diodeLoss',
    watts: (r) => r.diodeLoss,
    present: (machine) => machine.rectifier !== null && !controlled('chopper')(machine),
  },
  {
    name: 'All diodes',
    formula: 'diodeLoss',
    watts: (r) => r.diodeLoss,
    present: (machine) => machine.rectifier !== null && controlled('chopper')(machine),
  },
  {
    name: 'Freewheel diode',
    formula: 'diodeLoss',
    watts: (r) => r.diodeLoss,
    present: (machine) => machine.rectifier === null && controlled('chopper')(machine),
  },
  { name: 'Series diode', formula: 'diodeLoss', watts: (r) => r.diodeLoss, present: controlled('half-wave') },
  {
    name: 'Bleed resistor',
    formula: 'bleedLoss',
    watts: (r) => r.bleedLoss,
    present: ({ rectifier }) => rectifier !== null && rectifier.capacitance > 0,
  },
  { name: 'Switch', formula: 'switchLoss', watts: (r) => r.switchLoss, present: controlled('chopper') },
  { name: 'Triac', formula: 'switchLoss', watts: (r) => r.switchLoss, present: controlled('phase') },
  { name: 'Winding', formula: 'copperLoss', watts: (r) => r.copperLoss, present: hasMotor },
  { name: 'Brushes', formula: 'brushLoss', watts: (r) => r.brushLoss, present: hasMotor },
]

const SHAFT: readonly Loss[] = [
  { name: 'Friction', formula: 'frictionLoss', watts: (r) => r.frictionLoss, present: always },
  {
    name: 'Fan and air',
    formula: 'fanLoss',
    watts: (r) => r.fanLoss,
    present: ({ rotor }) => rotor.fanTorque > 0,
  },
]

const GEARS: readonly Loss[] = [
  { name: 'Left mesh', formula: 'meshLossLeft', watts: (r) => r.meshLossLeft, present: always },
  { name: 'Right mesh', formula: 'meshLossRight', watts: (r) => r.meshLossRight, present: always },
  {
    name: 'Wheel bearings',
    formula: 'bearingLoss',
    watts: (r) => r.bearingLossLeft + r.bearingLossRight,
    present: always,
  },
]

/** Below this part of what passes, what is left over is rounding. */
const ROUNDING = 1e-9
/** Less than this passing is standstill [W]. */
const LEAST = 1e-6

const isRounding = (watts: number, passing: number): boolean =>
  Math.abs(watts) <= ROUNDING * Math.max(Math.abs(passing), LEAST)

const inputName = ({ supply }: Machine): string =>
  supply.kind === 'mains' ? 'From the socket' : supply.kind === 'battery' ? 'From the battery' : 'By hand'

/** A wheel that its load drives gives power back before the mesh takes its share of it. */
export function ledger(machine: Machine, reading: Reading): Ledger {
  const losses = (of: readonly Loss[]): readonly LedgerItem[] =>
    of
      .filter(({ present }) => present(machine))
      .map(({ name, formula, watts }) => ({ name, kind: 'loss', formula, watts: watts(reading) }))
  const watts = reading.inputPower + reading.coreLoss
  const wheels: readonly LedgerItem[] = [
    { name: 'Left wheel', kind: 'left', formula: 'leftPower', watts: reading.outputLeft },
    { name: 'Right wheel', kind: 'right', formula: 'rightPower', watts: reading.outputRight },
  ]
  const stored: LedgerItem = {
    name: machine.rectifier?.capacitance ? 'Into motion, charge' : 'Into motion',
    kind: 'stored',
    formula: null,
    watts: reading.storedRate,
  }
  const known = [
    ...losses(BEFORE_SHAFT),
    ...(stored.watts === 0 ? [] : [stored]),
    ...losses(SHAFT),
    ...wheels.filter((wheel) => wheel.watts < 0),
    ...losses(GEARS),
    ...wheels.filter((wheel) => wheel.watts >= 0),
  ]
  const rest = known.reduce((left, item) => left - item.watts, watts)
  const passing = known.reduce((sum, item) => sum + Math.abs(item.watts), 0)
  const unaccounted: LedgerItem = { name: 'Unaccounted', kind: 'rest', formula: null, watts: rest }
  return {
    input: { name: inputName(machine), kind: 'input', formula: null, watts },
    parts: isRounding(rest, passing) ? known : [...known, unaccounted],
    rest,
  }
}
