import type { CurrentCycle } from './cycle.ts'

/** Columns of a table of period means. */
const TORQUE = 0
const MEAN = 1
const SQUARE = 2
/** Source power less what becomes torque at the speed [W] */
const LOST = 3
/** The columns before this one are smooth where the circuit's regime does not change. */
export const WATCHED = 4
const PEAK = 4
const CONDUCTING = 5
const MOTOR_VOLTAGE = 6
const SOURCE_MEAN = 7
const SOURCE_SQUARE = 8
const QUADRATURE = 9
const RECTIFIED = 10
const SWITCHED = 11
const FREEWHEEL = 12
const CAPACITOR = 13
const CAPACITOR_SQUARE = 14
const RIPPLE = 15
const REVERSAL = 16
export const COLUMNS = 17

/** Writes the means of a cycle solved at `speed` [rad/s] as a row that begins at `from`. */
export function storeCycle(rows: Float64Array, from: number, cycle: CurrentCycle, speed: number): void {
  rows[from + TORQUE] = cycle.torque
  rows[from + MEAN] = cycle.mean
  rows[from + SQUARE] = cycle.square
  rows[from + LOST] = cycle.sourcePower - cycle.torque * speed
  rows[from + PEAK] = cycle.peak
  rows[from + CONDUCTING] = cycle.conducting
  rows[from + MOTOR_VOLTAGE] = cycle.motorVoltage
  rows[from + SOURCE_MEAN] = cycle.sourceMean
  rows[from + SOURCE_SQUARE] = cycle.sourceSquare
  rows[from + QUADRATURE] = cycle.sourceQuadrature
  rows[from + RECTIFIED] = cycle.rectifiedMean
  rows[from + SWITCHED] = cycle.switchMean
  rows[from + FREEWHEEL] = cycle.freewheelMean
  rows[from + CAPACITOR] = cycle.capacitorMean
  rows[from + CAPACITOR_SQUARE] = cycle.capacitorSquare
  rows[from + RIPPLE] = cycle.capacitorRipple
  rows[from + REVERSAL] = cycle.reversal
}

/**
 * Reads means at `speed` back. The source power is what is lost and what becomes torque at that speed, not its
 * own interpolation, so that the balance closes as well as it does in the rows.
 */
export function takeCycle(cycle: CurrentCycle, row: Float64Array, speed: number): void {
  cycle.torque = row[TORQUE]!
  cycle.mean = row[MEAN]!
  cycle.square = row[SQUARE]!
  cycle.sourcePower = row[LOST]! + row[TORQUE]! * speed
  cycle.peak = row[PEAK]!
  cycle.conducting = row[CONDUCTING]!
  cycle.motorVoltage = row[MOTOR_VOLTAGE]!
  cycle.sourceMean = row[SOURCE_MEAN]!
  cycle.sourceSquare = row[SOURCE_SQUARE]!
  cycle.sourceQuadrature = row[QUADRATURE]!
  cycle.rectifiedMean = row[RECTIFIED]!
  cycle.switchMean = row[SWITCHED]!
  cycle.freewheelMean = row[FREEWHEEL]!
  cycle.capacitorMean = row[CAPACITOR]!
  cycle.capacitorSquare = row[CAPACITOR_SQUARE]!
  cycle.capacitorRipple = row[RIPPLE]!
  cycle.reversal = row[REVERSAL]!
}
