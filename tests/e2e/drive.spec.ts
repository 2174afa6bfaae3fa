/** From the socket to the outputs, as a person does it: what is changed, what is warned of, what follows. */
import { readFile } from 'node:fs/promises'
import { type Page, expect, test } from '@playwright/test'
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import { completed } from '../../sim/run/completed.ts'
import { heatingRun } from '../../sim/run/heating.ts'
import { steadyWave } from '../../sim/run/waveform-steady.ts'
import { withValue } from '../../sim/machine/fields.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import bootCleaner from '../../assets/machines/boot-cleaner.json' with { type: 'json' }
import { advance, open, openPanel } from './support/app.ts'

const MACHINE = bootCleaner as Machine
const FASTEST = 4
const RPM = 60 / (2 * Math.PI)

async function setSetting(page: Page, setting: number): Promise<void> {
  const field = page.getByLabel('Setting', { exact: true })
  await field.fill(String(setting + 1))
  await field.press('Enter')
}

const openSocket = (page: Page) => page.getByRole('button', { name: 'Load and plug' }).click()
const figures = (text: string | null): number[] =>
  [...(text ?? '').matchAll(/[\d.]+/g)].map(([found]) => Number(found))

/** Speed of the motor in the readings [r/min]: the last of its numbers is steady running, as set. */
async function steadySpeed(page: Page): Promise<number> {
  const row = page.getByRole('row', { name: /^Motor/ }).first()
  return figures(await row.getByRole('cell').first().textContent()).at(-1)!
}

test('207 V and 47 Hz at the socket are set, warned of, and slow the machine as the core says', async ({
  page,
}) => {
  await open(page)
  await openPanel(page, 'Readings')
  const before = await steadySpeed(page)
  await openSocket(page)
  await page.getByLabel('Mains voltage', { exact: true }).fill('207')
  await page.getByLabel('Mains frequency', { exact: true }).fill('47')
  const warning = page.getByText(/is usually 49.5 to 50.5 Hz at a 50 Hz supply, got 47 Hz/)
  await expect(warning).toBeVisible()
  await expect(page.getByText(/is usually 207 to 253 V/)).toHaveCount(0)

  const weak = withValue(withValue(MACHINE, 'supply.voltage', 207), 'supply.frequency', 47)
  const point = operatingPoint(compileDrive(weak), firstInput())
  await expect.poll(() => steadySpeed(page)).toBe(Math.round(point!.speed * RPM))
  expect(await steadySpeed(page)).toBeLessThan(before)

  // One volt less is outside the usual range, and undo brings the socket back.
  await page.getByLabel('Mains voltage', { exact: true }).fill('206')
  await expect(page.getByText(/is usually 207 to 253 V at a 230 V supply, got 206 V/)).toBeVisible()
  await page.getByLabel('Mains frequency', { exact: true }).fill('40')
  await expect(page.getByText('a number from 47 to 62').first()).toBeVisible()
})

test('a jammed wheel shows in current, ledger, fuse and heat', async ({ page }) => {
  await open(page)
  await setSetting(page, FASTEST)
  await page.getByRole('button', { name: /^Turn/ }).first().click()
  await advance(page, 1)
  await openSocket(page)
  await page.getByLabel('Right wheel carries').selectOption('jammed')
  await advance(page, 0.5)
  const locked = operatingPoint(compileDrive(MACHINE), {
    ...firstInput(),
    setting: FASTEST,
    jammed: 'right',
  })!.reading
  const note = page.getByRole('note').filter({ hasText: 'Jammed' })
  await expect(note).toContainText(`draws ${locked.currentMean.toFixed(1)} A`)
  await expect(page.getByText(/of the way to opening/)).toContainText(/Fuse: [1-9]\d? %/)

  await openPanel(page, 'Power')
  const taken = Math.round(locked.wallPower)
  const nothing = page.getByRole('heading', { name: `Nothing reaches the wheels: ${taken} W are lost` })
  await expect(nothing).toBeVisible()

  await openPanel(page, 'Heat')
  const jammed = { ...firstInput(), setting: FASTEST, jammed: 'right' as const }
  const { passages } = completed(heatingRun(MACHINE, jammed, { duration: 600 }))!
  const { seconds } = passages.byHotSpot.find((each) => each.insulation === 'B' && each.level === 'red')!
  expect(seconds).toBeGreaterThan(60)
  expect(seconds).toBeLessThan(120)
  const passed = `Hottest spot past class B after 1 min ${Math.round(seconds - 60)} s`
  await expect(page.getByRole('heading', { name: passed })).toBeVisible()

  await advance(page, 4)
  await expect(page.getByText('The fuse has opened.')).toBeVisible()
  await page.getByRole('button', { name: 'New fuse' }).click()
  await expect(page.getByText('The fuse has opened.')).toHaveCount(0)
})

test('unplugged with a charged capacitor, it tells what is left, for how long, and to wait', async ({
  page,
}) => {
  await open(page)
  await page.evaluate(() =>
    window.counterturn.edit((machine) => ({
      ...machine,
      rectifier: machine.rectifier && { ...machine.rectifier, capacitance: 2200, bleedResistance: 10 },
      transformer: machine.transformer,
    })),
  )
  await setSetting(page, FASTEST)
  await page.getByRole('button', { name: /^Turn/ }).first().click()
  await advance(page, 1.5)
  await openSocket(page)
  await page.getByRole('button', { name: 'Unplug' }).click()
  const charge = page.getByRole('region', { name: 'Charge that is left' })
  await expect(charge).toContainText('Stored charge outlives the plug')
  const [atOnce = 0, energy = 0] = figures(await charge.textContent())
  expect(atOnce).toBeGreaterThan(20)
  expect(energy).toBeCloseTo((2200e-6 * atOnce ** 2) / 2, 1)
  await advance(page, 0.3)
  const [later = 0] = figures(await charge.textContent())
  expect(later).toBeLessThan(atOnce)
  expect(later).toBeGreaterThan(1)
  await advance(page, 2)
  const [rest = 0] = figures(await charge.textContent())
  // Below the drop of the brushes the motor takes nothing more; the bleed resistor has the rest.
  expect(rest).toBeLessThanOrEqual(MACHINE.motor!.brushDrop)
})

/** Browser and Node round sines and exponentials differently in the last digit; a run of the integrator keeps that. */
const ROUNDING = 1e-11

test('numbers saved as CSV are those of the core', async ({ page }) => {
  await open(page)
  await setSetting(page, FASTEST)
  await openPanel(page, 'Waves')
  await expect(page.getByText(/Steady running, setting 5/)).toBeVisible()
  const waiting = page.waitForEvent('download')
  await page
    .getByRole('group', { name: 'Save Waves' })
    .getByRole('button', { name: 'Numbers as CSV' })
    .click()
  const download = await waiting
  expect(download.suggestedFilename()).toMatch(/\.csv$/)
  const text = await readFile(await download.path(), 'utf8')
  const [head = '', ...rows] = text.trimEnd().split('\r\n')
  const headings = head.split(',')
  const { wave } = steadyWave(compileDrive(MACHINE), { ...firstInput(), setting: FASTEST }, 2, rows.length)!
  const column = (heading: string) => {
    const place = headings.indexOf(heading)
    expect(place, heading).toBeGreaterThanOrEqual(0)
    return rows.map((row) => Number(row.split(',')[place]))
  }
  const expectColumn = (heading: string, values: Float64Array) => {
    const most = Math.max(...values.map(Math.abs))
    const misses = column(heading).map((value, at) => Math.abs(value - values[at]!))
    expect(misses, heading).toHaveLength(values.length)
    expect(Math.max(...misses) / most, heading).toBeLessThan(ROUNDING)
  }
  expectColumn('time [s]', wave.time)
  expectColumn('motor current [A]', wave.motorCurrent)
  expectColumn('line current [A]', wave.lineCurrent)
  expectColumn('motor torque [N m]', wave.torque)
})
