/** Where the power goes: from what comes in, loss by loss, to both outputs; the rest is shown, not hidden. */
import type { Reading } from '../../sim/drive/reading.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import type { FormulaId } from './formulas.ts'

export interface LedgerItem {
  readonly name: string
  readonly kind: 'input' | 'loss' | 'left' | 'right' | 'stored' | 'rest'
  readonly formula: FormulaId | null
  readonly watts: number
  /** Where its bar begins and how long it is, in parts of the widest sum. */
  readonly from: number
  readonly length: number
}

interface Row {
  readonly name: string
  readonly kind: LedgerItem['kind']
  readonly formula: FormulaId | null
  readonly watts: (reading: Reading) => number
  /** Whether the machine has it at all. */
  readonly present: (machine: Machine) => boolean
}

const loss = (
  name: string,
  formula: FormulaId | null,
  watts: Row['watts'],
  present: Row['present'] = () => true,
): Row => ({ name, kind: 'loss', formula, watts, present })

const hasBridge = ({ rectifier }: Machine) => rectifier !== null
const hasMotor = ({ motor }: Machine) => motor !== null
const isChopped = ({ control }: Machine) => control.kind === 'chopper'

const LOSSES: readonly Row[] = [
  loss(
    'Transformer core',
    'coreLoss',
    (r) => r.coreLoss,
    ({ transformer }) => transformer !== null,
  ),
  loss(
    'Supply resistance',
    null,
    (r) => r.sourceResistanceLoss,
    ({ supply }) => supply.kind !== 'crank',
  ),
  loss('Bridge diodes', 'diodeLoss', (r) => r.diodeLoss, hasBridge),
  loss('Freewheel diode', null, (r) => r.diodeLoss, isChopped),
  loss('Switch', null, (r) => r.switchLoss, isChopped),
  loss('Winding', 'copperLoss', (r) => r.copperLoss, hasMotor),
  loss('Brushes', 'brushLoss', (r) => r.brushLoss, hasMotor),
  loss('Friction', 'frictionLoss', (r) => r.frictionLoss),
  loss(
    'Fan and air',
    'fanLoss',
    (r) => r.fanLoss,
    ({ rotor }) => rotor.fanTorque > 0,
  ),
  loss('Left mesh', 'meshLossLeft', (r) => r.meshLossLeft),
  loss('Right mesh', 'meshLossRight', (r) => r.meshLossRight),
  loss('Wheel bearings', 'bearingLoss', (r) => r.bearingLossLeft + r.bearingLossRight),
]

/** Below this part of the input, what is left over is rounding. */
const ROUNDING = 1e-9

export interface Ledger {
  readonly items: readonly LedgerItem[]
  /** What all items but the first add up to, to be compared with the first [W]. */
  readonly total: number
}

export function ledger(machine: Machine, reading: Reading): Ledger {
  const input = reading.inputPower + reading.coreLoss
  const losses = LOSSES.filter(({ present }) => present(machine)).map((row) => ({
    ...row,
    watts: row.watts(reading),
  }))
  const outputs = [
    { name: 'Left wheel', kind: 'left' as const, formula: 'leftPower' as const, watts: reading.outputLeft },
    {
      name: 'Right wheel',
      kind: 'right' as const,
      formula: 'rightPower' as const,
      watts: reading.outputRight,
    },
  ]
  const stored = { name: 'Into motion', kind: 'stored' as const, formula: null, watts: reading.storedRate }
  const known = [...losses, ...outputs, stored].reduce((sum, { watts }) => sum + watts, 0)
  const rest = { name: 'Unaccounted', kind: 'rest' as const, formula: null, watts: input - known }
  const least = ROUNDING * Math.max(Math.abs(input), 1e-3)
  const shown = [...losses, stored, ...(Math.abs(rest.watts) > least ? [rest] : []), ...outputs]
  const gains = shown.reduce((sum, { watts }) => sum + Math.max(0, -watts), 0)
  const scale = Math.max(input + gains, Number.MIN_VALUE)
  let from = 0
  const bars = shown.map((item) => {
    const length = Math.max(0, item.watts) / scale
    const bar = { ...item, from, length }
    from += length
    return bar
  })
  const whole: LedgerItem = {
    name: 'Taken in',
    kind: 'input',
    formula: null,
    watts: input,
    from: 0,
    length: Math.max(0, input) / scale,
  }
  return { items: [whole, ...bars], total: shown.reduce((sum, { watts }) => sum + watts, 0) }
}
