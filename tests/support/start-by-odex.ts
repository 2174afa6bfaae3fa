import { Solver } from 'odex'

/**
 * The start of a magnet motor behind a bridge, written a second time and integrated with odex, from one change of
 * mode to the next. Source current and emf keep their own signs here, no frame turns over, and the ends of modes
 * are met by false position on whole solutions.
 */
export interface BridgeStart {
  readonly emfPeak: number
  readonly angularFrequency: number
  readonly sourceResistance: number
  readonly sourceInductance: number
  readonly motorResistance: number
  readonly motorInductance: number
  readonly diodeDrops: number
  readonly brushDrop: number
  readonly emfConstant: number
  /** Inertia at the worm while it drives both wheels [kg m2] */
  readonly inertia: number
  /** Torque against motion at speed w > 0 [N m] */
  readonly drag: (w: number) => number
}

type Mode = 'rest' | 'off' | 'conduct' | 'overlap'
type Rates = (t: number, y: number[]) => number[]

const TOLERANCE = 1e-13

/** y = motor current, source current, speed, angle */
export function startByOdex(
  given: BridgeStart,
  until: number,
): { speed: number; angle: number; peak: number } {
  const { emfPeak, angularFrequency, sourceResistance: Rs, sourceInductance: Ls } = given
  const { motorResistance: Ra, motorInductance: La, diodeDrops, brushDrop, emfConstant: k } = given
  const emf = (t: number) => emfPeak * Math.sin(angularFrequency * t)
  const against = (w: number) => k * w + diodeDrops + brushDrop
  const gain = (i: number, w: number) => (k * i - given.drag(w)) / given.inertia
  let way = 1
  const conducting = (t: number, i: number, w: number) =>
    (way * emf(t) - (Rs + Ra) * i - against(w)) / (La + Ls)
  const rates: Record<Mode, Rates> = {
    rest: (t, [i]) => [conducting(t, i!, 0), way * conducting(t, i!, 0), 0, 0],
    off: (_t, [, , w]) => [0, 0, gain(0, w!), w!],
    conduct: (t, [i, , w]) => [conducting(t, i!, w!), way * conducting(t, i!, w!), gain(i!, w!), w!],
    overlap: (t, [i, j, w]) => [(-Ra * i! - against(w!)) / La, (emf(t) - Rs * j!) / Ls, gain(i!, w!), w!],
  }
  /** What ends each mode where it turns negative, and the mode after it. */
  const ends: Record<Mode, readonly (readonly [(t: number, y: number[]) => number, Mode])[]> = {
    rest: [[(_t, [i]) => given.drag(0) - k * i!, 'conduct']],
    off: [[(t, [, , w]) => against(w!) - Math.abs(emf(t)), 'conduct']],
    conduct: [
      [(_t, [i]) => i!, 'off'],
      [(t, [i, , w]) => way * emf(t) - Rs * i! - Ls * conducting(t, i!, w!), 'overlap'],
    ],
    overlap: [
      [(_t, [i, j]) => i! + way * j!, 'conduct'],
      [(_t, [i]) => i!, 'off'],
    ],
  }
  const solver = new Solver(4)
  solver.absoluteTolerance = TOLERANCE
  solver.relativeTolerance = TOLERANCE
  const flow = (mode: Mode, t: number, y: number[], end: number) => {
    solver.initialStepSize = (end - t) / 4
    return end > t ? solver.solve(rates[mode], t, [...y], end).y : [...y]
  }

  let [t, y] = [Math.asin((diodeDrops + brushDrop) / emfPeak) / angularFrequency, [0, 0, 0, 0]]
  let mode: Mode = 'rest'
  let peak = 0
  const stride = Math.PI / angularFrequency / 40
  while (t < until) {
    const next = Math.min(until, t + stride)
    const there = flow(mode, t, y, next)
    const ended: { after: Mode; at: number } | undefined = ends[mode]
      .filter(([guard]) => guard(next, there) < 0)
      .map(([guard, after]) => ({ after, at: zeroOf(guard, (x) => flow(mode, t, y, x), t, next) }))
      .sort((a, b) => a.at - b.at)[0]
    const at = ended?.at ?? next
    y = flow(mode, t, y, at)
    t = at
    peak = Math.max(peak, y[0]!)
    if (!ended) continue
    if (mode === 'overlap' && ended.after === 'conduct') way = -way
    if (ended.after === 'off') y = [0, 0, y[2]!, y[3]!]
    if (mode === 'off') way = Math.sign(emf(t))
    mode = ended.after
  }
  return { speed: y[2]!, angle: y[3]!, peak }
}

/** Where the guard passes zero along a flow, halving so that no slope is relied upon. */
function zeroOf(
  guard: (t: number, y: number[]) => number,
  flow: (t: number) => number[],
  from: number,
  to: number,
): number {
  let [low, high] = [from, to]
  for (let n = 0; n < 46; n++) {
    const middle = (low + high) / 2
    if (guard(middle, flow(middle)) < 0) high = middle
    else low = middle
  }
  return high
}

/** The start of a saturating series motor behind a triac whose current always dies before the next firing. */
export interface SeriesStart {
  readonly emfPeak: number
  readonly angularFrequency: number
  readonly resistance: number
  readonly constantInductance: number
  readonly fieldInductance: number
  readonly emfConstant: number
  readonly saturationCurrent: number
  /** Of triac and brushes together [V] */
  readonly drops: number
  /** [rad] */
  readonly firingAngle: number
  readonly inertia: number
  readonly drag: (w: number) => number
}

/** Half a cycle after the other: fired, the current's size flows to its end; then the shaft coasts to the next firing. */
export function seriesStartByOdex(given: SeriesStart, halfCycles: number): { speed: number; angle: number } {
  const { angularFrequency, saturationCurrent, emfConstant: k0 } = given
  const fired = given.firingAngle / angularFrequency
  const length = Math.PI / angularFrequency
  const rates =
    (stands: boolean): Rates =>
    (t, [i, w]) => {
      const flux = 1 / (1 + i! / saturationCurrent)
      const voltage = given.emfPeak * Math.sin(angularFrequency * t) - given.drops
      const inductance = given.constantInductance + given.fieldInductance * flux ** 2
      const change = (voltage - given.resistance * i! - k0 * flux * i! * w!) / inductance
      return stands ? [change, 0, 0] : [change, (k0 * flux * i! ** 2 - given.drag(w!)) / given.inertia, w!]
    }
  const solver = new Solver(3)
  solver.absoluteTolerance = TOLERANCE
  solver.relativeTolerance = TOLERANCE
  const flow = (stands: boolean, t: number, y: number[], end: number) => {
    solver.initialStepSize = (end - t) / 8
    return end > t ? solver.solve(rates(stands), t, [...y], end).y : [...y]
  }
  const coast: Rates = (_t, [w]) => [-given.drag(w!) / given.inertia, w!]
  let [speed, angle, t] = [0, 0, fired]
  for (let n = 0; n < halfCycles; n++) {
    let y = [0, speed, angle]
    if (n === 0) {
      const moves = (_t: number, [i]: number[]) =>
        given.drag(0) - (k0 * i! ** 2) / (1 + i! / saturationCurrent)
      const start = zeroOf(moves, (x) => flow(true, fired, [0, 0, 0], x), fired, fired + length / 8)
      y = flow(true, fired, y, start)
      t = start
    } else t = fired
    const from = y
    const begin = t
    const dies = zeroOf(
      (_t, [i]) => i!,
      (x) => flow(false, begin, from, x),
      length * 0.9,
      length + fired,
    )
    y = flow(false, begin, from, dies)
    const coasting = new Solver(2)
    coasting.absoluteTolerance = TOLERANCE
    coasting.relativeTolerance = TOLERANCE
    ;[speed, angle] = coasting.solve(coast, dies, [y[1]!, y[2]!], length + fired).y as [number, number]
  }
  return { speed, angle }
}
