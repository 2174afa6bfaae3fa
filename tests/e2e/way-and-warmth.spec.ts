/** The power followed from the socket to the outputs by keys alone, and a machine that runs warm. */
import { type Page, expect, test } from '@playwright/test'
import bootCleaner from '../../assets/machines/boot-cleaner.json' with { type: 'json' }
import cordWinder from '../../assets/machines/cord-winder.json' with { type: 'json' }
import { compileDrive } from '../../sim/drive/drive.ts'
import { firstInput } from '../../sim/drive/input.ts'
import { operatingPoint } from '../../sim/drive/operating-point.ts'
import type { Machine } from '../../sim/machine/machine.ts'
import { advance, open, openPanel } from './support/app.ts'

const RPM = 60 / (2 * Math.PI)

/** Stops of the boot cleaner, a number that stands there, and what can hurt; behind its transformer the switch is safe. */
const STOPS: readonly (readonly [name: string, number: RegExp, caution: RegExp | null])[] = [
  ['Socket', /230\.0 V/, /Mains voltage can kill/],
  ['Transformer', /12 V/, /Mains voltage on the side of the socket/],
  ['Tap switch', / V/, null],
  ['Rectifier', / V/, /heat sink can be hot/],
  ['Carbon brushes', / V/, /conducting dust/],
  ['Commutator', /Bars12/, /conducting dust/],
  ['Armature', / N m/, /hotter than the case/],
  ['Fan, beside the way', /Blades7/, /still cut/],
  ['Worm', /Starts1/, /draws in fingers/],
  ['Wheels', / N m/, /draws in fingers/],
  ['Outputs', / W/, /does not stop for a finger/],
]

test('keys lead from the socket to the outputs, with a number and a caution at every stop', async ({
  page,
}) => {
  await open(page, '?quality=low')
  await openPanel(page, 'Power')
  const way = page.getByRole('region', { name: 'The power’s way' })
  await way.getByRole('button', { name: 'Follow the power' }).press('Enter')
  await expect(way.getByRole('button', { name: 'Next' })).toBeFocused()
  for (const [place, [name, number, caution]] of STOPS.entries()) {
    await expect(way.getByRole('combobox')).toHaveText(new RegExp(`${place + 1}\\. ${name}`))
    await expect(way.getByRole('heading', { name, exact: true })).toBeAttached()
    await expect(way.getByRole('definition').first()).toHaveText(/\d/)
    await expect(way.locator('dl')).toHaveText(number)
    if (caution === null) await expect(way.getByText('Caution.')).toHaveCount(0)
    else await expect(way.getByText('Caution.').locator('..')).toHaveText(caution)
    await page.keyboard.press('ArrowRight')
  }
  // There is nothing behind the outputs; a presenter's remote goes back, and the shaft has not been turned by any key.
  await expect(way.getByRole('heading', { name: 'Outputs' })).toBeAttached()
  await page.keyboard.press('PageUp')
  await expect(way.getByRole('heading', { name: 'Wheels' })).toBeAttached()
  await expect(page.getByRole('status', { name: 'Worm turns' })).toHaveText('0 turns')
  await page.evaluate(() => window.counterturn.look({ large: true }))
  await expect(page.getByText('10. Wheels')).toBeVisible()
  await page.keyboard.press('PageDown')
  await expect(page.getByText('11. Outputs')).toBeVisible()
  await page.evaluate(() => window.counterturn.look({ large: false }))
  await way.getByRole('button', { name: 'Put the light out' }).press('Enter')
  await expect(way.getByRole('button', { name: 'Follow the power' })).toBeFocused()
})

/** Steady speed of the motor in the readings [r/min]: the last of the numbers in its cell. */
async function steadySpeed(page: Page): Promise<number> {
  const cell = page
    .getByRole('row', { name: /^Motor/ })
    .first()
    .getByRole('cell')
    .first()
  return Number(((await cell.textContent()) ?? '').match(/[\d.]+/g)?.at(-1))
}

const speedAt = (winding: number, magnet: number): number => {
  const drive = compileDrive(bootCleaner as Machine, { winding, magnet })
  return Math.round(operatingPoint(drive, { ...firstInput(), setting: 4 })!.speed * RPM)
}

test('a machine that runs warm reads as the core says, and cold again as before', async ({ page }) => {
  await open(page, '?quality=low')
  await page.getByLabel('Setting', { exact: true }).fill('5')
  await openPanel(page, 'Heat')
  await page.getByRole('button', { name: 'Run the machine this warm' }).click()
  const said = page.getByRole('status').filter({ hasText: /It runs with winding \d+ °C and magnets \d+ °C/ })
  await expect(said).toBeVisible()
  const [winding = 0, magnet = 0] = [...(await said.textContent())!.matchAll(/(\d+) °C/g)].map(([, T]) =>
    Number(T),
  )
  expect(winding).toBeGreaterThan(magnet)
  expect(magnet).toBeGreaterThan(21)
  await openPanel(page, 'Readings')
  // Said in whole degrees: the speed is between those of half a degree to either side of both.
  const around = [-0.5, 0.5].flatMap((w) => [-0.5, 0.5].map((m) => speedAt(winding + w, magnet + m)))
  const cold = speedAt(20, 20)
  expect(around.every((each) => Math.abs(each - cold) > 20)).toBe(true)
  await expect.poll(() => steadySpeed(page)).toBeGreaterThanOrEqual(Math.min(...around))
  expect(await steadySpeed(page)).toBeLessThanOrEqual(Math.max(...around))
  await openPanel(page, 'Heat')
  await page.getByRole('button', { name: 'Cold again' }).click()
  await openPanel(page, 'Readings')
  await expect.poll(() => steadySpeed(page)).toBe(cold)
})

test('the cord winder turns under power, and its wheels by three parts in 31 of its worm', async ({
  page,
}) => {
  const machine = cordWinder as Machine
  await open(page, '?quality=low')
  await page.getByRole('button', { name: 'Boot cleaner' }).click()
  await page.getByRole('button', { name: /Cord winder/ }).click()
  const turns = async (name: string) =>
    Number((await page.getByRole('status', { name, exact: true }).textContent())?.replace(/ turns?$/, ''))
  await expect(page.getByRole('button', { name: 'Cord winder' })).toBeVisible()
  await page.getByRole('button', { name: /^Turn/ }).first().click()
  await advance(page, 5)
  const speed = page.getByRole('status', { name: 'Motor speed', exact: true })
  await expect.poll(async () => Number.parseFloat((await speed.textContent()) ?? '')).toBeGreaterThan(0)
  await page.getByRole('button', { name: 'Stop' }).click()
  const worm = await turns('Worm turns')
  const steady = operatingPoint(compileDrive(machine), firstInput())!.speed / (2 * Math.PI)
  expect(worm).toBeGreaterThan(steady)
  expect(worm).toBeLessThan(5 * steady)
  // Four decimals are told of either.
  expect(await turns('Left wheel turns')).toBeCloseTo((3 * worm) / 31, 3)
  expect(await turns('Right wheel turns')).toBeCloseTo((-3 * worm) / 31, 3)
})
