/** Our own way through a start against general-purpose integrators, at equal accuracy and on the same equations. */
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { wormTurnsValue } from '../../sim/drive/turns.ts'
import { advanceRun, createRun } from '../../sim/run/waveform.ts'
import { SPEED } from '../../sim/electric/wave-network.ts'
import { TURN } from '../../sim/quantity/constants.ts'
import { bootCleaner, ventOpener } from './machines.ts'
import type { Solve, StartProblem } from './peer-solvers.ts'
import { atAll, byMathjs, byOdex, byOwnStepper, missOf } from './peer-solvers.ts'
import { timed, typicalTime } from './times.ts'

/** A tolerance, how far off it leads at most, and how long all starts took together [ms]. */
export interface Attempt {
  readonly tolerance: number
  readonly miss: number
  readonly time: number
}

/** What seems at most twice as slow as the quickest, and how much of it, is measured well. */
const SLOWER = 2
const CANDIDATES = 8

/** From 10^-a to 10^-b, some to a decade */
const ladder = (a: number, b: number, steps: number): readonly number[] =>
  Array.from({ length: steps * (b - a) + 1 }, (_, n) => 10 ** -(a + n / steps))

interface Try extends Attempt {
  readonly solve: Solve
}

/** Each way at each tolerance, timed at first sight. */
const tryAll = (ways: readonly Solve[], exact: readonly number[], tolerances: readonly number[]): Try[] =>
  ways.flatMap((solve) =>
    tolerances.map((tolerance) => {
      const { result, time } = timed(() => solve(tolerance))
      return { solve, tolerance, miss: missOf(result, exact), time }
    }),
  )

/** The quickest that is at least as near; where none is, the nearest of all. */
function asNear(tried: readonly Try[], miss: number): Attempt {
  const near = tried.filter((each) => each.miss <= miss).sort((one, other) => one.time - other.time)
  const nearest = tried.reduce((best, each) => (each.miss < best.miss ? each : best))
  const quick = near.filter(({ time }) => time <= SLOWER * near[0]!.time).slice(0, CANDIDATES)
  const attempts = (quick.length > 0 ? quick : [nearest]).map(({ solve, tolerance, miss: found }) => ({
    tolerance,
    miss: found,
    time: typicalTime(() => solve(tolerance)).typical,
  }))
  return attempts.reduce((best, each) => (each.time < best.time ? each : best))
}

function attempt(solve: Solve, exact: readonly number[], tolerance: number): Attempt {
  const miss = missOf(solve(tolerance), exact)
  return { tolerance, miss, time: typicalTime(() => solve(tolerance)).typical }
}

/** A magnet motor put on a battery: its winding and its fan, nothing that sticks. y = current, speed, angle. */
function smoothProblem(): StartProblem {
  const drive = compileDrive(ventOpener)
  const { source, winding } = drive.circuits.at(-1)!
  const { emfConstant: k, inductance: L } = winding
  const R = source.resistance + winding.resistance
  const V = source.emf - winding.brushDrop
  const { rotorInertia: J, viscousTorque: b, fanTorque: c } = drive
  return {
    sizes: [V / R, V / k, V / k / 10],
    writeRates(rates, y) {
      const i = y[1]!
      const w = y[2]!
      rates[0] = 1
      rates[1] = (V - R * i - k * w) / L
      rates[2] = (k * i - b * w - c * w * w) / J
      rates[3] = w
    },
    rates: (_t, [i, w]) => [(V - R * i! - k * w!) / L, (k * i! - b * w! - c * w! * w!) / J, w!],
  }
}

const TOLERANCES = [1e-6, 1e-8] as const
const TIGHT = 1e-14
/** Moments of the smooth start, all of it while the speed still rises [s] */
const RISE = [0.01, 0.02, 0.03, 0.04, 0.05] as const

export function smoothStart() {
  const problem = smoothProblem()
  const own = atAll(RISE, byOwnStepper(problem))
  const odex = atAll(RISE, byOdex(problem))
  const mathjs = atAll(RISE, byMathjs(problem))
  const exact = odex(TIGHT)
  const odexTried = tryAll([odex], exact, ladder(4, 13, 4))
  // its tolerance is one of rates, not of steps
  const mathjsTried = tryAll([mathjs], exact, ladder(-3, 4, 4))
  return {
    ownTight: missOf(own(1e-13), exact),
    pairs: TOLERANCES.map((tolerance) => {
      const ours = attempt(own, exact, tolerance)
      return { ours, odex: asNear(odexTried, ours.miss), mathjs: asNear(mathjsTried, ours.miss) }
    }),
  }
}

const START = [0.02, 0.04, 0.06, 0.08, 0.1] as const
const SETTING = 4
/** Time in which a current that the diodes block dies away in the peer [s] */
const PENALTIES = [1e-5, 3e-6, 1e-6, 3e-7] as const

/** The boot cleaner's fifth setting without leakage inductance, which one equation without events can stand for. */
function bridgeDrive() {
  const { control } = bootCleaner
  if (control.kind !== 'taps') throw new Error('the boot cleaner is set by taps')
  const steps = control.steps.map((tap) => ({ ...tap, inductance: 0 }))
  return compileDrive({ ...bootCleaner, control: { ...control, steps } })
}

/** The whole circuit in one equation: the bridge freewheels where the source falls short, and a blocked current dies. */
function bridgeProblem(penalty: number): StartProblem {
  const drive = bridgeDrive()
  const { source, winding, diodeDrops } = drive.circuits[SETTING]!
  const { emf, angularFrequency: omega, resistance: Rs } = source
  const { emfConstant: k, inductance: L, resistance: Ra, brushDrop } = winding
  const { ratio: u, frictionTorque, viscousTorque, fanTorque } = drive
  const load = drive.loads[0]!
  const share = 2 / drive.forwardEfficiency / u
  const J = drive.rotorInertia + (share * drive.wheelInertia) / u
  const rates = (t: number, y: readonly number[]): number[] => {
    const i = y[0]!
    const w = y[1]!
    const fed = Math.max(Math.abs(emf * Math.sin(omega * t)) - Rs * i, 0)
    const wheel = load.passive + drive.bearingTorque + (load.linear * w) / u
    const drag = frictionTorque + viscousTorque * w + fanTorque * w * w + share * wheel
    const gain = (k * Math.max(i, 0) - drag) / J
    return [
      (fed - diodeDrops - brushDrop - Ra * i - k * w) / L - Math.min(i, 0) / penalty,
      w <= 0 && gain < 0 ? 0 : gain,
      w,
    ]
  }
  return { sizes: [1, 1, 1], writeRates: () => undefined, rates }
}

/** Speed and angle; the current at a set moment says nothing that these do not. */
function ownBridge(): Solve {
  const drive = bridgeDrive()
  const input = { ...firstInput(), setting: SETTING }
  return atAll(START, (until, tolerance) => {
    const run = createRun(drive, input, { tolerance })
    advanceRun(run, until)
    return [run.y[SPEED]!, TURN * wormTurnsValue(run.turns)]
  })
}

export function bridgeStart() {
  const own = ownBridge()
  const exact = own(1e-13)
  const peers = PENALTIES.map((penalty): Solve => {
    const whole = byOdex(bridgeProblem(penalty))
    return atAll(START, (until, tolerance) => whole(until, tolerance).slice(1))
  })
  const tried = tryAll(peers, exact, ladder(4, 10, 2))
  return {
    ownTight: missOf(own(1e-11), exact),
    odexNearest: asNear(tried, 0),
    pairs: TOLERANCES.map((tolerance) => {
      const ours = attempt(own, exact, tolerance)
      return { ours, odex: asNear(tried, ours.miss) }
    }),
  }
}
