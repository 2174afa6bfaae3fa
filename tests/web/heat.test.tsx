import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { CLASS_TEMPERATURE, heatLevel } from '../../sim/heat/insulation.ts'
import { SURFACE_KINDS } from '../../sim/heat/thermometer.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { rpm } from '../../sim/quantity/convert.ts'
import { completed } from '../../sim/run/completed.ts'
import { csvText } from '../../web/chart/table.ts'
import { HeatPanel } from '../../web/drive/HeatPanel.tsx'
import { hasHeat } from '../../web/drive/heat-machine.ts'
import { namePlaces } from '../../web/drive/heat-names.ts'
import { heatShares } from '../../web/drive/heat-sources.ts'
import { slowTimeConstant, spanSeconds, timeText, timeUnit } from '../../web/drive/heat-span.ts'
import { heatColumns, heatView, momentAt } from '../../web/drive/heat-view.ts'
import {
  amberOf,
  dutyWords,
  endWords,
  happenings,
  headline,
  limitOf,
  longestWords,
  passedBy,
  slowerIsHotter,
} from '../../web/drive/heat-words.ts'
import { THROUGHOUT, heatingOrder } from '../../web/drive/heat-work.ts'
import {
  behindReading,
  behindWords,
  fooledWords,
  rangeText,
  shownFor,
  usualEmissivity,
} from '../../web/drive/thermo-words.ts'
import { WorkshopProvider, createWorkshop } from '../../web/frame/workshop.ts'
import { runOrder } from '../../web/run-work/orders.ts'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../support/machines.ts'
import { degreeText } from '../../web/instrument/reading-text.ts'

const thermalOf = ({ thermal }: Machine) => {
  if (!thermal) throw new Error('this machine tells where its heat goes')
  return thermal
}

function heatedFor(machine: Machine, change: object, duration: number, ways = THROUGHOUT) {
  const order = heatingOrder(machine, { ...firstInput(), connected: true, ...change }, duration, ways)
  const run = completed(runOrder(order))
  if (!run) throw new Error('this machine warms')
  return { order, run }
}

const settledOf = (machine: Machine, change: object = {}) => {
  const inputs = machine.control.steps.map((_, setting) => ({ ...firstInput(), ...change, setting }))
  const settled = completed(runOrder({ kind: 'settled', machine, inputs }))
  if (!settled) throw new Error('this machine warms')
  return settled
}

describe('the time that is shown', () => {
  test('one body behind a perfect link has the constant C/G', () => {
    const thermal = { ...thermalOf(bootCleaner), windingToCase: 1e9, windingToCaseFan: 0, caseToAirFan: 0 }
    const C = thermal.windingCapacity + thermal.caseCapacity
    expect(slowTimeConstant(thermal, 0)).toBeCloseTo(C / thermal.caseToAir, 3)
  })
  test('with so loose a link that each body is alone, it is the slower one', () => {
    const thermal = { ...thermalOf(bootCleaner), windingToCase: 1e-6, windingToCaseFan: 0 }
    expect(slowTimeConstant(thermal, 0) / (thermal.windingCapacity / 1e-6)).toBeCloseTo(1, 3)
  })
  test.each([bootCleaner, ventOpener, cordWinder])(
    'settled leaves little of the rise of $name',
    (machine) => {
      const setting = machine.control.steps.length - 1
      const point = operatingPoint(compileDrive(machine), { ...firstInput(), setting })
      const duration = spanSeconds('settled', thermalOf(machine), point?.speed ?? 0)
      const end = settledOf(machine)[setting]!
      if ('reason' in end) throw new Error(end.reason)
      const { columns } = heatedFor(machine, { setting }, duration).run
      const { ambient } = thermalOf(machine)
      expect((columns.winding.at(-1)! - ambient) / (end.winding - ambient)).toBeGreaterThan(0.98)
    },
  )
  test('times are told as people tell them', () => {
    expect([41, 87, 720, 4320, 3600, 7199.9].map(timeText)).toEqual([
      '41 s',
      '1 min 27 s',
      '12 min',
      '1 h 12 min',
      '1 h',
      '2 h',
    ])
    expect(timeUnit(600).name).toBe('min')
    expect(timeUnit(4 * 3600)).toEqual({ name: 'h', seconds: 3600 })
  })
})

describe('a locked rotor', () => {
  const jam = heatedFor(bootCleaner, { setting: 4, jammed: 'left' }, 600)
  const thermal = thermalOf(bootCleaner)

  test('is past its class after the time of the run, which the headline tells', () => {
    const passed = passedBy(jam.run, thermal)
    expect(passed.amber).toBeLessThan(passed.red)
    expect(passed.red).toBeLessThan(passed.mean)
    const at = (seconds: number) => momentAt(jam.run.columns, seconds).winding
    expect(Math.abs(at(passed.mean) - CLASS_TEMPERATURE.B)).toBeLessThan(0.2)
    expect(Math.abs(at(passed.red) + thermal.hotSpotMargin - CLASS_TEMPERATURE.B)).toBeLessThan(0.2)
    expect(headline(thermal, passed, null)).toBe(`Hottest spot past class B after ${timeText(passed.red)}`)
  })
  test('settles nowhere, and says so', () => {
    const [, , , , settled] = settledOf(bootCleaner, { jammed: 'left' })
    expect(settled).toHaveProperty('reason')
    expect(endWords(thermal, passedBy(jam.run, thermal), settled!)).toMatch(/^No settling: .*\.$/)
  })
  test('melts its fuse, which ends the warming only where it may', () => {
    const acts = heatedFor(bootCleaner, { setting: 4, jammed: 'left' }, 600, {
      ...THROUGHOUT,
      protectionActs: true,
    })
    expect(jam.run.opened).toBeLessThan(Infinity)
    expect(happenings(bootCleaner, jam.run, false, null).join(' ')).toContain(
      'the lines go on as if it did not',
    )
    expect(happenings(bootCleaner, acts.run, true, null).join(' ')).toContain('ends the warming')
    expect(Math.max(...acts.run.columns.winding)).toBeLessThan(Math.max(...jam.run.columns.winding))
  })
})

describe('what is drawn and told', () => {
  const thermal = thermalOf(bootCleaner)
  const heated = heatedFor(bootCleaner, { setting: 4 }, 3600)
  const still = heatedFor(bootCleaner, { setting: 4 }, 3600, { ...THROUGHOUT, fanCools: false })
  const view = heatView(thermal, heated, still)

  test('the CSV has the core’s own numbers', () => {
    const { columns } = heated.run
    const [head, first] = csvText(heatColumns(view)).split('\r\n')
    expect(head).toContain('winding, mean [degC]')
    expect(first!.split(',').slice(0, 5).map(Number)).toEqual([
      columns.time[0],
      columns.winding[0],
      columns.case[0],
      rpm(columns.speed[0]!),
      columns.current[0],
    ])
  })
  test('everything drawn lies within the axes, the class as well', () => {
    for (const column of [view.hottest, heated.run.columns.case, still.run.columns.winding])
      for (const T of column) {
        expect(T).toBeLessThan(view.most)
        expect(T).toBeGreaterThan(view.least)
      }
    expect(limitOf(thermal)).toBeLessThan(view.most)
    expect(view.time.at(-1)).toBe(view.end)
  })
  test('without the fan’s air it is hotter', () => {
    expect(still.run.columns.winding.at(-1)).toBeGreaterThan(heated.run.columns.winding.at(-1)!)
  })
  test('levels are those of the core', () => {
    expect(heatLevel(amberOf(thermal), thermal.insulation)).toBe('amber')
    expect(heatLevel(limitOf(thermal), thermal.insulation)).toBe('red')
  })
  test('a winding that stays cool may go on', () => {
    const settled = settledOf(bootCleaner)[4]!
    expect(headline(thermal, passedBy(heated.run, thermal), settled)).toMatch(
      /^The winding settles at \d+ °C, the case at \d+ °C$/,
    )
    expect(endWords(thermal, passedBy(heated.run, thermal), settled)).toContain('may go on for hours')
  })
  test('pauses cool it', () => {
    const paused = heatedFor(bootCleaner, { setting: 4 }, 3600, { ...THROUGHOUT, duty: { on: 5, off: 10 } })
    expect(Math.max(...paused.run.columns.winding)).toBeLessThan(Math.max(...heated.run.columns.winding))
  })
  test('pauses are told by what they end in, and by how long it may be on', () => {
    const input = { ...firstInput(), setting: 4, leftLoad: 1, rightLoad: 1 }
    const duty = { on: 300, off: 600 }
    const swing = completed(runOrder({ kind: 'duty', machine: cordWinder, input, duty }))
    if (!swing || 'reason' in swing) throw new Error('it settles')
    expect(dutyWords(swing)).toContain(`and ${degreeText(swing.hot.winding)}, the case`)
    const longest = completed(runOrder({ kind: 'longest', machine: cordWinder, input, off: 600 }))
    expect(longest!.on).toBeGreaterThan(300)
    expect(longestWords(thermalOf(cordWinder), longest!.on, 600)).toContain(
      'With pauses of 10 min it may be on for',
    )
    expect(longestWords(thermal, Infinity, 600)).toContain('without any pause')
    expect(longestWords(thermal, 0, 600)).toContain('not be on even for a second')
  })
  test('whole degrees have a true minus', () => {
    expect([-12.4, -0.2, 43.5, Number.NaN].map(degreeText)).toEqual(['−12 °C', '0 °C', '44 °C', '–'])
  })
})

test('the vent opener is hotter at setting 3 than at 4, and that is told', () => {
  const settled = settledOf(ventOpener)
  const [, , slow, fast] = settled
  if ('reason' in slow! || 'reason' in fast!) throw new Error('both settle')
  expect(slow!.winding).toBeGreaterThan(fast!.winding)
  expect(slow!.speed).toBeLessThan(fast!.speed)
  const words = slow!.heat <= fast!.heat ? 'Less arises' : 'More arises'
  expect(slowerIsHotter(settled)).toContain(`Setting 3 is slower than 4 and ends hotter. ${words}`)
  expect(slowerIsHotter(settledOf(bootCleaner))).toBeNull()
})

test.each([bootCleaner, ventOpener, cordWinder])(
  'the shares of $name are the whole of its losses',
  (machine) => {
    const { reading } = operatingPoint(compileDrive(machine), firstInput())!
    const shares = heatShares(thermalOf(machine), reading)
    const all = shares.reduce((sum, { winding, case: body }) => sum + winding + body, 0)
    expect(all).toBeCloseTo(reading.copperLoss + reading.brushLoss + reading.frictionLoss, 9)
    const { columns } = heatedFor(machine, {}, 600).run
    // A run begins at the air's temperature and the shares are told at 20 degC, so resistances differ by a few per cent.
    const winding = shares.reduce((sum, share) => sum + share.winding, 0)
    expect(Math.abs(columns.windingHeat[0]! / winding - 1)).toBeLessThan(0.05)
  },
)

describe('names on close lines', () => {
  const scale = {
    across: { from: 0, to: 60, low: 52, high: 400 },
    up: { from: 0, to: 150, low: 206, high: 26 },
  }
  const line = (name: string, ...y: number[]) => ({ name, x: y.map((_, i) => (60 * i) / (y.length - 1)), y })

  test('stand in a row over all of them, with leaders to their own', () => {
    const places = namePlaces([line('hot', 43, 43), line('mean', 33, 33), line('case', 30, 30)], scale)
    expect(places.map(({ leader }) => leader === null)).toEqual([true, false, false])
    expect(new Set(places.map(({ y }) => y)).size).toBe(1)
    const xs = places.map(({ x }) => x)
    expect(xs[0]! - xs[1]!).toBeGreaterThan(80)
    expect(xs[1]! - xs[2]!).toBeGreaterThan(80)
  })
  test('stand over their own line where there is room', () => {
    const places = namePlaces([line('hot', 120, 120), line('case', 30, 30)], scale)
    expect(places.every(({ leader }) => leader === null)).toBe(true)
    expect(places[1]!.y).toBeGreaterThan(places[0]!.y)
  })
  test('stay inside a narrow chart', () => {
    const narrow = { ...scale, across: { ...scale.across, high: 250 } }
    const places = namePlaces([line('hot', 43, 43), line('mean', 33, 33), line('case', 30, 30)], narrow)
    for (const { x } of places) {
      expect(x).toBeGreaterThan(52)
      expect(x).toBeLessThan(250)
    }
  })
  test('stand beside lines that end early, none on another', () => {
    const early = (name: string, T: number) => ({ name, x: [0, 4], y: [20, T] })
    const places = namePlaces([early('hot', 140), early('mean', 138), early('case', 25)], scale)
    expect(places.every(({ beside }) => beside)).toBe(true)
    expect(places[1]!.y - places[0]!.y).toBeGreaterThanOrEqual(17)
  })
})

describe('a thermometer without contact', () => {
  test('80 °C bare metal among 23 °C: 37.8 °C shown; radiometric balance, derived from a cited formula', () => {
    const thermo = { emissivity: 0.2, setting: 0.95, surroundings: 23 }
    expect(Math.abs(shownFor(80, thermo) - 37.79)).toBeLessThan(0.02)
    expect(behindReading(shownFor(80, thermo), thermo)).toBeCloseTo(80, 9)
    expect(fooledWords(80, thermo)).toContain('shows 38 °C, 42 K too little')
    expect(behindWords(shownFor(80, thermo), thermo)).toBe('Behind a reading of 38 °C is a surface at 80 °C.')
  })
  test('a surface that is as the instrument is set is read as it is', () => {
    const thermo = { emissivity: 0.95, setting: 0.95, surroundings: 21 }
    expect(shownFor(60, thermo)).toBeCloseTo(60, 9)
    expect(fooledWords(60, thermo)).toBe('The case is at 60 °C; the thermometer shows 60 °C.')
  })
  test('a reading that no surface gives is refused', () => {
    const thermo = { emissivity: 0.05, setting: 0.95, surroundings: 200 }
    expect(behindWords(-20, thermo)).toMatch(/^No surface/)
  })
  test.each(SURFACE_KINDS)('$name begins within what is usual', (kind) => {
    expect(usualEmissivity(kind)).toBeGreaterThanOrEqual(kind.least)
    expect(usualEmissivity(kind)).toBeLessThanOrEqual(kind.most)
    expect(rangeText(kind)).toContain(String(kind.least))
  })
})

describe('the panel', () => {
  const shown = (machine: Machine) =>
    renderToStaticMarkup(
      <WorkshopProvider value={createWorkshop(machine, 'light')}>
        <HeatPanel />
      </WorkshopProvider>,
    )

  test('a machine that a hand turns has a sentence and no axes', () => {
    expect(hasHeat(classroomModel)).toBe(false)
    const page = shown(classroomModel)
    expect(page).toContain('A hand turns this machine')
    expect(page).not.toContain('<svg')
  })
  test.each([bootCleaner, ventOpener, cordWinder])(
    '$name has its class, its sources and its caution',
    (machine) => {
      const page = shown(machine)
      expect(page).toContain(`Class ${thermalOf(machine).insulation}`)
      expect(page).toContain('Where the heat comes from')
      expect(page).toContain('A rule of thumb, not a law')
      expect(page).toContain('licensed people')
    },
  )
})
