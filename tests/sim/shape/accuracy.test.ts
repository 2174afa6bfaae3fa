/**
 * How near the flat triangles come to the exact surfaces. Limits are those that the design asks for at module
 * 2, and grow with the module.
 */
import { expect, test } from 'vitest'
import type { GearNumbers } from '../../../sim/gear/gear-numbers.ts'
import { wheelMesh } from '../../../sim/shape/wheel-mesh.ts'
import { oneToTwenty, pairName, pairs } from '../gear/pairs.ts'
import { type Deviations, wheelDeviations } from './deviation.ts'
import { topology } from './welded.ts'

/** Largest distances [mm] a millimetre of module. */
const DISPLAY = { flankMost: 0.01, flankRms: 0.004 }
const PRINT = { flankMost: 0.0015, flankRms: 0.0005, most: 0.003 }

const forms: readonly GearNumbers[] = pairs.flatMap((pair) => [
  pair,
  { ...pair, profile: 'ZI', wheelForm: 'helical' },
])
const named = forms.map((pair) => [`${pair.wheelForm} ${pairName(pair)}`, pair] as const)

const micrometres = ({ flankMost, flankRms, most }: Deviations): string =>
  [flankMost, flankRms, most].map((distance) => (1000 * distance).toFixed(2).padStart(6)).join(' ')

test.each(named)('%s: display and print wheels lie as near to the exact surface as asked', (name, pair) => {
  const display = wheelDeviations(pair, 'display')
  const print = wheelDeviations(pair, 'print')
  console.log(`${name}, um: flank most, flank rms, with fillet most`)
  console.log(`  display ${micrometres(display)}   print ${micrometres(print)}`)
  const m = pair.axialModule
  expect(display.flankRms).toBeGreaterThan(0)
  expect(display.flankMost).toBeLessThan(DISPLAY.flankMost * m)
  expect(display.flankRms).toBeLessThan(DISPLAY.flankRms * m)
  expect(print.flankMost).toBeLessThan(PRINT.flankMost * m)
  expect(print.flankRms).toBeLessThan(PRINT.flankRms * m)
  expect(print.most).toBeLessThan(PRINT.most * m)
})

test('the measure sees a wheel drawn with a profile shift of a hundredth of a module too much', () => {
  const shifted: GearNumbers = { ...oneToTwenty, centres: { kind: 'shift', profileShift: 0.01 } }
  const { flankMost } = wheelDeviations(oneToTwenty, 'print', shifted)
  expect(flankMost).toBeGreaterThan(0.003)
})

test.each(named)(
  '%s: a display wheel has the volume of a print one within half a hundredth',
  (name, pair) => {
    const display = topology(wheelMesh(pair, 'display')).volume
    const print = topology(wheelMesh(pair, 'print')).volume
    console.log(`${name}: volume of display against print ${((display / print - 1) * 100).toFixed(3)} %`)
    expect(Math.abs(display / print - 1)).toBeLessThan(0.005)
  },
)
