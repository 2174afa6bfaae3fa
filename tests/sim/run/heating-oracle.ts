/** Heating once more, written apart from `sim/run`: the classical fourth-order method at even steps, the speed anew each time. */
import { compileDrive } from '../../../sim/drive/drive.ts'
import type { DriveInput } from '../../../sim/drive/input.ts'
import { operatingPoint } from '../../../sim/drive/operating-point.ts'
import type { Machine } from '../../../sim/machine/machine.ts'

type Temperatures = readonly [winding: number, body: number]

function rates(machine: Machine, input: DriveInput, [winding, body]: Temperatures): Temperatures {
  const thermal = machine.thermal!
  const { reading } = operatingPoint(compileDrive(machine, { winding, magnet: body }), input)!
  const part = (Math.abs(reading.wormSpeed) * 30) / Math.PI / thermal.referenceSpeed
  const fan = part ** thermal.fanExponent
  const across = (thermal.windingToCase + thermal.windingToCaseFan * fan) * (winding - body)
  const out = (thermal.caseToAir + thermal.caseToAirFan * fan) * (body - thermal.ambient)
  const brush = thermal.brushHeatToWinding / 100
  const friction = thermal.frictionHeatToWinding / 100
  const toWinding = reading.copperLoss + brush * reading.brushLoss + friction * reading.frictionLoss
  const toCase = (1 - brush) * reading.brushLoss + (1 - friction) * reading.frictionLoss
  return [(toWinding - across) / thermal.windingCapacity, (toCase + across - out) / thermal.caseCapacity]
}

const moved = (from: Temperatures, by: Temperatures, time: number): Temperatures => [
  from[0] + time * by[0],
  from[1] + time * by[1],
]

/** Temperatures at even moments [degC], from the air's on, that at time 0 among them. */
export function slowHeating(
  machine: Machine,
  input: DriveInput,
  step: number,
  count: number,
): Temperatures[] {
  const { ambient } = machine.thermal!
  const all: Temperatures[] = [[ambient, ambient]]
  for (let n = 0; n < count; n++) {
    const y = all[n]!
    const k1 = rates(machine, input, y)
    const k2 = rates(machine, input, moved(y, k1, step / 2))
    const k3 = rates(machine, input, moved(y, k2, step / 2))
    const k4 = rates(machine, input, moved(y, k3, step))
    const mean: Temperatures = [
      (k1[0] + 2 * k2[0] + 2 * k3[0] + k4[0]) / 6,
      (k1[1] + 2 * k2[1] + 2 * k3[1] + k4[1]) / 6,
    ]
    all.push(moved(y, mean, step))
  }
  return all
}
