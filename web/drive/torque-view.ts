/** What the torque panel draws: lines in the units of its axes, for one machine as it is set. */
import type { Drive } from '../../sim/drive/drive.ts'
import type { DriveInput } from '../../sim/drive/input.ts'
import type { OperatingPoint } from '../../sim/drive/operating-point.ts'
import { type Reading, newReading, readAt } from '../../sim/drive/reading.ts'
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
  /** Where they meet [r/min], [N m]; null where they do not */
  readonly steady: { readonly speed: number; readonly torque: number } | null
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
    steady:
      point && point.speed !== 0
        ? { speed: rpm(Math.abs(point.speed)), torque: point.reading.motorTorque }
        : null,
  }
}

/** Size of one step of the cursor [r/min] */
export const cursorStep = (end: number): number => 10 ** Math.floor(Math.log10(end / 50))

/** What is read where the cursor stands [r/min], worked out there. */
export function cursorWords(view: TorqueView, at: number): string {
  const { motorTorque, currentMean } = readingAt(view, at)
  const given = `At ${quantityText(at, 'r/min')} the motor gives ${quantityText(motorTorque, 'N m')} and takes ${quantityText(currentMean, 'A')}`
  const asked = demandTorque(view.drive, view.input, radPerSecond(at))
  return `${given}; ${quantityText(asked, 'N m')} are asked for`
}

/** What is not told already where nobody has moved the cursor from where the machine settles. */
export function settledWords(view: TorqueView, at: number): string {
  const place = view.steady ? 'There' : 'At standstill'
  const current = quantityText(readingAt(view, at).currentMean, 'A')
  return `${place} the motor takes ${current}. Move the line to read other speeds`
}

const readingAt = ({ drive, input }: TorqueView, at: number): Reading =>
  readAt(newReading(), drive, input, input.sense * radPerSecond(at), 0)

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
