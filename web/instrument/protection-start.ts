/** Protection to begin with: a current that steady running with any load of the machine stays below. */
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import type { Machine, MeltingProtection, Protection } from '../../sim/machine/machine.ts'

/** What is allowed beyond the largest current of steady running; our choice. */
const ROOM = 1.7
/** Slow enough for a start [s]; our choice. */
const TIME_CONSTANT = 6
const LEAST_CURRENT = 0.1

type Where = MeltingProtection['side'] | 'motor'

const rounded = (current: number): number => Math.max(LEAST_CURRENT, Number(current.toPrecision(2)))

/** Largest r.m.s. current at the last setting, with both wheels given the same load, in steady running [A] */
function largestCurrent(machine: Machine, where: Where): number {
  const drive = compileDrive(machine)
  const setting = drive.steps - 1
  const source = drive.circuits[setting]?.source
  const currents = machine.outputs.loads.map((_, load) => {
    const input = { ...firstInput(), setting, leftLoad: load, rightLoad: load }
    const reading = operatingPoint(drive, input)?.reading
    if (!reading) return 0
    if (where === 'motor') return reading.currentPeak
    if (where === 'primary' && machine.transformer) return reading.wallCurrent
    return source && source.resistance > 0
      ? Math.sqrt(reading.sourceResistanceLoss / source.resistance)
      : reading.currentRms
  })
  return Math.max(...currents)
}

const startCurrent = (machine: Machine, where: Where): number =>
  rounded(ROOM * largestCurrent(machine, where))

/** The same object where nothing changes; between fuse and overload switch the numbers stay. */
export function withProtection(machine: Machine, kind: Protection['kind']): Machine {
  const { protection } = machine
  if (protection.kind === kind) return machine
  if (kind === 'none') return { ...machine, protection: { kind } }
  if (kind === 'limit') return { ...machine, protection: { kind, current: startCurrent(machine, 'motor') } }
  if (protection.kind === 'fuse' || protection.kind === 'overload')
    return { ...machine, protection: { ...protection, kind } }
  const side = machine.transformer ? 'secondary' : 'primary'
  const current = startCurrent(machine, side)
  return { ...machine, protection: { kind, side, current, timeConstant: TIME_CONSTANT } }
}

/** On the other side of the transformer another current flows, so the current that it bears begins anew. */
export function withSide(machine: Machine, side: MeltingProtection['side']): Machine {
  const { protection } = machine
  if (protection.kind !== 'fuse' && protection.kind !== 'overload') return machine
  if (protection.side === side) return machine
  return { ...machine, protection: { ...protection, side, current: startCurrent(machine, side) } }
}
