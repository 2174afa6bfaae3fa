import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { TICKS_PER_TURN, advanceTicks, noTurns } from '../../sim/drive/turns.ts'
import { clearanceAt } from '../../sim/gear/row-clearance.ts'
import { assemblyPhases, clashZones, rowOffset } from '../../sim/gear/timing.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { outputTiming } from '../../sim/machine/output-timing.ts'
import { machineLayout } from '../../sim/pose/layout.ts'
import { WorkshopProvider, createWorkshop } from '../../web/frame/workshop.ts'
import { TimingPanel } from '../../web/timing/TimingPanel.tsx'
import { putIn } from '../../web/timing/put-in.ts'
import {
  distanceAsPutIn,
  freeTicks,
  handTurnOf,
  meetingTooth,
  toothTicks,
  wheelTicks,
} from '../../web/timing/reassembly.ts'
import { rightRowAngle } from '../../web/timing/row-angles.ts'
import { overlapZone, timingSign } from '../../sim/pose/swept-overlap.ts'
import { headline, meetingText, nextText, phaseSentence, zonesText } from '../../web/timing/timing-words.ts'
import { bootCleaner, classroomModel, cordWinder, demoMachines, ventOpener } from '../support/machines.ts'
import { near } from '../support/near.ts'

const atTooth = (machine: Machine, toothOffset: number): Machine => ({
  ...machine,
  outputs: { ...machine.outputs, toothOffset },
})

const pair = outputTiming(bootCleaner)
const layout = machineLayout(bootCleaner)

/** Worm degrees from the beginning, and u there. */
const rowAngleAt = (ticks: number): number => {
  const turns = noTurns()
  advanceTicks(turns, ticks)
  return rightRowAngle(layout, turns)
}

describe('the exercise', () => {
  test('another tooth is asked for only where one clears', () => {
    const phasesOf = (sweepDiameter: number) =>
      assemblyPhases(outputTiming({ ...bootCleaner, outputs: { ...bootCleaner.outputs, sweepDiameter } }))
    expect(nextText({ phases: phasesOf(bootCleaner.outputs.sweepDiameter) })).toBe('Choose another tooth.')
    // tips that reach past the other axis
    expect(nextText({ phases: phasesOf(2.2 * 2 * pair.rows.centreDistance) })).toMatch(/^No tooth clears/)
  })

  test('refuses a tooth at which the rows lie in each other’s way, and no other', () => {
    let refused = 0
    for (let tooth = 0; tooth < 20; tooth++) {
      const distance = distanceAsPutIn(pair, tooth, rowAngleAt(0))
      near(distance, clearanceAt(pair.rows, rowAngleAt(0), rowOffset(pair, tooth)), 0)
      if (distance <= pair.need) refused++
    }
    expect(refused).toBeGreaterThan(0)
    expect(refused).toBeLessThan(10)
  })

  test('the hand turn stops on a whole degree before the rows meet, and one more degree would be too far', () => {
    const from = 0
    const { ticks, short } = handTurnOf(pair, 0, rowAngleAt(from), wheelTicks(pair))
    expect(short).toBe(true)
    const degree = TICKS_PER_TURN / 360
    expect(ticks % degree).toBe(0)
    const offset = rowOffset(pair, 0)
    for (let turned = 0; turned <= ticks; turned += degree)
      expect(clearanceAt(pair.rows, rowAngleAt(turned), offset)).toBeGreaterThan(pair.need)
    const beyond = clearanceAt(pair.rows, rowAngleAt(ticks + 1.01 * degree), offset)
    expect(beyond).toBeLessThanOrEqual(pair.need)
    expect(meetingTooth(pair, ticks)).toBe(Math.floor(ticks / toothTicks(pair)) + 1)
  })

  test('a short step is made whole while it is free, and none is left once the hand has stopped', () => {
    const free = freeTicks(pair, 0, rowAngleAt(0))
    const step = free / 3
    expect(handTurnOf(pair, 0, rowAngleAt(0), step)).toEqual({ ticks: step, short: false })
    expect(freeTicks(pair, 0, rowAngleAt(free))).toBeLessThan(TICKS_PER_TURN / 360)
    expect(handTurnOf(pair, 0, rowAngleAt(free), toothTicks(pair)).short).toBe(true)
  })

  test('a tooth that clears lets the hand make the whole turn from anywhere', () => {
    for (const machine of demoMachines) {
      const each = outputTiming(machine)
      const wanted = wheelTicks(each)
      for (const phase of assemblyPhases(each).filter(({ clear }) => clear))
        expect(handTurnOf(each, phase.toothOffset, 0.3, wanted)).toEqual({ ticks: wanted, short: false })
    }
  })
})

describe('choosing a tooth', () => {
  test('is one step to undo, and none when it is the same', () => {
    const { document } = createWorkshop(bootCleaner, 'light')
    putIn({ document }, 4)
    putIn({ document }, 4)
    expect(document.store.getState().machine.outputs.toothOffset).toBe(4)
    expect(document.store.getState().past).toHaveLength(1)
    document.undo()
    expect(document.store.getState().machine).toBe(bootCleaner)
  })
})

describe('the sign on the stage', () => {
  test('outlines just the points that lie in both sweeps', () => {
    const outline = overlapZone(pair)!
    const { centreDistance: a, sweepRadius } = pair.rows
    for (const [x, z] of outline) {
      const [right, left] = [Math.hypot(x - a, z), Math.hypot(x + a, z)]
      near(Math.max(right, left), sweepRadius, 1e-9)
    }
    expect(Math.min(...outline.map(([x]) => x))).toBeCloseTo(a - sweepRadius, 9)
    expect(Math.max(...outline.map(([x]) => x))).toBeCloseTo(sweepRadius - a, 9)
  })
  test('says whether the rows meet, and is none where the sweeps do not reach each other', () => {
    expect(timingSign(bootCleaner)!.clash).toBe(false)
    expect(timingSign(atTooth(bootCleaner, 3))!.clash).toBe(true)
    const small = { ...bootCleaner, outputs: { ...bootCleaner.outputs, sweepDiameter: 50 } }
    expect(timingSign(small)).toBe(null)
  })
})

describe('words', () => {
  test('tell by how much it clears and where it does not', () => {
    const phases = assemblyPhases(pair)
    expect(headline(phases[0]!, pair)).toBe(`Clear by ${(phases[0]!.distance - pair.need).toFixed(1)} mm`)
    expect(headline(phases.at(-1)!, pair)).toBe('They come too near')
    const zones = clashZones(pair)
    expect(zonesText(zones, pair)).toMatch(/^Rows meet below [\d.]+° and above [\d.]+°\.$/)
    expect(zonesText([], pair)).toBe('Rows pass clear at any angle.')
  })
  test('tell how far the worm is free, never more than it is', () => {
    expect(meetingText({ forward: 0.479, back: 1.2 }, pair)).toBe(
      'The rows come too near 0.47 worm turns on, or 1.20 back.',
    )
    expect(meetingText({ forward: null, back: null }, pair)).toBe('The rows never meet.')
    expect(meetingText({ forward: 0, back: 0 }, pair)).toBe('The rows are too near as they stand.')
  })
  test('count the teeth of rows and of single blades', () => {
    expect(phaseSentence(pair, 10)).toBe(
      'A tooth further turns the left rows by 18° of the 60° between two, which gives 10 different angles.',
    )
    expect(phaseSentence(outputTiming(ventOpener), 36)).toBe(
      'A tooth further turns the left blade by 10°, which gives 36 different angles.',
    )
  })
})

describe('the panel', () => {
  const page = (machine: Machine): string =>
    renderToStaticMarkup(
      <WorkshopProvider value={createWorkshop(machine, 'light')}>
        <TimingPanel />
      </WorkshopProvider>,
    )

  test('lists every phase of the boot cleaner best first, with word and distance, the chosen one checked', () => {
    const html = page(bootCleaner)
    const names = [...html.matchAll(/type="radio"[^>]*aria-label="([^"]*)"/g)].map(([, name]) => name)
    const expected = assemblyPhases(pair).map(
      ({ toothOffset, distance, clear }) =>
        `Tooth ${toothOffset}, .* least ${distance.toFixed(1)} mm, ${clear ? 'clear' : 'clash'}`,
    )
    expect(names).toHaveLength(expected.length)
    names.forEach((name, n) => expect(name).toMatch(new RegExp(expected[n]!)))
    expect(/aria-label="Tooth 1,[^"]*"[^>]*checked|checked[^>]*aria-label="Tooth 1,/.test(html)).toBe(true)
  })

  test('carries the caution where it speaks of opening, and no number that is not one', () => {
    for (const machine of [bootCleaner, classroomModel, cordWinder, ventOpener, atTooth(bootCleaner, 23)]) {
      const html = page(machine)
      expect(html).toContain(
        'Unplug a real machine before opening it. Follow local codes and licensed practice.',
      )
      expect(html).not.toMatch(/NaN|Infinity|undefined/)
    }
  })
})
