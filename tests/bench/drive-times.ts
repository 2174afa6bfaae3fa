/** How long each part of the drive takes to compute. */
import type { Drive } from '../../sim/drive/drive.ts'
import { compileDrive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { takeInput } from '../../sim/drive/motion.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { solveTorque } from '../../sim/drive/torque.ts'
import { newCycle } from '../../sim/electric/cycle.ts'
import { newSteadyWork, solveCycle } from '../../sim/electric/steady-cycle.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { chartSpeed } from '../../sim/run/chart-speed.ts'
import { completed } from '../../sim/run/completed.ts'
import { heatingRun } from '../../sim/run/heating.ts'
import { settledHeat } from '../../sim/run/heating-settled.ts'
import { torqueSpeedCurve } from '../../sim/run/torque-speed.ts'
import { advanceRun, createRun } from '../../sim/run/waveform.ts'
import { bootCleaner, cordWinder, smoothed, ventOpener } from './machines.ts'
import { typicalTime } from './times.ts'

interface Task {
  readonly what: string
  /** At most [ms] */
  readonly goal: number
  readonly work: () => unknown
  /** Model time that it covers, where it is told as a part of that [s] */
  readonly covers?: number
}

const HOURS = 4 * 3600

const input = (setting: number, load = 0): DriveInput => ({
  ...firstInput(),
  setting,
  leftLoad: load,
  rightLoad: load,
})
const fastest = input(4)

/** One solution after the other at speeds that never come back, so that nothing can be kept. */
function closedForm(machine: Machine, told: DriveInput, top: number): () => unknown {
  const drive = compileDrive(machine)
  takeInput(drive, told)
  let place = 0
  return () => {
    place = (place + 0.381966) % 1
    drive.work.speed = top * place
    solveTorque(drive, told)
  }
}

/** Shooting on the bridge as it is, both its currents overlapping at low speed. */
function overlapCurve(drive: Drive, points: number): () => unknown {
  const circuit = drive.circuits[fastest.setting]!
  const top = chartSpeed(drive, fastest)
  const work = newSteadyWork()
  const cycle = newCycle()
  return () => {
    for (let n = 0; n < points; n++) solveCycle(cycle, circuit, (top * n) / (points - 1), work)
  }
}

const curve = (machine: Machine, points: number) => () =>
  torqueSpeedCurve(compileDrive(machine), fastest, points)
const point = (machine: Machine, told: DriveInput) => () => operatingPoint(compileDrive(machine), told)

const waves = (machine: Machine, told: DriveInput, seconds: number, tolerance: number) => {
  const drive = compileDrive(machine)
  return () => advanceRun(createRun(drive, told, { tolerance }), seconds)
}

const heating = (what: string, machine: Machine, told: DriveInput): readonly Task[] => [
  {
    what: `4 h of heating, ${what}`,
    goal: 300,
    work: () => completed(heatingRun(machine, told, { duration: HOURS })),
    covers: HOURS,
  },
  { what: `settled heat, ${what}`, goal: 25, work: () => settledHeat(machine, told) },
]

const tasks = (): readonly Task[] => [
  { what: 'steady state in closed form, bridge', goal: 0.05, work: closedForm(bootCleaner, fastest, 700) },
  { what: 'steady state in closed form, chopper', goal: 0.05, work: closedForm(ventOpener, input(1), 300) },
  { what: 'torque over speed, 201 points', goal: 12, work: curve(bootCleaner, 201) },
  { what: 'torque over speed with 2200 uF, 21 points', goal: 400, work: curve(smoothed, 21) },
  {
    what: 'shooting through overlap, 61 speeds',
    goal: 350,
    work: overlapCurve(compileDrive(bootCleaner), 61),
  },
  { what: 'operating point, bridge', goal: 4, work: point(bootCleaner, fastest) },
  { what: 'operating point, chopper', goal: 4, work: point(ventOpener, input(1)) },
  { what: 'operating point, saturating with triac', goal: 80, work: point(cordWinder, fastest) },
  { what: '1 s of mains waves, tolerance 1e-6', goal: 50, work: waves(bootCleaner, fastest, 1, 1e-6) },
  { what: '1 s of mains waves, tolerance 1e-8', goal: 100, work: waves(bootCleaner, fastest, 1, 1e-8) },
  {
    what: '0.5 s of waves of the 8 kHz chopper',
    goal: 600,
    work: waves(ventOpener, input(1), 0.5, 1e-6),
  },
  ...heating('boot cleaner', bootCleaner, input(4, 1)),
  ...heating('with 2200 uF', smoothed, input(4, 1)),
  ...heating('vent opener', ventOpener, input(3)),
  ...heating('cord winder', cordWinder, fastest),
]

export const driveTimes = () =>
  tasks().map(({ what, goal, work, covers }) => ({ what, goal, covers, ...typicalTime(work) }))
