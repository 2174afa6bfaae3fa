import { describe, expect, test } from 'vitest'
import { CLASS_TEMPERATURE } from '../../sim/heat/insulation.ts'
import { encodedTone, heatLevelOn, heatTone, luminanceAt } from '../../web/material/heat-tone.ts'
import { SUBSTANCE_NAMES } from '../../web/material/substances.ts'
import { heatKind, heatNode, heatPaint } from '../../web/scene/signs/heat-paint.ts'
import { firstBench } from '../../web/store/bench.ts'
import { partHeat, scaleEnd } from '../../web/store/part-heat.ts'
import { bootCleaner, classroomModel, ventOpener } from '../support/machines.ts'

describe('tones', () => {
  test('lightness 50 is 18.4 % of white: CIE 15, CIELAB', () => {
    expect(luminanceAt(100)).toBeCloseTo(1, 9)
    expect(luminanceAt(50)).toBeCloseTo(0.1842, 4)
    expect(luminanceAt(0)).toBe(0)
  })
  test.each(['light', 'dark'] as const)('go one way only, in even steps of lightness: %s', (theme) => {
    const lightness = (Y: number) => 116 * Math.cbrt(Y) - 16
    const at = Array.from({ length: 11 }, (_, i) => lightness(heatTone(i / 10, theme)))
    const steps = at.slice(1).map((L, i) => L - at[i]!)
    for (const step of steps) expect(step).toBeCloseTo(steps[0]!, 6)
    expect(Math.sign(steps[0]!)).toBe(theme === 'light' ? -1 : 1)
    expect(Math.abs(steps[0]!)).toBeGreaterThan(6)
  })
  test('mid grey 0.2140 is encoded as one half: IEC 61966-2-1', () => {
    const level = Array.from({ length: 1001 }, (_, i) => i / 1000).find(
      (each) => heatTone(each, 'light') < 0.214,
    )!
    expect(encodedTone(level, 'light')).toBeCloseTo(0.5, 2)
  })
  test('beyond its ends the scale stays there', () => {
    expect([10, 21, 75.5, 130, 300].map((T) => heatLevelOn(T, 21, 130))).toEqual([0, 0, 0.5, 1, 1])
  })
})

describe('which part has which temperature', () => {
  test('winding and commutator are the winding, worm and shaft are not computed', () => {
    expect(heatNode('rotor', 'enamelledWire')).toBe('winding')
    expect(heatNode('rotor', 'copper')).toBe('winding')
    expect(heatNode('rotor', 'wormSteel')).toBe('air')
    expect(heatNode('motor', 'motorCan')).toBe('case')
    expect(heatNode('motor', 'ferrite')).toBe('case')
    expect(heatNode(heatKind('leftWheel'), 'nylon')).toBe('air')
  })
  test('marks keep their paint', () => {
    const paint = heatPaint()
    paint.setHeat({ winding: 130, case: 80, air: 20, from: 20, to: 130, seconds: null }, 'light')
    const tones = paint.materials.rotor.uniforms['tones']!.value as { getHexString(): string; r: number }[]
    expect(tones[SUBSTANCE_NAMES.indexOf('wormPaint')]!.getHexString()).toBe('d55e00')
    expect(tones[SUBSTANCE_NAMES.indexOf('enamelledWire')]!.r).toBeCloseTo(heatTone(1, 'light'), 9)
    expect(tones[SUBSTANCE_NAMES.indexOf('wormSteel')]!.r).toBeCloseTo(heatTone(0, 'light'), 9)
    paint.dispose()
  })
})

describe('what the stage shows', () => {
  const look = { machine: bootCleaner, seconds: 720, winding: 60, case: 40, hottest: 72 }
  test('the moment that is looked at, of that machine only', () => {
    expect(partHeat(bootCleaner, firstBench, look)).toMatchObject({ winding: 60, case: 40, seconds: 720 })
    expect(partHeat(ventOpener, firstBench, look)).toMatchObject({ winding: 20, case: 20, seconds: null })
  })
  test('one scale holds for a whole warming: to its hottest where the class is far, else to the class', () => {
    expect(partHeat(bootCleaner, firstBench, look)).toMatchObject({ from: 21, to: 80 })
    expect(partHeat(bootCleaner, firstBench, { ...look, winding: 21 })).toMatchObject({ from: 21, to: 80 })
    const most = 21 + 0.6 * (CLASS_TEMPERATURE.B - 21)
    for (let T = 32; T <= 80; T++) {
      const to = scaleEnd(21, T, CLASS_TEMPERATURE.B)
      expect(to).toBeGreaterThanOrEqual(T)
      expect(to).toBeLessThanOrEqual(most)
      expect((T - 21) / (to - 21)).toBeGreaterThan(0.5)
    }
    for (let T = 81; T <= 130; T++) expect(scaleEnd(21, T, CLASS_TEMPERATURE.B)).toBe(CLASS_TEMPERATURE.B)
    expect(scaleEnd(21, 246, 130)).toBe(250)
    expect(scaleEnd(21, 20, 130)).toBe(40)
    expect(scaleEnd(21, 34, 130)).toBe(40)
    expect(scaleEnd(21, 130, 130)).toBe(130)
  })
  test('otherwise as warm as the bench says, on a scale from the air to the class', () => {
    const heat = partHeat(bootCleaner, { winding: 85, magnet: 50 }, null)
    expect(heat).toEqual({ winding: 85, case: 50, air: 21, from: 21, to: 130, seconds: null })
  })
  test('a machine without heat shows none', () => {
    expect(partHeat(classroomModel, firstBench, null)).toBeNull()
  })
})
