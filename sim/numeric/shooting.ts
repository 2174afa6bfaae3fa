/** A map of a few numbers onto themselves, as of a period's start onto its end, whose fixed point is sought. */
export interface PeriodMap {
  /** Numbers that count, first in `start` and `end` */
  unknowns: number
  readonly start: Float64Array
  readonly end: Float64Array
  /** Ordinary size of each number */
  readonly sizes: Float64Array
  /** Least value that makes sense, and the greatest */
  readonly least: Float64Array
  readonly most: Float64Array
  /** Writes `end` from `start`. */
  pass(): void
  /** Own memory of the search */
  readonly search: Search
}

export interface Search {
  /** What a pass missed its start by, in ordinary sizes, at the present and the last start */
  readonly miss: Float64Array
  readonly lastMiss: Float64Array
  readonly move: Float64Array
  /** Inverse of the map's Jacobian minus one, row by row; ordinary sizes */
  readonly inverse: Float64Array
  readonly weight: Float64Array
  passes: number
  /** Largest miss of the last pass */
  worst: number
}

export const MOST_UNKNOWNS = 3

export const newSearch = (): Search => ({
  miss: new Float64Array(MOST_UNKNOWNS),
  lastMiss: new Float64Array(MOST_UNKNOWNS),
  move: new Float64Array(MOST_UNKNOWNS),
  inverse: new Float64Array(MOST_UNKNOWNS * MOST_UNKNOWNS),
  weight: new Float64Array(MOST_UNKNOWNS),
  passes: 0,
  worst: 0,
})

/** Met to this part of the ordinary sizes. */
const MET = 1e-12
const NEARLY_MET = 1e-9
const MOST_ROUNDS = 24
/** A miss of so many ordinary sizes is on its way out of all bounds. */
const RUNAWAY = 1e3
/** Periods one after the other, where secants do not close */
const MOST_PERIODS = 2000

/**
 * Finds the start that comes back. One number is sought by secants that stay within a bracket once there is one. Of
 * several the map is taken for affine and its Jacobian learnt from what each move changed (C. G. Broyden, Mathematics
 * of Computation 19 (1965) 577, from memory), beginning with a map that forgets its start. Where that does not close,
 * periods follow each other as they would in time.
 */
export function closePeriod(map: PeriodMap): void {
  const { search } = map
  search.passes = 0
  measure(map)
  if (map.unknowns === 1) closeOne(map)
  if (map.unknowns > 1 && search.worst > MET) closeSeveral(map)
  for (let n = 0; n < MOST_PERIODS && search.worst > NEARLY_MET && search.worst < RUNAWAY; n++) {
    map.start.set(map.end)
    measure(map)
  }
}

/** Factor by which a move grows while no bracket is found and secants lead nowhere. */
const GROWTH = 4

function closeOne(map: PeriodMap): void {
  const { search, start } = map
  let [low, high] = [-Infinity, Infinity]
  let [last, lastMiss] = [Number.NaN, Number.NaN]
  let move = 0
  let best = search.worst
  for (let round = 0; round < MOST_ROUNDS && isOpen(map); round++) {
    if (best <= NEARLY_MET && search.worst > best / 2 && round > 1) return
    best = Math.min(best, search.worst)
    const at = start[0]! / map.sizes[0]!
    const miss = search.miss[0]!
    if (miss > 0) low = at
    else high = at
    const slope = (miss - lastMiss) / (at - last)
    let next = slope < 0 ? at - miss / slope : at + (GROWTH * move || miss)
    if (round === 0) next = at + miss
    if (!(next > low && next < high)) next = high - low < Infinity ? (low + high) / 2 : at + GROWTH * miss
    last = at
    lastMiss = miss
    start[0] = Math.min(map.most[0]!, Math.max(map.least[0]!, next * map.sizes[0]!))
    move = start[0] / map.sizes[0]! - at
    measure(map)
    if (map.unknowns > 1) return
  }
}

const isOpen = ({ search }: PeriodMap): boolean => search.worst > MET && search.worst < RUNAWAY

function closeSeveral(map: PeriodMap): void {
  const { search } = map
  forget(map)
  let best = search.worst
  for (let round = 0; round < MOST_ROUNDS && isOpen(map); round++) {
    moveStart(map)
    measure(map)
    if (best <= NEARLY_MET && search.worst >= best / 2) return
    best = Math.min(best, search.worst)
    learn(map)
  }
}

function measure(map: PeriodMap): void {
  const { search, start, end, sizes, unknowns } = map
  map.pass()
  if (map.unknowns !== unknowns) forget(map)
  search.passes++
  search.worst = 0
  for (let n = 0; n < map.unknowns; n++) {
    search.miss[n] = (end[n]! - start[n]!) / sizes[n]!
    search.worst = Math.max(search.worst, Math.abs(search.miss[n]!))
  }
}

/** A map without memory ends where it ends whatever its start: its Jacobian minus one is minus one. */
function forget({ search, unknowns }: PeriodMap): void {
  search.inverse.fill(0)
  for (let n = 0; n < unknowns; n++) search.inverse[n * MOST_UNKNOWNS + n] = -1
}

/** Newton's move, kept to starts that make sense. */
function moveStart(map: PeriodMap): void {
  const { search, start, sizes, unknowns } = map
  for (let n = 0; n < unknowns; n++) {
    let move = 0
    for (let m = 0; m < unknowns; m++) move -= search.inverse[n * MOST_UNKNOWNS + m]! * search.miss[m]!
    const next = Math.min(map.most[n]!, Math.max(map.least[n]!, start[n]! + move * sizes[n]!))
    search.move[n] = (next - start[n]!) / sizes[n]!
    search.lastMiss[n] = search.miss[n]!
    start[n] = next
  }
}

/** Updates the inverse so that it explains the last move: H += (s - H d) s'H / (s'H d), d the change of the miss. */
function learn({ search, unknowns }: PeriodMap): void {
  const { inverse, move, miss, lastMiss, weight } = search
  let divisor = 0
  for (let m = 0; m < unknowns; m++) {
    weight[m] = 0
    for (let n = 0; n < unknowns; n++) weight[m]! += move[n]! * inverse[n * MOST_UNKNOWNS + m]!
    divisor += weight[m]! * (miss[m]! - lastMiss[m]!)
  }
  if (Math.abs(divisor) < Number.MIN_VALUE / Number.EPSILON) return
  for (let n = 0; n < unknowns; n++) {
    let explained = 0
    for (let m = 0; m < unknowns; m++)
      explained += inverse[n * MOST_UNKNOWNS + m]! * (miss[m]! - lastMiss[m]!)
    const part = (move[n]! - explained) / divisor
    for (let m = 0; m < unknowns; m++) inverse[n * MOST_UNKNOWNS + m]! += part * weight[m]!
  }
}
