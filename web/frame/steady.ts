/** Steady running, worked out once for all who show it: behind a smoothing capacitor it takes a while. */
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import { type OperatingPoint, type Settling, settling } from '../../sim/drive/operating-point.ts'
import type { Bench } from '../store/bench.ts'

const KNOWN = new WeakMap<Drive, Map<string, Settling>>()
/** Inputs that are kept of one drive. Our choice. */
const MOST_KNOWN = 64

/** Where the machine settles, whatever it does now, or why it does not. */
export function settlingNow(drive: Drive, input: DriveInput): Settling {
  const { setting, connected, sense, leftLoad, rightLoad, jammed } = input
  const said = [setting, connected, sense, leftLoad, rightLoad, jammed].join(' ')
  const of = KNOWN.get(drive) ?? new Map<string, Settling>()
  KNOWN.set(drive, of)
  const known = of.get(said)
  if (known) return known
  const found = settling(drive, { setting, connected, sense, leftLoad, rightLoad, jammed })
  const [oldest] = of.keys()
  if (of.size >= MOST_KNOWN && oldest !== undefined) of.delete(oldest)
  of.set(said, found)
  return found
}

/** Steady running as the bench is set now; null where it is not computed. */
export const steadyNow = (drive: Drive, bench: Bench): OperatingPoint | null =>
  settlingNow(drive, { ...bench, connected: true }).point
