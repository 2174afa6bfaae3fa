/** How hard the brushes spark at every speed setting, under each load: worked out a point at a time. */
import type { Drive } from '../../sim/drive/drive.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { type BrushFigures, type BrushedMachine, brushFigures } from './brushes-state.ts'

export interface SettingPoint {
  /** Step of the speed control, and load of both wheels, from 0 */
  readonly setting: number
  readonly load: number
  /** Null where the drive does not settle */
  readonly figures: BrushFigures | null
}

/** One point after the other, so that whoever asks can pause between them. */
export function* settingPoints(
  machine: BrushedMachine,
  drive: Drive,
  sense: 1 | -1,
): Generator<SettingPoint, void> {
  for (let load = 0; load < machine.outputs.loads.length; load++)
    for (let setting = 0; setting < drive.steps; setting++) {
      const input = {
        setting,
        connected: true,
        sense,
        leftLoad: load,
        rightLoad: load,
        jammed: 'none',
      } as const
      const point = operatingPoint(drive, input)
      yield { setting, load, figures: point && brushFigures(machine, point.reading) }
    }
}
