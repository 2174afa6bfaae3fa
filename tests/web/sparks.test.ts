import fc from 'fast-check'
import type { Points } from 'three'
import { expect, test } from 'vitest'
import { newReading } from '../../sim/drive/reading.ts'
import { machineLayout } from '../../sim/pose/layout.ts'
import { sparkingNow } from '../../web/drive/BrushesSparkFeed.tsx'
import type { BrushedMachine } from '../../web/drive/brushes-state.ts'
import type { Moment } from '../../web/scene/sign.ts'
import { sparkPaint, sparkSign } from '../../web/scene/signs/sparks.ts'
import type { StageFrame } from '../../web/scene/stage-props.ts'
import type { Readout } from '../../web/store/readout.ts'
import { bootCleaner } from '../support/machines.ts'
import {
  MOST_SPARKS,
  SPARK_PERIOD,
  SPARK_STRIDE,
  newSparkField,
  writeSparks,
} from '../../web/scene/signs/spark-field.ts'
import { near } from '../support/near.ts'

function sparksAt(seed: number, index: number, time: number, pace = 1) {
  const field = newSparkField(seed)
  writeSparks(field, index, time, pace)
  return field
}

const lightOf = ({ points, count }: ReturnType<typeof sparksAt>): number => {
  let light = 0
  for (let point = 0; point < count; point++) light += points[SPARK_STRIDE * point + 2]!
  return light
}

const someTime = fc.double({ min: 0, max: 20_000, noNaN: true })
const someIndex = fc.double({ min: 0.5, max: 5, noNaN: true })

test('the same seed and the same moment give the same sparks, whatever was drawn in between', () => {
  fc.assert(
    fc.property(fc.integer(), someIndex, someTime, someTime, (seed, index, time, other) => {
      const field = newSparkField(seed)
      writeSparks(field, index, time, 40)
      const first = [...field.points]
      writeSparks(field, 2, other, 1)
      writeSparks(field, index, time, 40)
      const { count } = field
      expect([...field.points].slice(0, SPARK_STRIDE * count)).toEqual(first.slice(0, SPARK_STRIDE * count))
    }),
    { seed: 51 },
  )
})

test('another seed gives other sparks', () => {
  expect([...sparksAt(1, 1, 3).points]).not.toEqual([...sparksAt(2, 1, 3).points])
})

test('without an index worth a grade there is no spark and no glow', () => {
  for (const index of [0, 0.04, 0.49]) {
    const field = sparksAt(7, index, 1)
    expect([field.count, field.size, field.glow]).toEqual([0, 0, 0])
  }
})

test('number, size and glow of the sparks grow with the index', () => {
  const steps = [0.5, 0.8, 1.2, 2, 2.5].map((index) => sparksAt(7, index, 1))
  for (let n = 1; n < steps.length; n++) {
    expect(steps[n]!.count).toBeGreaterThan(steps[n - 1]!.count)
    expect(steps[n]!.size).toBeGreaterThan(steps[n - 1]!.size)
    expect(steps[n]!.glow).toBeGreaterThan(steps[n - 1]!.glow)
  }
  expect(steps.at(-1)!.count).toBe(MOST_SPARKS)
})

test('all sparks stay on the edge of the brush', () => {
  fc.assert(
    fc.property(fc.integer(), someIndex, someTime, (seed, index, time) => {
      const { points, count } = sparksAt(seed, index, time)
      for (let point = 0; point < count; point++) {
        const [along, away, light] = points.subarray(SPARK_STRIDE * point)
        expect(Math.abs(along!)).toBeLessThanOrEqual(1)
        expect(Math.abs(away! - 0.5)).toBeLessThanOrEqual(0.5)
        expect(Math.abs(light! - 0.5)).toBeLessThanOrEqual(0.5)
      }
    }),
    { seed: 52 },
  )
})

test('their light together does not flicker at all', () => {
  fc.assert(
    fc.property(someIndex, someTime, fc.constantFrom(1, 40, 400), (index, time, pace) => {
      const field = sparksAt(3, index, time, pace)
      // Points are kept in single precision.
      near(lightOf(field), field.count / 2, 1e-5)
    }),
    { seed: 53 },
  )
})

/** Peaks of the light of one point over ten seconds of screen time. */
function peaksOf(point: number, pace: number): number {
  const field = newSparkField(9)
  let [before, last, peaks] = [0, 0, 0]
  for (let frame = 0; frame < 600; frame++) {
    writeSparks(field, 2, frame / 60 / pace, pace)
    const light = field.points[SPARK_STRIDE * point + 2]!
    if (last > before && last >= light) peaks++
    before = last
    last = light
  }
  return peaks
}

test('no point comes more often than three times a second of screen time, at any pace', () => {
  expect(1 / SPARK_PERIOD).toBeLessThan(3)
  for (const pace of [1, 2, 40, 400])
    for (const point of [0, 5, 11]) expect(peaksOf(point, pace)).toBeLessThanOrEqual(10 / SPARK_PERIOD + 1)
})

test('points are spread over the whole edge', () => {
  const tenths = new Set<number>()
  for (let cycle = 0; cycle < 40; cycle++) {
    const { points, count } = sparksAt(5, 2.5, cycle * SPARK_PERIOD)
    for (let point = 0; point < count; point++)
      tenths.add(Math.floor(5 * (points[SPARK_STRIDE * point]! + 1)))
  }
  expect([...tenths].filter((tenth) => tenth < 10)).toHaveLength(10)
})

const motor = machineLayout(bootCleaner).motor!

function moment(change: Partial<Moment> = {}, frame: Partial<StageFrame> = {}): Moment {
  return {
    frame: { modelTime: 3, pace: 40, sense: 1, ...frame } as StageFrame,
    apart: 0,
    caseState: 'clear',
    reducedMotion: false,
    ...change,
  } as Moment
}

function drawn(index: number, when: Moment) {
  const sign = sparkSign(motor, sparkPaint(), { height: 900 })
  sign.setIndex(index)
  sign.paint(when)
  const { geometry } = sign.object.children[0] as Points
  const column = (name: string) => [...geometry.getAttribute(name).array]
  const places = column('position')
  const lights = column('light')
  const shown = lights.flatMap((light, n) =>
    light > 0 ? [{ light, place: places.slice(3 * n, 3 * n + 3), soft: column('soft')[n]! }] : [],
  )
  sign.dispose()
  return { visible: sign.object.visible, shown }
}

test('sparks fly where the bars leave the brushes: above the right one, below the left one', () => {
  const { shown, visible } = drawn(2, moment())
  expect(visible).toBe(true)
  expect(shown.length).toBeGreaterThan(20)
  for (const { place } of shown) {
    const [x, y, z] = place
    expect(x! * y!).toBeGreaterThan(0)
    near(Math.hypot(x!, y!), 1.03 * motor.commutatorRadius, 1e-4)
    expect(z!).toBeGreaterThan(motor.commutatorBack)
    expect(z!).toBeLessThan(motor.commutatorFront)
  }
  for (const { place } of drawn(2, moment({}, { sense: -1 })).shown)
    expect(place[0]! * place[1]!).toBeLessThan(0)
})

test('no sparks are drawn without an index, in parts, or in a closed case', () => {
  expect(drawn(0, moment()).visible).toBe(false)
  expect(drawn(2, moment({ apart: 0.2 })).visible).toBe(false)
  expect(drawn(2, moment({ caseState: 'closed' })).visible).toBe(false)
})

test('with reduced motion the sparks stand still', () => {
  const early = drawn(2, moment({ reducedMotion: true }, { modelTime: 1 }))
  expect(drawn(2, moment({ reducedMotion: true }, { modelTime: 7.3 })).shown).toEqual(early.shown)
  expect(drawn(2, moment({}, { modelTime: 7.3 })).shown).not.toEqual(
    drawn(2, moment({}, { modelTime: 1 })).shown,
  )
})

test('the glow of one index is the same at every moment', () => {
  const glows = (modelTime: number) =>
    drawn(1.4, moment({}, { modelTime })).shown.filter(({ soft }) => soft === 1)
  expect(glows(0.1)).toEqual(glows(9.77))
  expect(glows(0.1)).toHaveLength(6)
})

test('only a motor that turns under power sparks, and the stage is told in tenths', () => {
  const machine = bootCleaner as BrushedMachine
  const reading = { ...newReading(), wormSpeed: 400, currentMean: 2, currentRms: 3.023 }
  const now = (change: Partial<Readout>): Readout => ({
    motion: 'running',
    reading,
    stopping: false,
    ...change,
  })
  near(sparkingNow(machine, now({})), 1.3, 1e-12)
  expect(sparkingNow(machine, now({ motion: 'still' }))).toBe(0)
  expect(sparkingNow(machine, now({ reading: { ...reading, wormSpeed: 0 } }))).toBe(0)
  expect(sparkingNow(machine, now({ reading: { ...reading, currentRms: 0, currentMean: 0 } }))).toBe(0)
  expect(sparkingNow(machine, now({ reading: { ...reading, currentRms: 1, currentMean: 0.6 } }))).toBe(0)
})
