import { compileDrive } from '../drive/drive.ts'
import type { DriveInput } from '../drive/input.ts'
import type { Machine, Thermal } from '../machine/machine.ts'

export interface HeatingConditions {
  /** Whether the fan's air passes; true where left out */
  readonly fanCools?: boolean
  /** Whether the shaft is held, whatever the motor can; false where left out */
  readonly held?: boolean
}

/** A machine with what it is told to do, as something that warms itself. */
export interface HeatSource {
  readonly machine: Machine
  readonly thermal: Thermal
  readonly input: DriveInput
  /** Where the air's way is shut the fan takes the same torque and cools nothing */
  readonly fanCools: boolean
  /** Whether the shaft is held */
  readonly held: boolean
  /** Why the drive is not computed, as a sentence; null where it is */
  readonly notComputed: string | null
  /** Solved points, where the currents of the setting take long to solve; otherwise null */
  readonly nodes: HeatNodes | null
}

/** What a running machine does at temperatures some degrees apart, and places for numbers in passing. */
export interface HeatNodes {
  /** Whether the temperature of the magnets matters */
  readonly hasMagnets: boolean
  readonly known: Map<number, Float64Array>
  readonly windingWeights: Float64Array
  readonly caseWeights: Float64Array
  readonly sums: Float64Array
}

/** Nodes through which a cubic runs, and numbers in each. */
export const POINTS = 4
export const COLUMNS = 5

/** Null without a thermal description. */
export function heatSource(
  machine: Machine,
  input: DriveInput,
  { fanCools = true, held = false }: HeatingConditions = {},
): HeatSource | null {
  const { thermal } = machine
  if (!thermal) return null
  const { notComputed, tables } = compileDrive(machine)
  const nodes = tables[input.setting] ? newHeatNodes(machine, thermal) : null
  return { machine, thermal, input, fanCools, held, notComputed, nodes }
}

const newHeatNodes = ({ motor }: Machine, { magnetCoefficient }: Thermal): HeatNodes => ({
  hasMagnets: motor?.kind === 'permanent-magnet' && magnetCoefficient !== 0,
  known: new Map(),
  windingWeights: new Float64Array(POINTS),
  caseWeights: new Float64Array(POINTS),
  sums: new Float64Array(COLUMNS),
})
