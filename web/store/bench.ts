/** What is set at the bench: kept with the link and the autosave, but not part of the machine and not undone. */
import { createStore } from 'zustand/vanilla'
import type { Warmth } from '../../sim/drive/circuits.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import { REFERENCE_TEMPERATURE } from '../../sim/heat/resistance.ts'
import type { Machine } from '../../sim/machine/machine.ts'

export interface Bench {
  /** Step of the speed control, from 0. */
  readonly setting: number
  readonly pluggedIn: boolean
  readonly sense: 1 | -1
  /** Index in the machine's list of loads, for each wheel. */
  readonly leftLoad: number
  readonly rightLoad: number
  readonly jammed: 'none' | 'left' | 'right'
  /** How warm winding and magnets are for the drive [degC]; 20 is cold, as the machine's numbers are told. */
  readonly winding: number
  readonly magnet: number
  /** How many times slower than real the model is shown: one of PACES. */
  readonly pace: number
}

export const PACES = [1, 2, 4, 10, 20, 40, 100, 200, 400] as const

/** Temperature at which the numbers of a machine are told [degC] */
export const COLD = REFERENCE_TEMPERATURE

export const firstBench: Bench = {
  setting: 0,
  pluggedIn: true,
  sense: 1,
  leftLoad: 0,
  rightLoad: 0,
  jammed: 'none',
  winding: COLD,
  magnet: COLD,
  pace: 40,
}

export const createBench = () => createStore<Bench>(() => firstBench)

/** As the drive takes it. */
export const inputOf = (bench: Bench): DriveInput => ({
  setting: bench.setting,
  connected: bench.pluggedIn,
  sense: bench.sense,
  leftLoad: bench.leftLoad,
  rightLoad: bench.rightLoad,
  jammed: bench.jammed,
})

export const warmthOf = ({ winding, magnet }: Bench): Warmth => ({ winding, magnet })

/** Alternating current has no poles to swap, and a series motor turns the same way with either. */
export const isReversible = ({ supply, motor }: Machine): boolean =>
  supply.kind !== 'mains' && motor?.kind !== 'universal'

/** The same bench with every choice inside what this machine offers. */
export function benchFor(machine: Machine, bench: Bench): Bench {
  const lastStep = machine.control.steps.length - 1
  const lastLoad = machine.outputs.loads.length - 1
  const reversible = isReversible(machine)
  const warms = machine.motor !== null
  return {
    ...bench,
    setting: Math.min(bench.setting, lastStep),
    leftLoad: Math.min(bench.leftLoad, lastLoad),
    rightLoad: Math.min(bench.rightLoad, lastLoad),
    sense: reversible ? bench.sense : 1,
    winding: warms ? bench.winding : COLD,
    magnet: warms ? bench.magnet : COLD,
  }
}

/** Paces at which the worm, at the given speed [turn/s], can still be counted: the fastest of them is offered first. */
export function countablePace(turnsPerSecond: number): number {
  const countable = 2.4
  return PACES.find((pace) => Math.abs(turnsPerSecond) / pace <= countable) ?? PACES.at(-1)!
}
