import { expect, test } from 'vitest'
import { compileDrive } from '../../../sim/drive/drive.ts'
import { firstInput } from '../../../sim/drive/input.ts'
import { newReading, readAt } from '../../../sim/drive/reading.ts'
import { bootCleaner } from '../../support/machines.ts'
import { near } from '../../support/near.ts'
import { inSmallSteps } from '../../support/small-steps.ts'

const { supply, transformer, control, motor } = bootCleaner
if (supply.kind !== 'mains' || !transformer || control.kind !== 'taps' || motor?.kind !== 'permanent-magnet')
  throw new Error('needs mains, transformer, taps and magnets')
const { steps } = control
const crest = Math.SQRT2 * supply.voltage

/** Mean power and r.m.s. current at the wall, summed over the wave of the primary current in small steps. */
function fromTheWave(setting: number, speed: number, perHalfCycle: number) {
  const drive = compileDrive(bootCleaner)
  const turnsRatio = transformer!.primaryVoltage / steps[setting]!.voltage
  const opposing = motor!.emfConstant * speed + motor!.brushDrop
  let [power, square] = [0, 0]
  inSmallSteps(drive.bridges[setting]!, opposing, perHalfCycle, 12, (source, angle) => {
    const voltage = crest * Math.sin(angle)
    const core = voltage / (1e3 * transformer!.coreResistance)
    const magnetising = (-crest * Math.cos(angle)) / (1e3 * transformer!.magnetisingReactance)
    const primary = source / turnsRatio + core + magnetising
    power += (voltage * primary) / perHalfCycle
    square += primary ** 2 / perHalfCycle
  })
  return { power, current: Math.sqrt(square) }
}

test.each([
  [0, 0],
  [0, 230],
  [2, 300],
  [4, 0],
  [4, 400],
  [4, 529],
])('power, current and phase at the wall are those of the wave, setting %d at %d rad/s', (setting, speed) => {
  const reading = readAt(newReading(), compileDrive(bootCleaner), { ...firstInput(), setting }, speed, 0)
  const coarse = fromTheWave(setting, speed, 20_000)
  const fine = fromTheWave(setting, speed, 40_000)
  // The error of the steps halves with them: their difference is its size.
  const within = (a: number, b: number) => 2 * Math.abs(a - b) + 2e-5 * Math.abs(b)
  near(reading.wallPower, 2 * fine.power - coarse.power, within(coarse.power, fine.power))
  near(reading.wallCurrent, 2 * fine.current - coarse.current, within(coarse.current, fine.current))
  const factor = fine.power / (supply.voltage * fine.current)
  expect(Math.abs(reading.powerFactor - factor)).toBeLessThan(1e-3)
})

test('the core takes the same magnetising current at the same flux, that is volts over hertz', () => {
  const at = (voltage: number, frequency: number) =>
    compileDrive({ ...bootCleaner, supply: { ...supply, voltage, frequency } }).primaries[0]!
      .magnetisingCurrent
  near(at(230, 50), 230 / 6000, 1e-15)
  near(at(276, 60), at(230, 50), 1e-15)
  near(at(207, 47) / at(207, 50), 50 / 47, 1e-15)
})
