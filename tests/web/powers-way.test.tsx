import type { ReactNode } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { PowersWay } from '../../web/drive/PowersWay.tsx'
import { PowersWayStop } from '../../web/drive/PowersWayStop.tsx'
import { ledger } from '../../web/drive/ledger.ts'
import {
  leftBehind,
  lossText,
  lostAt,
  onwardText,
  stopNumbers,
  taken,
} from '../../web/drive/powers-way-numbers.ts'
import { powersWay, stopFrom, stopsOf } from '../../web/drive/powers-way.ts'
import { WorkshopProvider, createWorkshop } from '../../web/frame/workshop.ts'
import { situationOf } from '../../web/instrument/situation.ts'
import { litParts } from '../../web/scene/lit.ts'
import { partsOf } from '../../sim/pose/parts.ts'
import { firstBench } from '../../web/store/bench.ts'
import type { PowerStop } from '../../web/store/view.ts'
import { bootCleaner, classroomModel, cordWinder, demoMachines, ventOpener } from '../support/machines.ts'
import { near } from '../support/near.ts'

const smoothed: Machine = {
  ...bootCleaner,
  name: 'Smoothed boot cleaner',
  rectifier: { diodeDrop: 0.8, capacitance: 2200, bleedResistance: 10 },
}
const all: readonly Machine[] = [...demoMachines, smoothed]

const steadyAt = (machine: Machine, setting: number) =>
  operatingPoint(compileDrive(machine), { ...firstInput(), setting })

describe('the power’s way', () => {
  test('passes taps and triacs ahead of the rectifier, and a chopper next to the motor', () => {
    expect(stopsOf(smoothed).slice(0, 6)).toEqual([
      'socket',
      'transformer',
      'setting',
      'rectifier',
      'capacitor',
      'brushes',
    ])
    expect(stopsOf(ventOpener).slice(0, 3)).toEqual(['socket', 'setting', 'brushes'])
    expect(stopsOf(cordWinder).slice(0, 3)).toEqual(['socket', 'setting', 'brushes'])
    expect(stopsOf(classroomModel)).toEqual(['socket', 'worm', 'wheels', 'outputs'])
  })

  test.each(all.map((machine) => [machine.name, machine] as const))('of the %s ends', (_, machine) => {
    const stops = stopsOf(machine)
    expect(new Set(stops).size).toBe(stops.length)
    const forwards: PowerStop[] = []
    for (let at = stopFrom(stops, null, 1); at !== null; at = stopFrom(stops, at, 1)) forwards.push(at)
    expect(forwards).toEqual(stops)
    expect(stopFrom(stops, stops[0]!, -1)).toBeNull()
  })

  test.each(all.map((machine) => [machine.name, machine] as const))(
    'of the %s is told in plain sentences, and lights a part of it at each stop',
    (_, machine) => {
      const parts = partsOf(machine).map(({ part }) => part)
      for (const { stop, name, happens, caution } of powersWay(machine)) {
        expect(name).toMatch(/^[A-Z][a-z]/)
        expect(happens).toMatch(/^[A-Z].*\.$/)
        if (caution !== null) expect(caution).toMatch(/^[A-Z].*\.$/)
        expect(
          litParts(stop).some((part) => parts.includes(part)),
          stop,
        ).toBe(true)
      }
    },
  )

  test('says wherever mains voltage or a charge can stand', () => {
    const cautionAt = (machine: Machine, stop: PowerStop) =>
      powersWay(machine).find((each) => each.stop === stop)?.caution ?? ''
    expect(cautionAt(bootCleaner, 'socket')).toMatch(/licensed people, by local rules/)
    expect(cautionAt(smoothed, 'capacitor')).toMatch(/charged after the plug is out/)
    for (const stop of ['setting', 'brushes', 'commutator'] as const) {
      expect(cautionAt(cordWinder, stop)).toMatch(/Not separated from the mains/)
      expect(cautionAt(bootCleaner, stop)).not.toMatch(/Not separated/)
    }
  })
})

describe.each(all.map((machine) => [machine.name, machine] as const))(
  'numbers along the %s',
  (_, machine) => {
    const settings = machine.control.steps.map((_step, setting) => setting)

    test('lose together what the ledger loses, and leave what the outputs get', () => {
      for (const setting of settings) {
        const point = steadyAt(machine, setting)
        expect(point).not.toBeNull()
        const { reading } = point!
        const { parts } = ledger(machine, reading)
        const losses = parts.filter(({ kind }) => kind === 'loss').reduce((sum, { watts }) => sum + watts, 0)
        const lost = stopsOf(machine).reduce((sum, stop) => sum + lostAt(machine, stop, reading), 0)
        near(lost, losses, 1e-9 * taken(reading))
        const outputs = reading.outputLeft + reading.outputRight
        near(leftBehind(machine, 'outputs', reading), outputs, 1e-6 * taken(reading))
      }
    })

    test('are numbers with their units at every stop', () => {
      for (const setting of settings) {
        const { reading } = steadyAt(machine, setting)!
        const situation = situationOf(machine, { ...firstBench, setting }, reading)
        for (const stop of stopsOf(machine)) {
          for (const { name, text } of stopNumbers(stop, situation)) expect(text, name).toMatch(/^−?\d/)
          expect(lossText(stop, situation) + onwardText(stop, situation)).not.toMatch(/NaN|Infinity|–/)
        }
      }
    })
  },
)

const inside = (machine: Machine, node: ReactNode): string =>
  renderToStaticMarkup(<WorkshopProvider value={createWorkshop(machine, 'light')}>{node}</WorkshopProvider>)

function pageAt(machine: Machine, stop: PowerStop): string {
  const found = powersWay(machine).find((each) => each.stop === stop)!
  return inside(machine, <PowersWayStop stop={found} />)
}

test('the panel begins with the light out', () => {
  expect(inside(bootCleaner, <PowersWay />)).toContain('Follow the power')
  expect(inside(classroomModel, <PowersWay />)).toContain('from the hand crank to both outputs')
})

test('a stop shows its words, its wave and what is lost', () => {
  const page = pageAt(bootCleaner, 'transformer')
  expect(page).toContain('Two coils share one iron core')
  expect(page).toContain('Behind the transformer over one period')
  expect(page).toMatch(/Lost in core and coils: [\d.]+ W, [\d.]+ % of what comes in/)
})

test('a crank has numbers and no waves', () => {
  const page = pageAt(classroomModel, 'worm')
  expect(page).toContain('Lost in both meshes')
  expect(page).not.toContain('over one period')
})
