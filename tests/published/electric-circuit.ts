import type { Circuit, SeriesWinding } from '../../sim/electric/circuit.ts'
import type { CurrentCycle } from '../../sim/electric/cycle.ts'
import { newCycle } from '../../sim/electric/cycle.ts'
import { newSteadyWork, solveCycle } from '../../sim/electric/steady-cycle.ts'
import { TURN } from '../../sim/quantity/constants.ts'
import { radians } from '../../sim/quantity/convert.ts'

/** What a textbook tells of a circuit; all SI but the angle. What it does not tell is not there. */
export interface TextbookCircuit {
  /** r.m.s. of a sine at 50 Hz, or with frequency 0 direct [V] */
  readonly voltage: number
  /** [Hz] */
  readonly frequency?: number
  readonly sourceResistance?: number
  readonly rectifier?: Circuit['rectifier']
  readonly diodeDrops?: number
  readonly capacitance?: number
  /** Firing angle [deg] of a thyristor pair without drop */
  readonly firingAngle?: number
  /** Part of a period with an ideal switch closed, and the period [s] */
  readonly duty?: number
  readonly period?: number
  readonly resistance: number
  readonly inductance?: number
  /** k of a motor with magnets [V s/rad] */
  readonly constant?: number
  /** k0 of a series motor without saturation [V s/(rad A)] */
  readonly seriesConstant?: number
  /** [rad/s] */
  readonly speed?: number
}

function circuitOf(given: TextbookCircuit): Circuit {
  const { frequency = 50, firingAngle, duty } = given
  return {
    source: {
      emf: frequency > 0 ? Math.SQRT2 * given.voltage : given.voltage,
      angularFrequency: TURN * frequency,
      resistance: given.sourceResistance ?? 0,
      inductance: 0,
    },
    rectifier: given.rectifier ?? 'none',
    diodeDrops: given.diodeDrops ?? 0,
    capacitance: given.capacitance ?? 0,
    bleedResistance: Infinity,
    triac: firingAngle === undefined ? null : { firingAngle: radians(firingAngle), drop: 0 },
    chopper:
      duty === undefined
        ? null
        : { period: given.period ?? 1e-3, duty, switchDrop: 0, freewheelDrop: 0, currentLimit: Infinity },
    winding: windingOf(given),
  }
}

function windingOf(given: TextbookCircuit): Circuit['winding'] {
  const { resistance, inductance = 1e-9, constant = 0, seriesConstant } = given
  if (seriesConstant === undefined)
    return { kind: 'permanent-magnet', emfConstant: constant, resistance, inductance, brushDrop: 0 }
  const series: SeriesWinding = {
    kind: 'universal',
    emfConstant: seriesConstant,
    saturationCurrent: Infinity,
    resistance,
    inductance,
    fieldInductance: 0,
    brushDrop: 0,
  }
  return series
}

/** Means of the period that repeats itself. */
export function cycleOf(given: TextbookCircuit): CurrentCycle {
  const cycle = newCycle()
  solveCycle(cycle, circuitOf(given), given.speed ?? 0, newSteadyWork())
  return cycle
}

/** Frequency so low that the winding's inductance hardly shows [Hz] */
const SLOW = 5

/**
 * Any number read off a circuit whose winding is a mere resistance. The program knows no winding without inductance; its
 * part of the result is a power series in the frequency, so three low frequencies tell the result without it
 * (Richardson's extrapolation).
 */
export function resistive(given: TextbookCircuit, read: (cycle: CurrentCycle) => number): number {
  const at = (frequency: number) => read(cycleOf({ ...given, frequency }))
  const [first, second, third] = [at(SLOW), at(2 * SLOW), at(4 * SLOW)]
  return (4 * (2 * first - second) - (2 * second - third)) / 3
}

/** Mean and r.m.s. over 1 ohm, and so of the voltage. */
export const overResistance = (given: Omit<TextbookCircuit, 'resistance'>): { mean: number; rms: number } => {
  const circuit = { ...given, resistance: 1 }
  return {
    mean: resistive(circuit, ({ mean }) => mean),
    rms: resistive(circuit, ({ square }) => Math.sqrt(square)),
  }
}
