/**
 * How the motor's torque divides, told at the wheels: as many copies of it as the worm turns for one turn of a wheel,
 * against what each wheel takes and what is lost on the way there. It is the ledger from the shaft on, each power over
 * the speed of a wheel.
 */
import type { Reading } from '../../sim/drive/reading.ts'
import type { Machine } from '../../sim/machine/machine.ts'

export type BalanceKind = 'left' | 'right' | 'loss' | 'stored' | 'rest'

export interface BalancePart {
  readonly name: string
  readonly kind: BalanceKind
  /** At a wheel, positive where it is taken [N m] */
  readonly torque: number
}

export interface Balance {
  /** Worm turns for one turn of a wheel */
  readonly copies: number
  /** Of motor or hand [N m] */
  readonly each: number
  /** All copies [N m] */
  readonly total: number
  readonly parts: readonly BalancePart[]
}

/** To compare, with the name of its loads */
export interface OtherBalance {
  readonly name: string
  /** For the head of a column */
  readonly short: string
  readonly balance: Balance
}

/** Below this part of the total, what is left over is rounding. */
const ROUNDING = 1e-9

/** Into a capacitor that the supply has left [W]: what comes in less what is lost before the shaft and goes to it. */
const intoCapacitor = (r: Reading, speed: number): number =>
  r.inputPower -
  (r.sourceResistanceLoss + r.diodeLoss + r.bleedLoss + r.switchLoss + r.copperLoss + r.brushLoss) -
  r.motorTorque * speed

/**
 * `sense` is the way in which the machine is driven, 1 or -1 about the worm's axis. Null at standstill, where friction
 * carries what nobody can read.
 */
export function balance({ gearing }: Machine, reading: Reading, sense: 1 | -1): Balance | null {
  if (reading.wormSpeed === 0) return null
  const copies = gearing.wheelTeeth / gearing.wormStarts
  const wormSpeed = sense * reading.wormSpeed
  const wheelSpeed = wormSpeed / copies
  const intoMotion = reading.storedRate - intoCapacitor(reading, wormSpeed)
  const total = copies * reading.motorTorque
  const known: readonly BalancePart[] = [
    { name: 'Left wheel', kind: 'left', torque: reading.leftTorque },
    { name: 'Right wheel', kind: 'right', torque: reading.rightTorque },
    {
      name: 'Worm meshes',
      kind: 'loss',
      torque: (reading.meshLossLeft + reading.meshLossRight) / wheelSpeed,
    },
    {
      name: 'Wheel bearings',
      kind: 'loss',
      torque: (reading.bearingLossLeft + reading.bearingLossRight) / wheelSpeed,
    },
    { name: 'Friction and fan', kind: 'loss', torque: (reading.frictionLoss + reading.fanLoss) / wheelSpeed },
    { name: 'Into motion', kind: 'stored', torque: intoMotion / wheelSpeed },
  ]
  const rest = known.reduce((left, { torque }) => left - torque, total)
  const size = known.reduce((sum, { torque }) => sum + Math.abs(torque), Math.abs(total))
  const isRest = Math.abs(rest) > ROUNDING * size
  const told = known.filter(({ kind, torque }) => kind !== 'stored' || Math.abs(torque) > ROUNDING * size)
  return {
    copies,
    each: reading.motorTorque,
    total,
    parts: isRest ? [...told, { name: 'Unaccounted', kind: 'rest', torque: rest }] : told,
  }
}

/** Copies and what helps them lie above, what takes them below: both as long as each other. */
export function balanceLength({ total, parts }: Balance): number {
  return parts.reduce((sum, { torque }) => sum + Math.max(0, -torque), Math.max(0, total))
}
