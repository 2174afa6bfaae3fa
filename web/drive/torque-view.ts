/** What the torque panel draws: lines in the units of its axes, for one machine as it is set. */
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import type { OperatingPoint } from '../../sim/drive/operating-point.ts'
import { newReading, readAt } from '../../sim/drive/reading.ts'
import type { Thermal } from '../../sim/machine/machine.ts'
import { radPerSecond, rpm } from '../../sim/quantity/convert.ts'
import type { Column } from '../chart/table.ts'
import { quantityText } from '../instrument/reading-text.ts'
import { longTorque } from './torque-heat.ts'
import { type TorqueLine, type TorqueLines, demandTorque } from './torque-lines.ts'

export interface TorqueView {
  readonly drive: Drive
  readonly input: DriveInput
  /** [r/min] */
  readonly speeds: Float64Array
  readonly end: number
  readonly lines: readonly TorqueLine[]
  readonly setting: number
  /** At each of the speeds [N m] */
  readonly demand: Float64Array
  /** Null where no heat is described */
  readonly longTorque: Float64Array | null
  /** Where they meet [r/min], [N m], with the current there [A]; null where they do not */
  readonly steady: { readonly speed: number; readonly torque: number; readonly current: number } | null
}

export interface TorqueCursor {
  readonly name: string
  readonly at: number
  readonly step: number
  readonly text: string
  readonly move: (to: number) => void
}

interface Told {
  readonly found: TorqueLines
  readonly drive: Drive
  readonly input: DriveInput
  readonly point: OperatingPoint | null
  readonly thermal: Thermal | null
  /** How warm the winding is for the drive [degC] */
  readonly winding: number
}

export function torqueView({ found, drive, input, point, thermal, winding }: Told): TorqueView {
  const speeds = found.speed.map(rpm)
  return {
    drive,
    input,
    speeds,
    end: speeds.at(-1)!,
    lines: found.lines,
    setting: input.setting,
    demand: found.speed.map((speed) => demandTorque(drive, input, speed)),
    longTorque: thermal && longTorque(found, thermal, winding),
    steady: point && point.speed !== 0 ? meetingOf(point) : null,
  }
}

const meetingOf = ({ speed, reading }: OperatingPoint): TorqueView['steady'] => ({
  speed: rpm(Math.abs(speed)),
  torque: reading.motorTorque,
  current: reading.currentMean,
})

/** Size of one step of the cursor [r/min] */
export const cursorStep = (end: number): number => 10 ** Math.floor(Math.log10(end / 50))

/** What is read where the cursor stands [r/min], worked out there. */
export function cursorWords({ drive, input }: TorqueView, at: number): string {
  const speed = radPerSecond(at)
  const { motorTorque, currentMean } = readAt(newReading(), drive, input, input.sense * speed, 0)
  const given = `At ${quantityText(at, 'r/min')} the motor gives ${quantityText(motorTorque, 'N m')} and takes ${quantityText(currentMean, 'A')}`
  return `${given}; ${quantityText(demandTorque(drive, input, speed), 'N m')} are asked for`
}

/** What is not told already where nobody has moved the cursor from where the machine settles. */
export function settledWords({ steady, lines, setting }: TorqueView): string {
  const current = steady ? steady.current : (lines[setting]?.currentMean[0] ?? 0)
  const place = steady ? 'There' : 'At standstill'
  return `${place} the motor takes ${quantityText(current, 'A')}. Move the line to read other speeds`
}

/** In the core's own numbers, only the speed turned into r/min. */
export const torqueColumns = ({ speeds, lines, demand }: TorqueView): readonly Column[] => [
  { heading: 'Worm speed [r/min]', values: speeds },
  { heading: 'Torque asked for [N m]', values: demand },
  ...lines.flatMap((line, i) => [
    { heading: `Setting ${i + 1}: torque [N m]`, values: line.torque },
    { heading: `Setting ${i + 1}: mean current [A]`, values: line.currentMean },
    { heading: `Setting ${i + 1}: r.m.s. current [A]`, values: line.currentRms },
    { heading: `Setting ${i + 1}: power taken in [W]`, values: line.inputPower },
    { heading: `Setting ${i + 1}: power of the shaft [W]`, values: line.shaftPower },
    { heading: `Setting ${i + 1}: efficiency to the shaft [1]`, values: line.efficiency },
  ]),
]
