import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { compileDrive } from '../../sim/drive/drive.ts'
import { type DriveInput, firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { newReading, readAt, readState } from '../../sim/drive/reading.ts'
import { restState } from '../../sim/drive/state.ts'
import { step } from '../../sim/drive/step.ts'
import { CLASS_TEMPERATURE } from '../../sim/heat/insulation.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { rpm } from '../../sim/quantity/convert.ts'
import { completed } from '../../sim/run/completed.ts'
import { csvText } from '../../web/chart/table.ts'
import { balance, balanceLength } from '../../web/drive/torque-balance.ts'
import { longTorque, settledWinding } from '../../web/drive/torque-heat.ts'
import { demandTorque, torqueLines } from '../../web/drive/torque-lines.ts'
import { cursorWords, torqueColumns, torqueView } from '../../web/drive/torque-view.ts'
import { hotWords, meetingWords } from '../../web/drive/torque-words.ts'
import { TorqueBalance, balanceColumns } from '../../web/drive/TorqueBalance.tsx'
import { TorquePanel } from '../../web/drive/TorquePanel.tsx'
import { WorkshopProvider, createWorkshop } from '../../web/frame/workshop.ts'
import { type SweepOrder, runOrder } from '../../web/run-work/orders.ts'
import { sweepTorque } from '../../sim/run/torque-sweep.ts'
import { bootCleaner, classroomModel, cordWinder, ventOpener } from '../support/machines.ts'

const POINTS = 21

function viewOf(machine: Machine, change: Partial<DriveInput> = {}) {
  const drive = compileDrive(machine)
  const input = { ...firstInput(), ...change }
  const found = torqueLines(drive, completed(sweepTorque(drive, POINTS)))
  if (!found) throw new Error('this machine has lines')
  const point = operatingPoint(drive, input)
  return {
    drive,
    found,
    point,
    view: torqueView({ found, drive, input, point, thermal: machine.thermal, winding: 20 }),
  }
}

describe.each([bootCleaner, ventOpener, cordWinder])('torque over speed of $name', (machine) => {
  const { drive, found, view } = viewOf(machine, { setting: machine.control.steps.length - 1 })

  test('every setting has a line that falls from its standstill', () => {
    expect(view.lines).toHaveLength(machine.control.steps.length)
    for (const { torque } of view.lines) {
      expect(torque[0]).toBeGreaterThan(0)
      expect(torque[POINTS - 1]).toBeLessThan(torque[0]!)
    }
  })

  test('what goes with it is what the drive reads there', () => {
    const i = 7
    view.lines.forEach((line, setting) => {
      const w = found.speed[i]!
      const reading = readAt(newReading(), drive, { ...firstInput(), setting }, w, 0)
      const given = reading.motorTorque * w - reading.frictionLoss - reading.fanLoss
      expect(line.shaftPower[i]).toBeCloseTo(given, 9)
      expect(line.efficiency[i]).toBeCloseTo(Math.max(0, given / (reading.inputPower + reading.coreLoss)), 9)
      expect(line.copperLoss[i]).toBeCloseTo(reading.copperLoss, 9)
      expect(line.brushLoss[i]).toBeCloseTo(reading.brushLoss, 9)
      expect(line.frictionLoss[i]).toBeCloseTo(reading.frictionLoss, 9)
    })
  })

  test('motor and demand meet where the machine settles', () => {
    const { speed, torque } = view.steady!
    const asked = demandTorque(drive, { ...firstInput(), setting: view.setting }, (speed * Math.PI) / 30)
    expect(asked).toBeCloseTo(torque, 7)
    expect(meetingWords(view, false)).toMatch(/^Motor and load meet at \d+/)
    expect(cursorWords(view, speed)).toContain('asked for')
  })
})

describe('too hot to hold', () => {
  const { found, view } = viewOf(bootCleaner, { setting: 4 })
  const thermal = bootCleaner.thermal!

  test('at the limit the two bodies settle with the hottest spot at the class', () => {
    const held = longTorque(found, thermal, 20)
    const limited = found.speed.findIndex((_, i) => held[i]! < Infinity)
    expect(limited).toBe(0)
    // From here on the stronger settings are checked at the node itself: just above is too warm, just below is not.
    found.speed.forEach((w, i) => {
      view.lines.forEach((line) => {
        const copper = (line.copperLoss[i]! * (234.5 + 120)) / (234.5 + 20)
        const brush = line.brushLoss[i]! / 2
        const friction = line.frictionLoss[i]!
        const settled = settledWinding(thermal, copper + brush + 0.4 * friction, brush + 0.6 * friction, w)
        const isHot = settled + thermal.hotSpotMargin > CLASS_TEMPERATURE[thermal.insulation]
        if (line.torque[i]! > 0) expect(line.torque[i]! > held[i]!).toBe(isHot)
      })
    })
  })

  test('a winding without losses is as warm as the air; each watt adds to it', () => {
    expect(settledWinding(thermal, 0, 0, 500)).toBe(thermal.ambient)
    // standstill: 1 W through 0.35 W/K to the case and 0.16 W/K to the air
    expect(settledWinding(thermal, 1, 0, 0) - thermal.ambient).toBeCloseTo(1 / 0.35 + 1 / 0.16, 12)
  })

  test('is told for the point, and not where no heat is described', () => {
    expect(hotWords(view, 'B')).toContain('class B')
    expect(hotWords({ ...view, longTorque: null }, 'B')).toBe('')
    const point = { speed: view.speeds[1]!, torque: view.lines[4]!.torque[1]!, current: 1 }
    expect(hotWords({ ...view, steady: point }, 'B')).toContain('pauses')
  })
})

test('a load that is too heavy is told with both torques', () => {
  const heavy = { ...ventOpener.outputs.loads[0]!, active: 3 }
  const machine = { ...ventOpener, outputs: { ...ventOpener.outputs, loads: [heavy] } }
  const { view } = viewOf(machine)
  expect(view.steady).toBeNull()
  expect(meetingWords(view, false)).toMatch(/^The load asks .* to start, the motor has /)
})

test('the file of the lines holds what the core gives', () => {
  const { found, view } = viewOf(bootCleaner)
  const rows = csvText(torqueColumns(view)).split('\r\n')
  const at = rows[0]!.split(',').indexOf('Setting 3: torque [N m]')
  expect(rows[5]!.split(',')[at]).toBe(String(found.lines[2]!.torque[4]))
  expect(rows[5]!.split(',')[0]).toBe(String(rpm(found.speed[4]!)))
})

test('the other thread is asked for the same sweep, and answers with what it was asked', () => {
  const order: SweepOrder = {
    kind: 'sweep',
    machine: cordWinder,
    warmth: { winding: 90, magnet: 20 },
    points: 5,
  }
  const answer = completed(runOrder(order))
  expect(answer.order).toEqual(order)
  const warm = compileDrive(cordWinder, order.warmth)
  expect(answer.curves).toEqual(completed(sweepTorque(warm, 5)))
  // warm copper leaves less torque at standstill
  const cold = completed(sweepTorque(compileDrive(cordWinder), 5))
  answer.curves.forEach(({ torque }, i) => expect(torque[0]).toBeLessThan(cold[i]!.torque[0]!))
})

test('a crank has nothing to sweep', () => {
  expect(completed(sweepTorque(compileDrive(classroomModel), 5))).toEqual([])
})

describe('torque balance', () => {
  const steady = (machine: Machine, change: Partial<DriveInput> = {}) => {
    const input = { ...firstInput(), ...change }
    const point = operatingPoint(compileDrive(machine), input)!
    return balance(machine, point.reading, input.sense)!
  }
  const cases: readonly (readonly [string, ReturnType<typeof steady>])[] = [
    ['A, one wheel loaded', steady(bootCleaner, { setting: 4, leftLoad: 1 })],
    ['B, closing', steady(ventOpener, { setting: 3, sense: -1 })],
    ['C, setting 5', steady(cordWinder, { setting: 4 })],
    ['D, cranked', steady(classroomModel)],
  ]

  test.each(cases)('adds up, what takes as long as what gives: %s', (_name, told) => {
    const { parts, total } = told
    expect(parts.some(({ kind }) => kind === 'rest' || kind === 'stored')).toBe(false)
    expect(parts.reduce((sum, { torque }) => sum + torque, 0)).toBeCloseTo(total, 9)
    const taking = parts.reduce((sum, { torque }) => sum + Math.max(0, torque), 0)
    expect(balanceLength(told)).toBeCloseTo(taking, 9)
  })

  test('on the way up the moving parts take theirs; coasting on a capacitor they give it', () => {
    const machine = { ...bootCleaner, rectifier: { ...bootCleaner.rectifier!, capacitance: 2200 } }
    const drive = compileDrive(machine)
    const input = { ...firstInput(), setting: 4 }
    const state = restState()
    const read = () => balance(machine, readState(newReading(), drive, input, state), 1)!
    const intoMotion = (told: NonNullable<ReturnType<typeof balance>>) => {
      expect(told.parts.some(({ kind }) => kind === 'rest')).toBe(false)
      return told.parts.find(({ kind }) => kind === 'stored')!.torque
    }
    for (let i = 0; i < 12; i++) step(state, drive, input, 1 / 240)
    expect(intoMotion(read())).toBeGreaterThan(0)
    for (let i = 0; i < 240; i++) step(state, drive, input, 1 / 240)
    input.connected = false
    for (let i = 0; i < 24; i++) step(state, drive, input, 1 / 240)
    expect(intoMotion(read())).toBeLessThan(0)
  })

  test('without losses each wheel has half of the ratio times the motor torque', () => {
    const gearing = { ...bootCleaner.gearing, friction: 0 }
    const outputs = { ...bootCleaner.outputs, bearingTorque: 0 }
    const rotor = { ...bootCleaner.rotor, frictionTorque: 0, viscousTorque: 0, fanTorque: 0 }
    const { parts, total, copies } = steady({ ...bootCleaner, gearing, outputs, rotor })
    expect(copies).toBe(20)
    const torqueOf = (kind: string) => parts.find((part) => part.kind === kind)!.torque
    expect(torqueOf('left')).toBeCloseTo(total / 2, 9)
    expect(torqueOf('right')).toBeCloseTo(total / 2, 9)
  })

  test('a part that is missing from the reading is drawn as unaccounted', () => {
    const { reading } = operatingPoint(compileDrive(bootCleaner), firstInput())!
    const told = balance(bootCleaner, { ...reading, fanLoss: reading.fanLoss + 1 }, 1)!
    expect(told.parts.at(-1)).toMatchObject({ kind: 'rest' })
    expect(told.parts.at(-1)!.torque).toBeLessThan(0)
  })

  test('is not told at standstill', () => {
    const { reading } = operatingPoint(compileDrive(bootCleaner), { ...firstInput(), jammed: 'left' })!
    expect(balance(bootCleaner, reading, 1)).toBeNull()
  })

  test('goes into a file with one row for each case', () => {
    const [, one] = cases[0]!
    const rows = csvText(balanceColumns(one, one)).trim().split('\r\n')
    expect(rows).toHaveLength(3)
    expect(rows[1]).toBe(rows[2])
  })
})

const page = (machine: Machine, shown = <TorquePanel />): string =>
  renderToStaticMarkup(<WorkshopProvider value={createWorkshop(machine, 'light')}>{shown}</WorkshopProvider>)

test.each([bootCleaner, ventOpener, classroomModel])(
  'the panel of $name shows numbers that are numbers',
  (machine) => {
    expect(page(machine)).not.toMatch(/NaN|Infinity|undefined/)
  },
)

test('a cranked machine has no motor line and says so, but a balance', () => {
  expect(page(classroomModel)).toContain('A hand turns this machine')
  expect(page(classroomModel)).toContain('From the hand to two wheels')
  expect(page(classroomModel, <TorqueBalance />)).toContain('13.50 ×')
})

test('ten copies and a third are drawn for 31 teeth and 3 starts', () => {
  const html = page(cordWinder, <TorqueBalance />)
  const widths = [...html.matchAll(/class="bars-copy"[^>]*? width="([\d.]+)"/g)].map(([, width]) =>
    Number(width),
  )
  expect(widths).toHaveLength(11)
  expect(widths[10]! / widths[0]!).toBeGreaterThan(0.25)
  expect(widths[10]! / widths[0]!).toBeLessThan(1 / 3 + 1e-9)
})
