import type { Drive } from '../drive/drive.ts'
import type { DriveInput } from '../drive/input.ts'
import { operatingPoint } from '../drive/operating-point.ts'

/** How far beyond its fastest steady running a series motor, which has no speed without torque, is shown. */
const BEYOND = 1.5

/**
 * Highest speed worth showing of one setting [rad/s]: with magnets where the current ends, in series somewhat beyond
 * running without loads.
 */
export function chartSpeed(drive: Drive, input: DriveInput): number {
  const circuit = drive.circuits[input.setting]
  if (!circuit) return drive.crankSpeeds[input.setting] ?? 1
  const { winding, source, diodeDrops } = circuit
  if (winding.kind === 'permanent-magnet')
    return Math.max(1, source.emf - diodeDrops - winding.brushDrop) / winding.emfConstant
  const free = { ...input, connected: true, leftLoad: -1, rightLoad: -1, jammed: 'none' as const }
  const point = operatingPoint(drive, free) ?? operatingPoint(drive, { ...free, leftLoad: 0, rightLoad: 0 })
  const speed = Math.abs(point?.speed ?? 0)
  return speed > 0 ? BEYOND * speed : winding.resistance / winding.emfConstant
}
