/** The torque panel's sentences. */
import type { InsulationClass } from '../../sim/heat/insulation.ts'
import { quantityText } from '../instrument/reading-text.ts'
import { valueAlong } from '../chart/scale.ts'
import type { TorqueView } from './torque-view.ts'

/** What is seen: where the two lines meet, or why they do not. */
export function meetingWords({ steady, lines, setting, demand }: TorqueView, locked: boolean): string {
  const stall = lines[setting]?.torque[0] ?? 0
  if (steady)
    return `Motor and load meet at ${quantityText(steady.speed, 'r/min')} and ${quantityText(steady.torque, 'N m')}`
  if (locked)
    return `Jammed: ${quantityText(demand[0]!, 'N m')} would turn it, the motor has ${quantityText(stall, 'N m')}`
  if (stall < demand[0]!)
    return `The load asks ${quantityText(demand[0]!, 'N m')} to start, the motor has ${quantityText(stall, 'N m')}`
  return 'Motor and load do not meet'
}

/** Whether what is set now may go on for hours. Indicative, as the thermal data are. */
export function hotWords(
  { speeds, longTorque, steady, lines }: TorqueView,
  insulation: InsulationClass,
): string {
  if (!longTorque) return ''
  const ever = longTorque.some((torque, i) => lines.some((line) => line.torque[i]! > torque))
  if (!ever) return `No setting can bring the winding to its class ${insulation}, at any speed (indicative).`
  const about = `Hatched, a winding of class ${insulation} would pass its temperature in the long run (indicative).`
  if (!steady) return about
  const held = valueAlong(speeds, longTorque.map(finite), steady.speed)
  return steady.torque > held ? `${about} The point lies in it: run it with pauses.` : about
}

/** Larger than any torque, so that a mean with it stays a number. */
const finite = (torque: number): number => Math.min(torque, 1e9)
