/** What the panel makes of the state of the brushes: which index decides, and the numbers in the units they are read in. */
import type { Brushes, Machine, Motor } from '../../sim/machine/machine.ts'
import type { Reading } from '../../sim/drive/reading.ts'
import { brushArc } from '../../sim/heat/commutation.ts'
import { type BrushState, brushState } from '../../sim/run/heating-brushes.ts'

/** A machine whose sliding contact is described. */
export type BrushedMachine = Machine & { readonly motor: Motor; readonly brushes: Brushes }

export const isBrushed = (machine: Machine): machine is BrushedMachine =>
  machine.motor !== null && machine.brushes !== null

/** Whether the current of the motor itself goes back and forth. */
export const alternates = ({ supply, motor }: Machine): boolean =>
  supply.kind === 'mains' && motor?.kind === 'universal'

export interface BrushFigures extends BrushState {
  readonly barsPerSecond: number
  /** Current of the armature that turns over in a coil, half of it either way [A] */
  readonly armatureCurrent: number
  /** The greater of both indices, by which the grade is given */
  readonly worse: number
  readonly decides: 'turning over' | 'density'
  /** [A/cm2] */
  readonly densityPerCm2: number
}

const TURN = 2 * Math.PI
const PER_CM2 = 1e-4

export function brushFigures(machine: BrushedMachine, reading: Reading): BrushFigures {
  const state = brushState(machine, reading)
  if (state === null) throw new Error('a brushed machine has a state of its brushes')
  const { index, densityRatio } = state
  return {
    ...state,
    barsPerSecond: (Math.abs(reading.wormSpeed) / TURN) * machine.brushes.bars,
    armatureCurrent: machine.motor.kind === 'universal' ? reading.currentRms : Math.abs(reading.currentMean),
    worse: Math.max(index, densityRatio),
    decides: index >= densityRatio ? 'turning over' : 'density',
    densityPerCm2: PER_CM2 * state.density,
  }
}

/** Angle from one bar to the next, and angle that a brush covers [rad]. */
export const barPitch = ({ bars }: Brushes): number => TURN / bars
export const coveredAngle = ({ arcWidth, commutatorDiameter }: Brushes): number =>
  brushArc(arcWidth, commutatorDiameter)
