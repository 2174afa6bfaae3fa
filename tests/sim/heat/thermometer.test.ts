import { describe, expect, test } from 'vitest'
import { SURFACE_KINDS, surfaceTemperature, thermometerReading } from '../../../sim/heat/thermometer.ts'
import { near } from '../../support/near.ts'

const room = 296.15 // [K]

describe('an infrared thermometer', () => {
  test('is right on a surface of the emissivity it is set to, and on any in a room as warm', () => {
    near(thermometerReading(360, { emissivity: 0.95, setting: 0.95, reflected: room }), 360, 1e-9)
    near(thermometerReading(room, { emissivity: 0.2, setting: 0.95, reflected: room }), room, 1e-9)
  })

  test('reads low on bare metal warmer than the room, and high on metal colder', () => {
    const sight = { emissivity: 0.1, setting: 0.95, reflected: room }
    expect(thermometerReading(360, sight)).toBeLessThan(310)
    expect(thermometerReading(270, sight)).toBeGreaterThan(290)
  })

  test.each(SURFACE_KINDS)('its reading on $name leads back to the surface', ({ least, most }) => {
    for (const emissivity of [least, most])
      for (const T of [250, 330, 420]) {
        const sight = { emissivity, setting: 0.95, reflected: room }
        near(surfaceTemperature(thermometerReading(T, sight), sight), T, 1e-6)
      }
  })

  test('a reading that no surface gives leads to no number', () => {
    expect(surfaceTemperature(200, { emissivity: 0.1, setting: 0.95, reflected: room })).toBeNaN()
  })
})
