import type { Circuit } from './circuit.ts'
import type { CurrentCycle } from './cycle.ts'
import { COLUMNS, storeCycle, takeCycle, WATCHED } from './cycle-columns.ts'
import type { SeriesCircuit } from './series-cycle.ts'
import { seriesOf, solveSeries } from './series-cycle.ts'
import type { SteadyWork } from './steady-cycle.ts'
import { newSteadyWork, solveCycle } from './steady-cycle.ts'

/**
 * Period means of one circuit over speed, for circuits without a closed form. Speed is cut into wide cells, and
 * a cell into halves, wherever a polynomial through seven equally spaced solutions does not foretell the
 * solutions in between. A cell is made when a speed in it is first asked for; looking up what is there
 * allocates nothing. Every mean is the same weighted sum of solutions, so a balance of powers that holds in
 * each of them holds between them too.
 */
export interface CycleTable {
  readonly circuit: Circuit
  /** The same as a motor in series with the mains, which is solved faster; null where it is none */
  readonly series: SeriesCircuit | null
  readonly work: SteadyWork
  /** Where means are asked for [rad/s] */
  speed: number
  /** Width of the widest cells [rad/s] */
  readonly width: number
  /** Which cell each wide stretch of speed has; 0 where there is none yet */
  readonly wide: Int32Array
  /** Which cells the lower and the upper half of each cell have */
  readonly halves: Int32Array
  /** 1 where a cell's polynomial needs no halving */
  readonly isFine: Uint8Array
  /** Seven rows of means a cell; made with the first cell */
  rows: Float64Array
  /** Cells in use, with the empty one at 0 */
  used: number
  /** The stretch at hand: where it begins and how long it is [rad/s]; a place in it, counted in points */
  low: number
  span: number
  place: number
  readonly weights: Float64Array
  readonly sums: Float64Array
}

const POINTS = 7
const LAST = POINTS - 1
/** Barycentric weights of seven equally spaced points: binomial coefficients of alternating sign. */
const BARYCENTRIC = new Float64Array([1, -6, 15, -20, 15, -6, 1])
/** Wide cells below and above standstill; further out every speed is solved by itself */
const CELLS_BELOW = 64
const CELLS_ABOVE = 256
const MOST_CELLS = 768
/** Halvings of a wide cell, where the current's regime changes and no polynomial follows */
const MOST_HALVINGS = 12
/** What a cell may miss its new solutions by, as a part of its largest; its halves are some hundred times nearer. */
const FORETOLD = 5e-7

/** `width` - a speed over which the torque changes, but not beyond recognition [rad/s], > 0 */
export const newCycleTable = (circuit: Circuit, width: number): CycleTable => ({
  circuit,
  series: seriesOf(circuit),
  work: newSteadyWork(),
  speed: 0,
  width,
  wide: new Int32Array(CELLS_BELOW + CELLS_ABOVE),
  halves: new Int32Array(2 * MOST_CELLS),
  isFine: new Uint8Array(MOST_CELLS),
  rows: new Float64Array(0),
  used: 1,
  low: 0,
  span: 0,
  place: 0,
  weights: new Float64Array(POINTS),
  sums: new Float64Array(COLUMNS),
})

/** Solves the means at table.speed. */
export function solveTabulated(cycle: CurrentCycle, table: CycleTable): void {
  const { series, circuit, speed, work } = table
  if (series) {
    series.pulse.speed = speed
    if (solveSeries(cycle, series)) return
  }
  solveCycle(cycle, circuit, speed, work)
}

/** Fills the means at table.speed from the cells, which are made where they are missing. */
export function lookUpCycle(cycle: CurrentCycle, table: CycleTable): void {
  const { width, wide, halves, isFine } = table
  const n = Math.floor(table.speed / width) + CELLS_BELOW
  if (!(n >= 0 && n < wide.length)) {
    solveTabulated(cycle, table)
    return
  }
  makeRoom(table)
  table.low = (n - CELLS_BELOW) * width
  table.span = width
  let cell = wide[n]!
  if (cell === 0) {
    cell = addWide(cycle, table)
    wide[n] = cell
  }
  while (isFine[cell] === 0) {
    table.span /= 2
    const upper = table.speed >= table.low + table.span ? 1 : 0
    if (upper === 1) table.low += table.span
    let half = halves[2 * cell + upper]!
    if (half === 0) {
      half = addHalf(cycle, table, cell, upper)
      halves[2 * cell + upper] = half
    }
    cell = half
  }
  interpolate(cycle, table, cell)
}

/** A cell not in use yet. */
function freeCell(table: CycleTable): number {
  if (table.rows.length === 0) table.rows = new Float64Array(MOST_CELLS * POINTS * COLUMNS)
  const cell = table.used
  table.used = cell + 1
  table.isFine[cell] = 0
  table.halves[2 * cell] = 0
  table.halves[2 * cell + 1] = 0
  return cell
}

/**
 * Room for a wide cell with all halvings down to one speed: without it all cells are let go, which no drive that has
 * a regime or two needs.
 */
function makeRoom(table: CycleTable): void {
  if (table.used + MOST_HALVINGS + 1 <= MOST_CELLS) return
  table.used = 1
  table.wide.fill(0)
}

/** Solves what stands at one point of a cell in the present stretch. */
function solveRow(cycle: CurrentCycle, table: CycleTable, cell: number, point: number): void {
  const asked = table.speed
  table.speed = table.low + (table.span * point) / LAST
  solveTabulated(cycle, table)
  storeCycle(table.rows, (cell * POINTS + point) * COLUMNS, cycle, table.speed)
  table.speed = asked
}

function addWide(cycle: CurrentCycle, table: CycleTable): number {
  const cell = freeCell(table)
  for (let point = 0; point < POINTS; point++) solveRow(cycle, table, cell, point)
  return cell
}

/** Of the seven solutions of a half four are those of the whole; the other three tell how good that was. */
function addHalf(cycle: CurrentCycle, table: CycleTable, whole: number, upper: number): number {
  const cell = freeCell(table)
  for (let point = 0; point < POINTS; point += 2) {
    const from = (whole * POINTS + (LAST / 2) * upper + point / 2) * COLUMNS
    table.rows.copyWithin((cell * POINTS + point) * COLUMNS, from, from + COLUMNS)
  }
  for (let point = 1; point < POINTS; point += 2) solveRow(cycle, table, cell, point)
  const narrowest = table.span <= table.width / 2 ** MOST_HALVINGS
  table.isFine[cell] = narrowest || foretells(table, whole, cell, upper) ? 1 : 0
  return cell
}

/** Whether the whole's polynomial meets the new solutions of its half in all columns that matter. */
function foretells(table: CycleTable, whole: number, half: number, upper: number): boolean {
  const { rows, sums } = table
  for (let point = 1; point < POINTS; point += 2) {
    table.place = (LAST * upper) / 2 + point / 2
    sumRows(table, whole)
    for (let column = 0; column < WATCHED; column++) {
      let size = 0
      for (let n = 0; n < POINTS; n++)
        size = Math.max(size, Math.abs(rows[(half * POINTS + n) * COLUMNS + column]!))
      const miss = sums[column]! - rows[(half * POINTS + point) * COLUMNS + column]!
      if (Math.abs(miss) > FORETOLD * size) return false
    }
  }
  return true
}

function interpolate(cycle: CurrentCycle, table: CycleTable, cell: number): void {
  table.place = (LAST * (table.speed - table.low)) / table.span
  sumRows(table, cell)
  takeCycle(cycle, table.sums, table.speed)
}

/** Fills the sums with the cell's polynomials at table.place. */
function sumRows(table: CycleTable, cell: number): void {
  const { rows, weights, sums } = table
  weigh(table)
  for (let column = 0; column < COLUMNS; column++) {
    let sum = 0
    for (let n = 0; n < POINTS; n++) sum += weights[n]! * rows[(cell * POINTS + n) * COLUMNS + column]!
    sums[column] = sum
  }
}

/** Weights of the points at table.place; they add up to 1. */
function weigh({ weights, place }: CycleTable): void {
  let sum = 0
  for (let n = 0; n < POINTS; n++) {
    const distance = place - n
    if (distance === 0) {
      weights.fill(0)
      weights[n] = 1
      return
    }
    weights[n] = BARYCENTRIC[n]! / distance
    sum += weights[n]!
  }
  for (let n = 0; n < POINTS; n++) weights[n]! /= sum
}
